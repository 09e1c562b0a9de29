package org.boardtopit.models;

import java.util.Arrays;

/**
 * What a landmark network says of one crop: for each of the 33 body points up to two places where it may be.
 *
 * <p>Mode 0 is the highest peak of the point's posterior, mode 1 the highest one outside the first one's window; where left
 * and right may be swapped, there are two. Places are px of the crop, x to the right and y down, (0, 0) being the outer
 * corner of its first pixel. The mass is the share of the posterior in the mode's window, 0 to 1; a mode of small mass means
 * little. A mode that is not there, and a point that the network does not know, have mass 0 and NaN for all else.
 */
public final class LandmarkReading {

    /** Modes per point. */
    public static final int MODES = 2;

    /** Numbers per point in the array form: x, y, sd, mass of mode 0, then of mode 1. */
    public static final int NUMBERS_PER_POINT = 4 * MODES;

    /** Numbers of the array form: 264. */
    public static final int LENGTH = BodyPoint.COUNT * NUMBERS_PER_POINT;

    private final float[] numbers;

    private LandmarkReading(float[] numbers) {
        this.numbers = numbers;
    }

    /**
     * From the array form.
     *
     * @param numbers {@link #LENGTH} numbers, in the order of {@link BodyPoint}; copied
     */
    public static LandmarkReading of(float[] numbers) {
        if (numbers.length != LENGTH) {
            throw new IllegalArgumentException("a reading has " + LENGTH + " numbers, was " + numbers.length);
        }
        return new LandmarkReading(numbers.clone());
    }

    /** An array form in which no point is known, to be filled and given to {@link #of}. */
    static float[] unknown() {
        float[] numbers = new float[LENGTH];
        Arrays.fill(numbers, Float.NaN);
        for (int i = 3; i < LENGTH; i += 4) {
            numbers[i] = 0;
        }
        return numbers;
    }

    public float xPx(BodyPoint point, int mode) {
        return numbers[at(point, mode)];
    }

    public float yPx(BodyPoint point, int mode) {
        return numbers[at(point, mode) + 1];
    }

    /** Standard deviation per axis as read, without the factor that the network's card advises. At least 1 px. */
    public float sdPx(BodyPoint point, int mode) {
        return numbers[at(point, mode) + 2];
    }

    public float mass(BodyPoint point, int mode) {
        return numbers[at(point, mode) + 3];
    }

    /** The array form, a copy: per body point x, y, sd, mass of mode 0, then of mode 1. */
    public float[] toArray() {
        return numbers.clone();
    }

    private static int at(BodyPoint point, int mode) {
        if (mode < 0 || mode >= MODES) {
            throw new IllegalArgumentException("mode must be 0 or 1, was " + mode);
        }
        return point.index() * NUMBERS_PER_POINT + 4 * mode;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof LandmarkReading reading && Arrays.equals(numbers, reading.numbers);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(numbers);
    }

    @Override
    public String toString() {
        return "LandmarkReading" + Arrays.toString(numbers);
    }
}
