package org.boardtopit.signal;

/** One piece of a cubic Hermite curve: two ends with their values and slopes. */
record CubicPiece(double x0, double y0, double slope0, double x1, double y1, double slope1) {

    double at(double x) {
        double h = x1 - x0;
        double t = (x - x0) / h;
        double s = 1 - t;
        return s * s * (1 + 2 * t) * y0 + t * t * (1 + 2 * s) * y1 + h * t * s * (s * slope0 - t * slope1);
    }
}
