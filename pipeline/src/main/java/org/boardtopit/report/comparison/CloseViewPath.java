package org.boardtopit.report.comparison;

import java.util.Arrays;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * How the enlarged view goes with the athlete: smoothly along with the hips, at one height above the ground where that is known,
 * so that a flight is seen to rise; and in every frame with the same px for a metre.
 */
final class CloseViewPath {
    /** Of the middle of the view above the hips' usual height, so that raised arms stay inside: a tenth of a body. */
    private static final double ABOVE_HIPS_STATURES = 0.05;

    private static final double ALONG_REACH_S = 0.1;
    /** Without a camera the ground may slant in the picture; longer than any flight. */
    private static final double HEIGHT_REACH_S = 0.6;

    private static final double ZOOM_REACH_S = 0.2;

    private final Point2[] centres;
    private final double[] zooms;
    private final boolean mirrored;
    private final Point2 middle;

    /**
     * For one attempt.
     *
     * @param pxPerM of the view, in the metres of the attempt's plane of the run
     * @param middle of the view, px of the whole picture
     */
    CloseViewPath(ComparedAttempt attempt, double pxPerM, boolean mirrored, Point2 middle) {
        this.mirrored = mirrored;
        this.middle = middle;
        int n = attempt.landmarks().frameCount();
        double[] along = new double[n];
        double[] height = new double[n];
        hips(attempt.motion(), along, height);
        int reach = (int) Math.round(ALONG_REACH_S * attempt.fps());
        double[] smoothAlong = mean(along, reach);
        double[] smoothHeight = attempt.view().camera().isPresent()
                ? constant(OrderStatistics.median(height), n)
                : mean(height, (int) Math.round(HEIGHT_REACH_S * attempt.fps()));
        double above = ABOVE_HIPS_STATURES * attempt.motion().statureM();
        centres = new Point2[n];
        double[] rough = new double[n];
        for (int f = 0; f < n; f++) {
            centres[f] = attempt.view().inFrame(f, new Point2(smoothAlong[f], smoothHeight[f] + above), 0);
            rough[f] = pxPerM * attempt.view().metresPerPixel(f, centres[f]);
        }
        zooms = mean(rough, (int) Math.round(ZOOM_REACH_S * attempt.fps()));
    }

    private static void hips(MotionTrack motion, double[] along, double[] height) {
        for (int f = 0; f < along.length; f++) {
            Point2 hips = motion.smooth(f, BodyPoint.LEFT_HIP)
                    .plus(motion.smooth(f, BodyPoint.RIGHT_HIP))
                    .times(0.5);
            along[f] = hips.x();
            height[f] = hips.y();
        }
        fill(along);
        fill(height);
    }

    /** Unknown numbers between known ones lie on a line, those outside repeat the last. */
    private static void fill(double[] values) {
        int last = -1;
        for (int i = 0; i < values.length; i++) {
            if (!Double.isFinite(values[i])) {
                continue;
            }
            for (int k = last + 1; k < i; k++) {
                double share = (double) (k - last) / (i - last);
                values[k] = last < 0 ? values[i] : values[last] + share * (values[i] - values[last]);
            }
            last = i;
        }
        if (last >= 0) {
            Arrays.fill(values, last, values.length, values[last]);
        }
    }

    private static double[] constant(double value, int n) {
        double[] values = new double[n];
        Arrays.fill(values, value);
        return values;
    }

    /** The same number on both sides, so that steady movement is not delayed. */
    static double[] mean(double[] values, int reach) {
        double[] means = new double[values.length];
        for (int i = 0; i < values.length; i++) {
            int r = Math.min(reach, Math.min(i, values.length - 1 - i));
            means[i] = Arrays.stream(values, i - r, i + r + 1).average().orElse(Double.NaN);
        }
        return means;
    }

    CloseWindow at(int frame) {
        return new CloseWindow(centres[frame], zooms[frame], mirrored, middle);
    }
}
