package org.boardtopit.report.plot;

import java.util.ArrayList;
import java.util.List;

/** Maps numbers to places along a line of the drawing. */
record Scale(double low, double high, double from, double to) {

    Scale {
        if (!(low < high)) {
            throw new IllegalArgumentException("a scale needs low below high, was " + low + " and " + high);
        }
    }

    /** Numbers beyond an end stay at it. */
    double at(double value) {
        double share = (value - low) / (high - low);
        return from + Math.max(0, Math.min(1, share)) * (to - from);
    }

    /** Round numbers, four to eight of them: steps of 1, 2 or 5 times a power of ten. */
    List<Double> ticks() {
        double step = step();
        List<Double> ticks = new ArrayList<>();
        for (long i = (long) Math.ceil(low / step - 1e-9); i * step <= high + 1e-9 * step; i++) {
            ticks.add(i * step);
        }
        return ticks;
    }

    /** Decimals with which the ticks are written. */
    int decimals() {
        return (int) Math.max(0, -Math.floor(Math.log10(step()) + 1e-9));
    }

    private double step() {
        double rough = (high - low) / 5;
        double power = Math.pow(10, Math.floor(Math.log10(rough)));
        double digit = rough / power;
        return power * (digit < 1.5 ? 1 : digit < 3.5 ? 2 : digit < 7.5 ? 5 : 10);
    }
}
