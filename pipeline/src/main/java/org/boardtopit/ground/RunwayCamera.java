package org.boardtopit.ground;

import java.util.List;
import org.boardtopit.clips.Mark;
import org.boardtopit.signal.LeastSquares;
import org.boardtopit.signal.Point2;

/**
 * A pinhole camera that looks at the runway: turns pixels of the fixed picture into metres and back.
 *
 * <p>World: along = distance from the take-off line towards the pit, across = distance from the centre line, positive to
 * the athlete's left, height = up from the ground; metres. Picture: pixels of the fixed picture, (0, 0) the outer corner of
 * the top-left pixel.
 *
 * <p>Method: from marks on the ground, by minimising the distance in the picture over focal length, direction and place of
 * the camera (seven unknowns; square pixels, principal point in the middle of the picture: Hartley and Zisserman, Multiple
 * View Geometry, 2nd ed., ch. 7, from memory). Several starting focal lengths are tried. A weak prior holds the focal length
 * near 1.2 picture widths (a factor of 1.6 for one sd) because marks near one line hardly tell it. What a {@link Lens} bends is
 * taken out of pixels before and put back after. Assumes a level ground. Points off the ground need a plane to stand on:
 * {@link #onUpright}.
 */
public final class RunwayCamera {
    /** Prior of the focal length: phone and camcorder lenses at the edge of a runway; a first guess, not tuned. */
    private static final double PRIOR_FOCAL_WIDTHS = 1.2;

    private static final double PRIOR_LOG_SD = 0.47;
    private static final double[] START_FOCAL_WIDTHS = {0.6, 0.9, 1.3, 1.9, 2.8};
    /** What a careful person's click on a mark is worth along one axis; a first guess, not tuned. */
    static final double CLICK_SD_PX = 1.0;

    /** As many clicks as the guess above counts for when the marks' own agreement says what clicks are worth. */
    private static final double CLICK_GUESS_WEIGHT = 4;

    private static final double[] PARAMETER_SCALE = {1, 1, 1, 1, 10, 10, 10};

    private final double focalPx;
    private final Lens lens;
    private final double[] rotation; // row-major, world to camera
    private final double[] translation;
    private final double acrossSign; // of the marks' own convention against ours
    private final double residualPx;
    private final double[] parameters; // of the fit to marks, else empty
    private double[][] covariance = new double[0][]; // of the parameters

    private RunwayCamera(
            double focalPx,
            Lens lens,
            double[] rotation,
            double[] translation,
            double acrossSign,
            double residualPx,
            double[] parameters) {
        this.focalPx = focalPx;
        this.lens = lens;
        this.rotation = rotation;
        this.translation = translation;
        this.acrossSign = acrossSign;
        this.residualPx = residualPx;
        this.parameters = parameters;
    }

    /**
     * A camera that stands at a place (along, across, height), turned by a rotation (row-major, world to camera; picture x to
     * the right, y down, z away).
     */
    static RunwayCamera at(double focalPx, Lens lens, double[] rotation, double[] position) {
        double[] translation = new double[3];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                translation[i] -= rotation[3 * i + j] * position[j];
            }
        }
        return new RunwayCamera(focalPx, lens, rotation.clone(), translation, 1, Double.NaN, new double[0]);
    }

    /** The same picture of a world in which all lengths are {@code factor} times as long, then moved along the run. */
    RunwayCamera scaled(double factor, double alongM) {
        double[] c = position();
        double[] moved = {c[0] * factor + alongM, c[1] * factor, c[2] * factor};
        return at(focalPx, lens, rotation, moved);
    }

    /**
     * Finds the camera that explains the marks.
     *
     * @param marks four or more, not on one line
     * @throws CalibrationException when they are too few, on one line or contradict each other
     */
    public static RunwayCamera fromMarks(List<Mark> marks, int widthPx, int heightPx) throws CalibrationException {
        return fromMarks(marks, Lens.ideal(widthPx, heightPx));
    }

    /** The same for a lens that bends the picture. */
    public static RunwayCamera fromMarks(List<Mark> marks, Lens lens) throws CalibrationException {
        return fromMarks(marks, lens, PRIOR_FOCAL_WIDTHS * lens.widthPx(), PRIOR_LOG_SD);
    }

    /**
     * The same when something else tells the focal length, such as the turns of a panned clip.
     *
     * @param likelyFocalPx in pixels of the picture with the marks
     * @param logFocalSd standard deviation of its natural logarithm
     */
    public static RunwayCamera fromMarks(List<Mark> marks, Lens lens, double likelyFocalPx, double logFocalSd)
            throws CalibrationException {
        if (marks.size() < 4) {
            throw new CalibrationException("a camera needs at least 4 marks, has " + marks.size());
        }
        RunwayCamera best = null;
        double bestCost = Double.POSITIVE_INFINITY;
        FocalPrior prior = new FocalPrior(Math.log(likelyFocalPx), logFocalSd);
        List<Mark> straight = straightened(marks, lens);
        Point2 middle = lens.middle();
        for (double sign : new double[] {1, -1}) {
            for (double widths : START_FOCAL_WIDTHS) {
                double[] start = PlaneStart.of(straight, sign, widths * lens.widthPx(), middle.x(), middle.y());
                if (start == null) {
                    continue;
                }
                LeastSquares.Fit fit =
                        LeastSquares.minimise(p -> residuals(p, straight, sign, middle, prior), start, PARAMETER_SCALE);
                RunwayCamera camera = of(fit.parameters(), lens, sign, marks);
                if (camera.heightM() > 0 && Double.isFinite(camera.residualPx()) && fit.cost() < bestCost) {
                    best = camera;
                    bestCost = fit.cost();
                }
            }
        }
        if (best == null) {
            throw new CalibrationException(
                    "no camera position explains the marks: they lie on one line, or two of them are exchanged");
        }
        best.covariance = covariance(best, straight, prior);
        return best;
    }

    private static List<Mark> straightened(List<Mark> marks, Lens lens) {
        return marks.stream()
                .map(m -> new Mark(m.name(), m.alongM(), m.acrossM(), lens.straightened(m.pixel())))
                .toList();
    }

    /** What is known of the focal length before the marks speak. */
    private record FocalPrior(double log, double logSd) {}

    /** The marks' own agreement says what a click is worth, drawn towards the guess when they are few. */
    private static double[][] covariance(RunwayCamera camera, List<Mark> straight, FocalPrior prior) {
        double spare = 2.0 * straight.size() - PARAMETER_SCALE.length;
        double squares = straight.size() * camera.residualPx * camera.residualPx;
        double clickSd = Math.sqrt(
                (CLICK_GUESS_WEIGHT * CLICK_SD_PX * CLICK_SD_PX + squares) / (CLICK_GUESS_WEIGHT + Math.max(0, spare)));
        return LeastSquares.covariance(
                p -> {
                    double[] r = residuals(p, straight, camera.acrossSign, camera.lens.middle(), prior);
                    for (int i = 0; i < r.length - 1; i++) {
                        r[i] *= CLICK_SD_PX / clickSd;
                    }
                    return r;
                },
                camera.parameters,
                PARAMETER_SCALE);
    }

    private static RunwayCamera of(double[] p, Lens lens, double sign, List<Mark> marks) {
        double[] r = Rotations.fromVector(p[1], p[2], p[3]);
        RunwayCamera camera =
                new RunwayCamera(Math.exp(p[0]), lens, r, new double[] {p[4], p[5], p[6]}, sign, Double.NaN, p);
        double sum = 0;
        for (Mark m : marks) {
            double d = camera.project(m.alongM(), sign * m.acrossM(), 0).distanceTo(m.pixel());
            sum += d * d;
        }
        return new RunwayCamera(camera.focalPx, lens, r, camera.translation, sign, Math.sqrt(sum / marks.size()), p);
    }

    private static double[] residuals(double[] p, List<Mark> marks, double sign, Point2 middle, FocalPrior prior) {
        double f = Math.exp(p[0]);
        double[] r = Rotations.fromVector(p[1], p[2], p[3]);
        double[] out = new double[2 * marks.size() + 1];
        for (int i = 0; i < marks.size(); i++) {
            Mark m = marks.get(i);
            double x = m.alongM();
            double y = sign * m.acrossM();
            double depth = r[6] * x + r[7] * y + p[6];
            double safe = depth > 0.1 ? depth : 0.1; // behind the camera: a large residual, not a division by zero
            double u = f * (r[0] * x + r[1] * y + p[4]) / safe + middle.x();
            double v = f * (r[3] * x + r[4] * y + p[5]) / safe + middle.y();
            out[2 * i] = (u - m.pixel().x()) / CLICK_SD_PX;
            out[2 * i + 1] = (v - m.pixel().y()) / CLICK_SD_PX;
        }
        out[2 * marks.size()] = (p[0] - prior.log()) / prior.logSd();
        return out;
    }

    /** Pixel of a point in space; unknown when it lies behind the camera. */
    public Point2 project(double alongM, double acrossM, double heightM) {
        double depth = rotation[6] * alongM + rotation[7] * acrossM + rotation[8] * heightM + translation[2];
        if (depth <= 1e-6) {
            return Point2.UNKNOWN;
        }
        double x = rotation[0] * alongM + rotation[1] * acrossM + rotation[2] * heightM + translation[0];
        double y = rotation[3] * alongM + rotation[4] * acrossM + rotation[5] * heightM + translation[1];
        Point2 middle = lens.middle();
        return lens.bent(new Point2(focalPx * x / depth + middle.x(), focalPx * y / depth + middle.y()));
    }

    /** Where the ray of a pixel meets the ground: (along, across). Unknown above the horizon. */
    public Point2 onGround(Point2 pixel) {
        double[] d = ray(pixel);
        double[] c = position();
        double s = -c[2] / d[2];
        return s > 0 ? new Point2(c[0] + s * d[0], c[1] + s * d[1]) : Point2.UNKNOWN;
    }

    /**
     * Where the ray of a pixel meets the upright plane that runs along the runway at a distance from its centre line:
     * (along, height).
     */
    public Point2 onUpright(Point2 pixel, double acrossM) {
        double[] d = ray(pixel);
        double[] c = position();
        double s = (acrossM - c[1]) / d[1];
        return s > 0 ? new Point2(c[0] + s * d[0], c[2] + s * d[2]) : Point2.UNKNOWN;
    }

    /**
     * Where the ray of a pixel meets the upright plane across the runway at a place along it: (across, height). For a camera
     * in front or behind. The slope of a line between two pixels is the same on all such planes, so it needs no exact place.
     */
    public Point2 onAcross(Point2 pixel, double alongM) {
        double[] d = ray(pixel);
        double[] c = position();
        double s = (alongM - c[0]) / d[0];
        return s > 0 ? new Point2(c[1] + s * d[1], c[2] + s * d[2]) : Point2.UNKNOWN;
    }

    /** Metres that one pixel covers on the upright plane through the centre line, at that pixel. */
    public double metresPerPixel(Point2 pixel) {
        Point2 a = onUpright(new Point2(pixel.x(), pixel.y() - 0.5), 0);
        Point2 b = onUpright(new Point2(pixel.x(), pixel.y() + 0.5), 0);
        return a.distanceTo(b);
    }

    /**
     * How well the marks determine places along the runway: standard deviation, in metres, of the along position of a point on
     * the ground of the upright plane {@code acrossM} beside the centre line, its pixel being exact. By propagation of the
     * fit's covariance; NaN where the camera does not see, and for a camera that was not found from marks.
     */
    public double alongSdM(double alongM, double acrossM) {
        if (parameters.length == 0) {
            return Double.NaN;
        }
        Point2 pixel = project(alongM, acrossM, 0);
        double[] gradient = new double[parameters.length];
        for (int k = 0; k < gradient.length; k++) {
            double h = 1e-5 * PARAMETER_SCALE[k];
            gradient[k] = (moved(k, h).onUpright(pixel, acrossM).x()
                            - moved(k, -h).onUpright(pixel, acrossM).x())
                    / (2 * h);
        }
        return Math.sqrt(Math.max(0, spread(gradient, gradient)));
    }

    /** Standard deviation of a ground point's pixel by the fit's covariance, along x and y, without the click's own error. */
    double[] pixelSdPx(double alongM, double acrossM) {
        double[][] gradient = new double[2][parameters.length];
        for (int k = 0; k < parameters.length; k++) {
            double h = 1e-5 * PARAMETER_SCALE[k];
            Point2 up = moved(k, h).project(alongM, acrossM, 0);
            Point2 down = moved(k, -h).project(alongM, acrossM, 0);
            gradient[0][k] = (up.x() - down.x()) / (2 * h);
            gradient[1][k] = (up.y() - down.y()) / (2 * h);
        }
        return new double[] {
            Math.sqrt(Math.max(0, spread(gradient[0], gradient[0]))),
            Math.sqrt(Math.max(0, spread(gradient[1], gradient[1])))
        };
    }

    private RunwayCamera moved(int parameter, double by) {
        double[] p = parameters.clone();
        p[parameter] += by;
        return new RunwayCamera(
                Math.exp(p[0]),
                lens,
                Rotations.fromVector(p[1], p[2], p[3]),
                new double[] {p[4], p[5], p[6]},
                acrossSign,
                residualPx,
                p);
    }

    private double spread(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                sum += a[i] * covariance[i][j] * b[j];
            }
        }
        return sum;
    }

    /** Height of the camera above the ground. */
    public double heightM() {
        return position()[2];
    }

    /** Distance of the camera from the centre line; positive when it stands on the athlete's left. */
    public double acrossM() {
        return position()[1];
    }

    public double alongM() {
        return position()[0];
    }

    public double focalPx() {
        return focalPx;
    }

    /** Root mean square distance between the marks and where this camera sees them; NaN when it was found without marks. */
    public double residualPx() {
        return residualPx;
    }

    /** +1 when the marks count positive across to the athlete's left, -1 when to the right. */
    public double marksAcrossSign() {
        return acrossSign;
    }

    private double[] ray(Point2 pixel) {
        Point2 straight = lens.straightened(pixel);
        Point2 middle = lens.middle();
        double x = (straight.x() - middle.x()) / focalPx;
        double y = (straight.y() - middle.y()) / focalPx;
        double[] r = rotation;
        return new double[] {r[0] * x + r[3] * y + r[6], r[1] * x + r[4] * y + r[7], r[2] * x + r[5] * y + r[8]};
    }

    private double[] position() {
        double[] r = rotation;
        double[] t = translation;
        return new double[] {
            -(r[0] * t[0] + r[3] * t[1] + r[6] * t[2]),
            -(r[1] * t[0] + r[4] * t[1] + r[7] * t[2]),
            -(r[2] * t[0] + r[5] * t[1] + r[8] * t[2])
        };
    }
}
