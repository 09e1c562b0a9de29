package org.boardtopit.models;

import java.util.List;

/**
 * Reads points that a network gives as plain coordinates: one mode per point, with the standard deviation of the card and the
 * score, when there is one, as its mass.
 */
final class PlainPointReader {
    private final NetworkCard.PlainPoints output;
    private final double unitPx;
    private final List<BodyPoint> points;

    PlainPointReader(NetworkCard.PlainPoints output, int sizePx, List<BodyPoint> points) {
        this.output = output;
        this.unitPx = output.unit() == NetworkCard.Unit.fractions ? sizePx : 1;
        this.points = points;
    }

    /** Numbers that {@link #read} takes. */
    int length() {
        return points.size() * output.numbersPerPoint();
    }

    LandmarkReading read(float[] values) {
        if (values.length != length()) {
            throw new IllegalArgumentException("the points have " + length() + " numbers, was " + values.length);
        }
        float[] numbers = LandmarkReading.unknown();
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i) != null) {
                int from = i * output.numbersPerPoint();
                int at = points.get(i).index() * LandmarkReading.NUMBERS_PER_POINT;
                numbers[at] = (float) (values[from] * unitPx);
                numbers[at + 1] = (float) (values[from + 1] * unitPx);
                numbers[at + 2] = (float) output.sdPx();
                numbers[at + 3] = mass(values, from);
            }
        }
        return LandmarkReading.of(numbers);
    }

    private float mass(float[] values, int from) {
        if (output.score() == null) {
            return 1;
        }
        float score = values[from + output.score()];
        double probability = output.scoreAs() == NetworkCard.Score.logit ? 1 / (1 + Math.exp(-score)) : score;
        return (float) Math.min(Math.max(probability, 0), 1);
    }
}
