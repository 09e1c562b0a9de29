package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.boardtopit.ground.RunTraces.Body;
import org.boardtopit.ground.RunTraces.Fall;
import org.boardtopit.ground.RunTraces.Trace;
import org.boardtopit.signal.LastingErrors;
import org.boardtopit.signal.LeastSquares;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * Finds the camera without marks, from the run itself.
 *
 * <p>An athlete who runs along a straight line on level ground is a measuring rod that is carried past the camera. For the
 * right focal length, yaw, pitch, roll, height and distance of the camera, three things hold in the plane of the run:
 *
 * <ul>
 *   <li>in every flight the centre of mass moves evenly along the run and falls with 9.81 m/s^2;
 *   <li>trunk, thigh and shank together keep their length all along the run, and this is a known share of standing height;
 *   <li>a foot in contact is on the ground.
 * </ul>
 *
 * <p>Method: non-linear least squares of these residuals with a pseudo-Huber loss, place and speed of each flight eliminated
 * by a straight line, weak priors on what the run hardly tells. Our own arrangement of known parts; that a falling body
 * gives the scale of a picture is old. The six unknowns are not told apart well (a longer lens further away looks nearly the
 * same), but what matters for places along the run, yaw over distance, is: {@link FoundCamera#doubts} carries the
 * covariance on. The flat picture is the special case of no yaw, so the fit cannot explain the traces worse than it.
 *
 * <p>Assumes a principal point in the middle of the fixed picture and a run that does not bend. Says
 * nothing when fewer than {@value #LEAST_FLIGHTS} flights, {@value #LEAST_TOES} contacts or {@value #LEAST_BODIES} frames
 * were seen, or when the traces lie far from every camera.
 */
public final class SelfCalibration {
    private static final int LEAST_FLIGHTS = 2;
    private static final int LEAST_FALLS = 5;
    private static final int LEAST_TOES = 3;
    private static final int LEAST_BODIES = 20;

    private static final double GRAVITY_MS2 = 9.81;
    /** Noise of the centre of mass per axis; half of its variance has a memory of 40 ms (measured on our footage). */
    private static final double CENTRE_SD_STATURE = 0.0057;

    private static final double CENTRE_MEMORY_S = 0.040;
    /**
     * Trunk, thigh and shank as the network sees them from the side over standing height: mean of six clips with known
     * cameras, whose own values run from 0.736 to 0.751. (0.779 by Winter's table, seen a little short.)
     */
    private static final double CHAIN_STATURE = 0.743;

    /** Their sum scatters by this much with the pose, over some 80 ms (measured on our footage). */
    private static final double CHAIN_LOG_SD = 0.03;

    private static final double CHAIN_MEMORY_S = 0.080;
    /** Spread of that share between people: 4 to 5 % in all for scale from stature (common practice, no source). */
    private static final double BUILD_LOG_SD = 0.04;
    /** Height of the toe of a standing foot, and how far it strays (measured on our footage). */
    private static final double TOE_HEIGHT_STATURE = 0.014;

    private static final double TOE_SD_STATURE = 0.012;

    /** Priors: first guesses of how clubs film, not tuned; the focal length as in {@link RunwayCamera}. */
    private static final double FOCAL_WIDTHS = 1.2;

    private static final double FOCAL_LOG_SD = 0.47;
    private static final double YAW_SD_RAD = Math.toRadians(12);
    private static final double PITCH_SD_RAD = Math.toRadians(10);
    private static final double ROLL_SD_RAD = Math.toRadians(1.5);
    private static final double HEIGHT_M = 1.7;
    private static final double HEIGHT_LOG_SD = 0.35;

    private static final double[] START_YAWS_RAD = {-0.15, 0, 0.15};
    /** Above this the traces fit no camera (a first guess; 0.4 to 0.8 on our six clips, 0.4 to 1.9 re-aimed or degraded). */
    private static final double LARGEST_MISFIT = 2;

    private final Lens lens;
    private final int direction;
    private final double frameStepS;
    private final double statureM;
    private final double scaleLogSd;

    /**
     * For one clip.
     *
     * @param lens of the fixed picture
     * @param direction +1 when the run goes to the right in the picture, -1 to the left
     * @param frameStepS time between frames
     * @param statureM standing height, or a usual one
     * @param statureLogSd how far it may be off: its standard deviation over itself
     */
    public SelfCalibration(Lens lens, int direction, double frameStepS, double statureM, double statureLogSd) {
        if (!(statureM > 0) || !(frameStepS > 0)) {
            throw new IllegalArgumentException(
                    "statureM and frameStepS must be positive, was " + statureM + ", " + frameStepS);
        }
        this.lens = lens;
        this.direction = direction;
        this.frameStepS = frameStepS;
        this.statureM = statureM;
        this.scaleLogSd = Math.hypot(BUILD_LOG_SD, statureLogSd);
    }

    /** The camera that explains the traces best; empty when they are too few or fit no camera. */
    public Optional<FoundCamera> find(RunTraces traces) {
        List<List<Fall>> falls =
                traces.falls().stream().filter(f -> f.size() >= LEAST_FALLS).toList();
        if (falls.size() < LEAST_FLIGHTS
                || traces.toes().size() < LEAST_TOES
                || traces.bodies().size() < LEAST_BODIES) {
            return Optional.empty();
        }
        RunTraces enough = new RunTraces(falls, traces.bodies(), traces.toes());
        Function<double[], double[]> residuals = p -> residuals(enough, camera(p));
        LeastSquares.Fit best = null;
        for (double yaw : START_YAWS_RAD) {
            LeastSquares.Fit fit = LeastSquares.minimise(
                    p -> concat(residuals.apply(p), priors(p)), start(traces, yaw), new double[] {1, 1, 1, 1, 1, 1});
            best = best == null || fit.cost() < best.cost() ? fit : best;
        }
        return found(best, enough);
    }

    private Optional<FoundCamera> found(LeastSquares.Fit fit, RunTraces traces) {
        double[] p = fit.parameters();
        double misfit = misfit(traces, camera(p));
        Optional<double[][]> directions = fit.oneSdAway();
        if (directions.isEmpty() || !(misfit < LARGEST_MISFIT)) {
            return Optional.empty();
        }
        List<RunwayCamera> doubts = new ArrayList<>();
        for (double[] moved : directions.get()) {
            doubts.add(camera(moved));
        }
        return Optional.of(new FoundCamera(camera(p), doubts, misfit));
    }

    private RunwayCamera camera(double[] p) {
        return new CameraStand(Math.exp(p[0]), p[1], p[2], p[3], Math.exp(p[4]), Math.exp(p[5]))
                .camera(lens, direction);
    }

    private double[] start(RunTraces traces, double yawRad) {
        double focal = FOCAL_WIDTHS * lens.widthPx();
        double chainPx = OrderStatistics.median(traces.bodies().stream()
                .mapToDouble(b -> (length(b.left()) + length(b.right())) / 2)
                .toArray());
        double distance = focal * CHAIN_STATURE * statureM / chainPx;
        double toesPx = OrderStatistics.median(
                traces.toes().stream().mapToDouble(t -> t.px().y()).toArray());
        double pitch = Math.atan((toesPx - lens.heightPx() / 2.0) / focal) - Math.atan(HEIGHT_M / distance);
        return new double[] {Math.log(focal), yawRad, pitch, 0, Math.log(HEIGHT_M), Math.log(distance)};
    }

    private static double length(List<Trace> chain) {
        double length = 0;
        for (int i = 1; i < chain.size(); i++) {
            length += chain.get(i).px().distanceTo(chain.get(i - 1).px());
        }
        return length;
    }

    private double[] priors(double[] p) {
        return new double[] {
            (p[0] - Math.log(FOCAL_WIDTHS * lens.widthPx())) / FOCAL_LOG_SD,
            p[1] / YAW_SD_RAD,
            p[2] / PITCH_SD_RAD,
            p[3] / ROLL_SD_RAD,
            (p[4] - Math.log(HEIGHT_M)) / HEIGHT_LOG_SD
        };
    }

    private double[] residuals(RunTraces traces, RunwayCamera camera) {
        double[] chains = chains(traces.bodies(), camera);
        double middle = OrderStatistics.median(chains);
        return concat(
                softened(falls(traces.falls(), camera)),
                softened(scatter(chains, middle)),
                softened(toes(traces.toes(), camera)),
                new double[] {(middle - Math.log(CHAIN_STATURE)) / scaleLogSd});
    }

    private double misfit(RunTraces traces, RunwayCamera camera) {
        double[] chains = chains(traces.bodies(), camera);
        double falls =
                spread(falls(traces.falls(), camera)) * LastingErrors.asTheyFade(CENTRE_MEMORY_S, frameStepS, 0.5);
        double body = spread(scatter(chains, OrderStatistics.median(chains)))
                * LastingErrors.whileTheyStay(CHAIN_MEMORY_S, frameStepS);
        return Math.max(Math.max(falls, body), spread(toes(traces.toes(), camera)));
    }

    /** Robust standard deviation of residuals about 0. */
    private static double spread(double[] residuals) {
        double[] sizes = new double[residuals.length];
        for (int i = 0; i < sizes.length; i++) {
            sizes[i] = Math.abs(residuals[i]);
        }
        return OrderStatistics.GAUSSIAN_MAD * OrderStatistics.median(sizes);
    }

    /** Departures from an even motion along, and from a fall with g, of each flight. */
    private double[] falls(List<List<Fall>> falls, RunwayCamera camera) {
        double sd = CENTRE_SD_STATURE * statureM * LastingErrors.asTheyFade(CENTRE_MEMORY_S, frameStepS, 0.5);
        double[] all = new double[2 * falls.stream().mapToInt(List::size).sum()];
        int at = 0;
        for (List<Fall> fall : falls) {
            int n = fall.size();
            double[] t = new double[n];
            double[] along = new double[n];
            double[] raised = new double[n];
            for (int i = 0; i < n; i++) {
                Point2 place = camera.onUpright(fall.get(i).centrePx(), 0);
                t[i] = fall.get(i).timeS();
                along[i] = place.x();
                raised[i] = place.y() + GRAVITY_MS2 / 2 * t[i] * t[i];
            }
            takeOffLine(t, along);
            takeOffLine(t, raised);
            for (int i = 0; i < n; i++) {
                all[at++] = along[i] / sd;
                all[at++] = raised[i] / sd;
            }
        }
        return all;
    }

    /** Replaces values by their distance from the straight line that fits them best. */
    private static void takeOffLine(double[] t, double[] values) {
        double meanT = 0;
        double mean = 0;
        for (int i = 0; i < t.length; i++) {
            meanT += t[i] / t.length;
            mean += values[i] / t.length;
        }
        double tt = 0;
        double tv = 0;
        for (int i = 0; i < t.length; i++) {
            tt += (t[i] - meanT) * (t[i] - meanT);
            tv += (t[i] - meanT) * (values[i] - mean);
        }
        for (int i = 0; i < t.length; i++) {
            values[i] -= mean + tv / tt * (t[i] - meanT);
        }
    }

    /** Log of the length of trunk, thigh and shank over the standing height, mean of both sides, per frame. */
    private double[] chains(List<Body> bodies, RunwayCamera camera) {
        return bodies.stream()
                .mapToDouble(b -> Math.log((length(b.left(), camera) + length(b.right(), camera)) / 2 / statureM))
                .toArray();
    }

    private double length(List<Trace> chain, RunwayCamera camera) {
        double length = 0;
        Point2 last = null;
        for (Trace trace : chain) {
            Point2 place = camera.onUpright(trace.px(), trace.acrossStature() * statureM);
            length += last == null ? 0 : place.distanceTo(last);
            last = place;
        }
        return length;
    }

    private double[] scatter(double[] chains, double middle) {
        double sd = CHAIN_LOG_SD * LastingErrors.whileTheyStay(CHAIN_MEMORY_S, frameStepS);
        double[] scatter = new double[chains.length];
        for (int i = 0; i < chains.length; i++) {
            scatter[i] = (chains[i] - middle) / sd;
        }
        return scatter;
    }

    private double[] toes(List<Trace> toes, RunwayCamera camera) {
        return toes.stream()
                .mapToDouble(toe -> camera.onUpright(toe.px(), toe.acrossStature() * statureM)
                                .y()
                        / statureM)
                .map(height -> (height - TOE_HEIGHT_STATURE) / TOE_SD_STATURE)
                .toArray();
    }

    /** Pseudo-Huber: the square of the result is 2 (sqrt(1 + r^2) - 1), which is r^2 for small and 2 |r| for large r. */
    private static double[] softened(double[] residuals) {
        double[] soft = new double[residuals.length];
        for (int i = 0; i < soft.length; i++) {
            double r = residuals[i];
            soft[i] = Math.copySign(Math.sqrt(2 * (Math.sqrt(1 + r * r) - 1)), r);
        }
        return soft;
    }

    private static double[] concat(double[]... parts) {
        int n = 0;
        for (double[] part : parts) {
            n += part.length;
        }
        double[] all = new double[n];
        int at = 0;
        for (double[] part : parts) {
            System.arraycopy(part, 0, all, at, part.length);
            at += part.length;
        }
        return all;
    }
}
