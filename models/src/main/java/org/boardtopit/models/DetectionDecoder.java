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
 * two, two and six anchors in every cell, row by row. For each it gives twelve numbers in px: centre of a box against the
 * anchor, its width and height, then four key points against the anchor: the middle of the hips, a point on the circle around
 * it that holds the whole body, the middle of the shoulders, and a point for the upper body that is not used. The score is a
 * logit. The published network gives every box the same size, a fifth of the picture, about the head: it serves to tell
 * persons apart here and is not given out.
 *
 * <p>Anchors that mean the same person are merged: from the best one down, those whose boxes overlap its box by more than 0.3
 * (shared over joint area) are averaged, weighted by their scores. Anchors, key points and the 0.3 are those that the network
 * was published with; the lowest score is our own choice, low because whether a person is the athlete is decided over the
 * clip.
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
        List<Candidate> candidates = new ArrayList<>();
        for (int i = 0; i < ANCHORS; i++) {
            if (logits[i] >= LOWEST_LOGIT) {
                candidates.add(candidate(boxes, i, 1 / (1 + Math.exp(-logits[i]))));
            }
        }
        candidates.sort(
                Comparator.comparingDouble((Candidate c) -> c.person().score()).reversed());
        return merged(candidates);
    }

    /** A person as one anchor sees it, and the box by which it is told from others. */
    private record Candidate(DetectedPerson person, double leftPx, double topPx, double widthPx, double heightPx) {}

    private Candidate candidate(float[] boxes, int anchor, double score) {
        int at = anchor * NUMBERS_PER_ANCHOR;
        double x = anchorXPx[anchor];
        double y = anchorYPx[anchor];
        double radius = Math.hypot(boxes[at + 6] - boxes[at + 4], boxes[at + 7] - boxes[at + 5]);
        DetectedPerson person = new DetectedPerson(
                score, x + boxes[at + 4], y + boxes[at + 5], x + boxes[at + 8], y + boxes[at + 9], 2 * radius);
        double width = boxes[at + 2];
        double height = boxes[at + 3];
        return new Candidate(person, x + boxes[at] - width / 2, y + boxes[at + 1] - height / 2, width, height);
    }

    private static List<DetectedPerson> merged(List<Candidate> byScore) {
        List<DetectedPerson> persons = new ArrayList<>();
        Deque<Candidate> left = new ArrayDeque<>(byScore);
        while (!left.isEmpty()) {
            Candidate best = left.removeFirst();
            List<DetectedPerson> same = new ArrayList<>(List.of(best.person()));
            left.removeIf(other -> overlap(best, other) > SAME_PERSON_OVERLAP && same.add(other.person()));
            persons.add(average(same));
        }
        return persons;
    }

    /** Mean of the persons, weighted by their scores; the first one's score is kept. */
    private static DetectedPerson average(List<DetectedPerson> same) {
        double[] sums = new double[5];
        double weights = 0;
        for (DetectedPerson p : same) {
            double[] numbers = {p.hipXPx(), p.hipYPx(), p.shoulderXPx(), p.shoulderYPx(), p.sizePx()};
            for (int i = 0; i < sums.length; i++) {
                sums[i] += p.score() * numbers[i];
            }
            weights += p.score();
        }
        for (int i = 0; i < sums.length; i++) {
            sums[i] /= weights;
        }
        return new DetectedPerson(same.get(0).score(), sums[0], sums[1], sums[2], sums[3], sums[4]);
    }

    /** Shared area over joint area of the two boxes, 0 to 1. */
    private static double overlap(Candidate a, Candidate b) {
        double width = Math.min(a.leftPx() + a.widthPx(), b.leftPx() + b.widthPx()) - Math.max(a.leftPx(), b.leftPx());
        double height = Math.min(a.topPx() + a.heightPx(), b.topPx() + b.heightPx()) - Math.max(a.topPx(), b.topPx());
        if (width <= 0 || height <= 0) {
            return 0;
        }
        double shared = width * height;
        return shared / (a.widthPx() * a.heightPx() + b.widthPx() * b.heightPx() - shared);
    }
}
