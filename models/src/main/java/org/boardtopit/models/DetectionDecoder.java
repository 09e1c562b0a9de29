package org.boardtopit.models;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;

/**
 * Turns the detector's tensors into persons.
 *
 * <p>The network looks at 2254 anchors: centres of the cells of a 28 x 28, a 14 x 14 and a 7 x 7 grid over the picture, with
 * two, two and six anchors in every cell, row by row. For each it gives twelve numbers in px: centre of the box against the
 * anchor, its width and height, then four key points against the anchor, of which the first is the middle of the hips and the
 * second a point on the circle around them that holds the whole body. The score is a logit.
 *
 * <p>Anchors that mean the same person are merged: from the best one down, those that overlap it by more than 0.3 (shared
 * over joint area) are averaged, weighted by their scores. Anchors, key points and the 0.3 are those that the network was
 * published with; the lowest score is our own choice, low because whether a person is the athlete is decided over the clip.
 */
final class DetectionDecoder {
    static final int ANCHORS = 2254;
    static final int NUMBERS_PER_ANCHOR = 12;
    static final double LOWEST_SCORE = 0.3;

    private static final double SAME_PERSON_OVERLAP = 0.3;
    private static final int[][] GRIDS = {{28, 2}, {14, 2}, {7, 6}}; // cells to a side, anchors in a cell
    private static final double LOWEST_LOGIT = Math.log(LOWEST_SCORE / (1 - LOWEST_SCORE));

    private final double[] anchorXPx = new double[ANCHORS];
    private final double[] anchorYPx = new double[ANCHORS];

    DetectionDecoder(int inputSizePx) {
        int next = 0;
        for (int[] grid : GRIDS) {
            double cellPx = (double) inputSizePx / grid[0];
            for (int cell = 0; cell < grid[0] * grid[0]; cell++) {
                int row = cell / grid[0];
                int column = cell % grid[0];
                for (int k = 0; k < grid[1]; k++, next++) {
                    anchorXPx[next] = (column + 0.5) * cellPx;
                    anchorYPx[next] = (row + 0.5) * cellPx;
                }
            }
        }
    }

    /**
     * Decodes one picture.
     *
     * @param boxes 2254 * 12 numbers
     * @param logits 2254 scores
     * @return persons by falling score
     */
    List<DetectedPerson> decode(float[] boxes, float[] logits) {
        if (boxes.length != ANCHORS * NUMBERS_PER_ANCHOR || logits.length != ANCHORS) {
            throw new IllegalArgumentException("a detector gives " + ANCHORS * NUMBERS_PER_ANCHOR + " and " + ANCHORS
                    + " numbers, was " + boxes.length + " and " + logits.length);
        }
        List<DetectedPerson> candidates = new ArrayList<>();
        for (int i = 0; i < ANCHORS; i++) {
            if (logits[i] >= LOWEST_LOGIT) {
                candidates.add(candidate(boxes, i, 1 / (1 + Math.exp(-logits[i]))));
            }
        }
        candidates.sort(Comparator.comparingDouble(DetectedPerson::score).reversed());
        return merged(candidates);
    }

    private DetectedPerson candidate(float[] boxes, int anchor, double score) {
        int at = anchor * NUMBERS_PER_ANCHOR;
        double x = anchorXPx[anchor];
        double y = anchorYPx[anchor];
        double width = boxes[at + 2];
        double height = boxes[at + 3];
        double hipX = x + boxes[at + 4];
        double hipY = y + boxes[at + 5];
        double radius = Math.hypot(x + boxes[at + 6] - hipX, y + boxes[at + 7] - hipY);
        return new DetectedPerson(
                score,
                x + boxes[at] - width / 2,
                y + boxes[at + 1] - height / 2,
                width,
                height,
                hipX,
                hipY,
                2 * radius);
    }

    private static List<DetectedPerson> merged(List<DetectedPerson> byScore) {
        List<DetectedPerson> persons = new ArrayList<>();
        Deque<DetectedPerson> left = new ArrayDeque<>(byScore);
        while (!left.isEmpty()) {
            DetectedPerson best = left.removeFirst();
            List<DetectedPerson> same = new ArrayList<>(List.of(best));
            left.removeIf(other -> overlap(best, other) > SAME_PERSON_OVERLAP && same.add(other));
            persons.add(average(best.score(), same));
        }
        return persons;
    }

    private static DetectedPerson average(double score, List<DetectedPerson> same) {
        double[] sums = new double[7];
        double weights = 0;
        for (DetectedPerson p : same) {
            double[] numbers = {p.leftPx(), p.topPx(), p.widthPx(), p.heightPx(), p.hipXPx(), p.hipYPx(), p.sizePx()};
            for (int i = 0; i < sums.length; i++) {
                sums[i] += p.score() * numbers[i];
            }
            weights += p.score();
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] /= weights;
        }
        return new DetectedPerson(score, sums[0], sums[1], sums[2], sums[3], sums[4], sums[5], sums[6]);
    }

    /** Shared area over joint area of the two boxes, 0 to 1. */
    private static double overlap(DetectedPerson a, DetectedPerson b) {
        double width = Math.min(a.leftPx() + a.widthPx(), b.leftPx() + b.widthPx()) - Math.max(a.leftPx(), b.leftPx());
        double height = Math.min(a.topPx() + a.heightPx(), b.topPx() + b.heightPx()) - Math.max(a.topPx(), b.topPx());
        if (width <= 0 || height <= 0) {
            return 0;
        }
        double shared = width * height;
        return shared / (a.widthPx() * a.heightPx() + b.widthPx() * b.heightPx() - shared);
    }
}
