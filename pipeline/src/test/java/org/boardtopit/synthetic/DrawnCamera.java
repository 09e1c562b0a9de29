package org.boardtopit.synthetic;

import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * A pinhole on a tripod beside the runway. World as in {@link DrawnJumper}; pixels with (0, 0) at the outer corner of the
 * first one, principal point in the middle.
 *
 * @param acrossM negative on the athlete's right: the run then goes to the right in the picture
 * @param panRad turn from square to the runway, positive towards the pit
 * @param tiltRad downwards
 * @param rollRad clockwise turn of the camera about its axis
 */
public record DrawnCamera(
        int widthPx,
        int heightPx,
        double focalPx,
        double alongM,
        double acrossM,
        double heightM,
        double panRad,
        double tiltRad,
        double rollRad) {

    public DrawnCamera panned(double newPanRad, double newFocalPx) {
        return new DrawnCamera(widthPx, heightPx, newFocalPx, alongM, acrossM, heightM, newPanRad, tiltRad, rollRad);
    }

    /** Right, down and forwards of the camera in the world (along, across, height): the rows of its rotation. */
    public double[][] axes() {
        double side = acrossM < 0 ? 1 : -1;
        double[] forward = {
            Math.sin(panRad) * Math.cos(tiltRad), side * Math.cos(panRad) * Math.cos(tiltRad), -Math.sin(tiltRad)
        };
        double[] level = {side * Math.cos(panRad), -Math.sin(panRad), 0};
        double[] right = level.clone();
        double[] down = cross(forward, level);
        for (int i = 0; i < 3; i++) {
            right[i] = Math.cos(rollRad) * level[i] + Math.sin(rollRad) * down[i];
        }
        return new double[][] {right, cross(forward, right), forward};
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    public Point2 project(double along, double across, double height) {
        double[][] axes = axes();
        double[] d = {along - alongM, across - acrossM, height - heightM};
        double[] c = new double[3];
        for (int i = 0; i < 3; i++) {
            c[i] = axes[i][0] * d[0] + axes[i][1] * d[1] + axes[i][2] * d[2];
        }
        return c[2] <= 0.1
                ? Point2.UNKNOWN
                : new Point2(focalPx * c[0] / c[2] + widthPx / 2.0, focalPx * c[1] / c[2] + heightPx / 2.0);
    }

    /** Pixels of this camera to those of another one on the same tripod: K' R' R^T K^-1 (Hartley and Zisserman 8.4, MEM-H). */
    public Homography to(DrawnCamera other) {
        double[][] a = axes();
        double[][] b = other.axes();
        double[] turn = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                turn[3 * i + j] = b[i][0] * a[j][0] + b[i][1] * a[j][1] + b[i][2] * a[j][2];
            }
        }
        Homography rays = new Homography(
                1 / focalPx, 0, -widthPx / 2.0 / focalPx, 0, 1 / focalPx, -heightPx / 2.0 / focalPx, 0, 0, 1);
        Homography pixels =
                new Homography(other.focalPx, 0, other.widthPx / 2.0, 0, other.focalPx, other.heightPx / 2.0, 0, 0, 1);
        return pixels.after(Homography.of(turn).after(rays));
    }
}
