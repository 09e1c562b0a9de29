package org.boardtopit.synthetic;

import java.util.ArrayList;
import java.util.List;

/** A number over time through knots of given value and slope: cubic in between (Hermite), straight outside. */
final class HermitePath {
    private record Knot(double timeS, double value, double slope) {}

    private final List<Knot> knots = new ArrayList<>();

    /** Appends a knot; two knots at one time make the slope break there. */
    HermitePath add(double timeS, double value, double slope) {
        if (!knots.isEmpty() && timeS < knots.get(knots.size() - 1).timeS()) {
            throw new IllegalArgumentException("knots must rise in time, was " + timeS);
        }
        knots.add(new Knot(timeS, value, slope));
        return this;
    }

    /** Value at a time; the last of several knots at this very time counts. */
    double at(double timeS) {
        Knot first = knots.get(0);
        Knot last = knots.get(knots.size() - 1);
        if (timeS <= first.timeS()) {
            return first.value() + (timeS - first.timeS()) * first.slope();
        }
        if (timeS >= last.timeS()) {
            return last.value() + (timeS - last.timeS()) * last.slope();
        }
        int i = 1;
        while (knots.get(i).timeS() <= timeS) {
            i++;
        }
        return between(knots.get(i - 1), knots.get(i), timeS);
    }

    private static double between(Knot a, Knot b, double timeS) {
        double h = b.timeS() - a.timeS();
        double u = (timeS - a.timeS()) / h;
        double w = 1 - u;
        return w * w * (1 + 2 * u) * a.value()
                + u * w * w * h * a.slope()
                + u * u * (3 - 2 * u) * b.value()
                - u * u * w * h * b.slope();
    }
}
