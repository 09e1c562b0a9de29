package org.boardtopit.accuracy;

import java.util.List;
import org.boardtopit.signal.Point2;

/**
 * The true pinhole camera of a frame: X_cam = R X + t with X = (along, across, up) in metres, pixel = K X_cam / depth, (0, 0)
 * being the outer corner of the top-left pixel.
 *
 * @param k nine numbers, row by row, like {@code r}
 * @param t three numbers
 */
record CameraTruth(List<Double> k, List<Double> r, List<Double> t) {
    CameraTruth {
        k = List.copyOf(k);
        r = List.copyOf(r);
        t = List.copyOf(t);
    }

    /** Metres in front of the camera. */
    double depthM(double alongM, double acrossM, double upM) {
        return row(2, alongM, acrossM, upM);
    }

    /** Unknown behind the camera. */
    Point2 project(double alongM, double acrossM, double upM) {
        double depth = depthM(alongM, acrossM, upM);
        if (!(depth > 0)) {
            return Point2.UNKNOWN;
        }
        double x = row(0, alongM, acrossM, upM) / depth;
        double y = row(1, alongM, acrossM, upM) / depth;
        return new Point2(k.get(0) * x + k.get(1) * y + k.get(2), k.get(4) * y + k.get(5));
    }

    /** Pixels that a metre square to the view covers at a place. */
    double pixelsPerMetre(double alongM, double acrossM, double upM) {
        return k.get(4) / depthM(alongM, acrossM, upM);
    }

    private double row(int i, double x, double y, double z) {
        return r.get(3 * i) * x + r.get(3 * i + 1) * y + r.get(3 * i + 2) * z + t.get(i);
    }
}
