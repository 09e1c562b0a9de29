package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.function.ToDoubleFunction;

/**
 * A number of the true body over a span of time: sampled every half millisecond from cubics through the nearest frames of the span
 * (Lagrange), so that it neither looks across the contacts that bound the span nor repeats what the measurement does.
 */
final class TrueCourse {
    private static final double STEP_S = 0.0005;
    private static final int NODES = 4;

    private final double fromS;
    private final double[] values;

    private TrueCourse(double fromS, double[] values) {
        this.fromS = fromS;
        this.values = values;
    }

    /**
     * Of the frames inside a span.
     *
     * @param number of a frame
     * @return unknown everywhere when the span has fewer than three frames
     */
    static TrueCourse between(List<FrameTruth> frames, double fromS, double toS, ToDoubleFunction<FrameTruth> number) {
        List<Double> t = new ArrayList<>();
        List<Double> y = new ArrayList<>();
        for (FrameTruth frame : frames) {
            if (frame.timeS() >= fromS && frame.timeS() <= toS) {
                t.add(frame.timeS());
                y.add(number.applyAsDouble(frame));
            }
        }
        double[] values = new double[(int) Math.round((toS - fromS) / STEP_S) + 1];
        for (int i = 0; i < values.length; i++) {
            values[i] = t.size() < NODES - 1 ? Double.NaN : interpolated(t, y, fromS + i * STEP_S);
        }
        return new TrueCourse(fromS, values);
    }

    private static double interpolated(List<Double> t, List<Double> y, double timeS) {
        int n = Math.min(NODES, t.size());
        int first = 0;
        while (first + n < t.size() && t.get(first + n / 2) < timeS) {
            first++;
        }
        double sum = 0;
        for (int i = first; i < first + n; i++) {
            double factor = y.get(i);
            for (int j = first; j < first + n; j++) {
                factor *= i == j ? 1 : (timeS - t.get(j)) / (t.get(i) - t.get(j));
            }
            sum += factor;
        }
        return sum;
    }

    /** At an instant of the span. */
    double at(double timeS) {
        return values[(int) Math.round((timeS - fromS) / STEP_S)];
    }

    double last() {
        return values[values.length - 1];
    }

    double largest() {
        double largest = Double.NaN;
        for (double value : values) {
            largest = value <= largest ? largest : value;
        }
        return largest;
    }

    double smallest() {
        double smallest = Double.NaN;
        for (double value : values) {
            smallest = value >= smallest ? smallest : value;
        }
        return smallest;
    }

    /** Share of the samples from an instant on that are at or above a level, 0 to 1. */
    double shareAtLeast(double level, double sinceS) {
        int first = (int) Math.round((sinceS - fromS) / STEP_S);
        int above = 0;
        for (int i = first; i < values.length; i++) {
            above += values[i] >= level ? 1 : 0;
        }
        return (double) above / (values.length - first);
    }

    /** Seconds from the last sample at or above a level to the end. */
    double endLessLastAtLeast(double level) {
        for (int i = values.length - 1; i >= 0; i--) {
            if (values[i] >= level) {
                return (values.length - 1 - i) * STEP_S;
            }
        }
        return Double.NaN;
    }

    /** Seconds from the start to the first sample above zero. */
    double firstPositive() {
        for (int i = 0; i < values.length; i++) {
            if (values[i] > 0) {
                return i * STEP_S;
            }
        }
        return Double.NaN;
    }
}
