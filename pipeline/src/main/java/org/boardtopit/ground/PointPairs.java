package org.boardtopit.ground;

import java.util.Arrays;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/** The same background points in two pictures, each in its own pixels. Arrays are kept, not copied: do not change them. */
public final class PointPairs {
    private final float[] from;
    private final float[] to;

    /** Places as x, y, x, y, ... of the same points in the same order. */
    public PointPairs(float[] from, float[] to) {
        if (from.length != to.length || from.length % 2 != 0) {
            throw new IllegalArgumentException(
                    "pairs need as many places on both sides, was " + from.length + " and " + to.length + " numbers");
        }
        this.from = from;
        this.to = to;
    }

    public int count() {
        return from.length / 2;
    }

    public Point2 from(int i) {
        return new Point2(from[2 * i], from[2 * i + 1]);
    }

    public Point2 to(int i) {
        return new Point2(to[2 * i], to[2 * i + 1]);
    }

    /** The same pairs in other units of both pictures. */
    public PointPairs scaled(double fromFactor, double toFactor) {
        return new PointPairs(times(from, fromFactor), times(to, toFactor));
    }

    /** At most so many of them, evenly taken in their order. */
    public PointPairs thinned(int most) {
        int n = count();
        if (n <= most) {
            return this;
        }
        float[] a = new float[2 * most];
        float[] b = new float[2 * most];
        for (int i = 0; i < most; i++) {
            int j = (int) ((long) i * n / most);
            System.arraycopy(from, 2 * j, a, 2 * i, 2);
            System.arraycopy(to, 2 * j, b, 2 * i, 2);
        }
        return new PointPairs(a, b);
    }

    private static float[] times(float[] values, double factor) {
        float[] out = new float[values.length];
        for (int i = 0; i < out.length; i++) {
            out[i] = (float) (factor * values[i]);
        }
        return out;
    }

    /** Median distance, in the second picture, between where a map puts the points and where they are; NaN without any. */
    public double medianDistancePx(Homography map) {
        double[] distance = new double[count()];
        for (int i = 0; i < distance.length; i++) {
            distance[i] = map.apply(from[2 * i], from[2 * i + 1]).distanceTo(to(i));
        }
        Arrays.sort(distance);
        return distance.length == 0 ? Double.NaN : distance[distance.length / 2];
    }
}
