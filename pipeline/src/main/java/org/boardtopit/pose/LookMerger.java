package org.boardtopit.pose;

import java.util.Arrays;
import java.util.List;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.LandmarkReading;

/**
 * Makes one reading of those of several looks at the same square: for every point the mixture of what the looks say, told in
 * two modes again.
 *
 * <p>Mode i of a look is a Gaussian of mean x_i, standard deviation s_i per axis and weight w_i, its mass over the number of
 * looks. The first mode gathers the Gaussians within {@value #REACH_SIDES} sides of the one at which the mixture, blurred by
 * {@value #BLUR_SIDES} sides, is densest: as far as a look's own modes reach, and blurred as their maps are. Of those,
 * with u_i = w_i / s_i^2,
 *
 * <pre>mass = sum w_i    x = sum u_i x_i / sum u_i    sd^2 = sum w_i (s_i^2 + |x_i - x|^2 / 2) / mass</pre>
 *
 * so a look that is unsure moves the point less, and looks that disagree make it less sure. The looks see the same pixels,
 * so their errors are not independent and the spread is not divided by their number. The second mode is the same of the
 * Gaussians that are left; a third is forgotten, and its mass with it.
 *
 * <p>Measured against the mean of the looks' heat maps in the common frame, and level with it: docs/decisions/0007. One thread at a time.
 */
final class LookMerger {
    private static final double REACH_SIDES = 0.07;
    private static final double BLUR_SIDES = 1.0 / 64;

    private final double reachPx;
    private final double blurVariancePx2;
    private final List<float[]> looks;
    private final double[] x;
    private final double[] y;
    private final double[] variance;
    private final double[] weight;
    private int left;

    private LookMerger(List<float[]> looks, double sidePx) {
        this.looks = looks;
        this.reachPx = REACH_SIDES * sidePx;
        this.blurVariancePx2 = BLUR_SIDES * sidePx * BLUR_SIDES * sidePx;
        int most = LandmarkReading.MODES * looks.size();
        this.x = new double[most];
        this.y = new double[most];
        this.variance = new double[most];
        this.weight = new double[most];
    }

    /**
     * The array form of the merged reading. A single look comes out as it is.
     *
     * @param looks array forms in pixels of the frame, one or more
     * @param sidePx side of the athlete's square in the frame
     */
    static float[] merged(List<float[]> looks, double sidePx) {
        return looks.size() == 1 ? looks.get(0).clone() : new LookMerger(looks, sidePx).all();
    }

    private float[] all() {
        float[] numbers = new float[LandmarkReading.LENGTH];
        Arrays.fill(numbers, Float.NaN);
        for (int at = 0; at < numbers.length; at += 4) {
            numbers[at + 3] = 0;
        }
        for (int point = 0; point < BodyPoint.COUNT; point++) {
            int at = point * LandmarkReading.NUMBERS_PER_POINT;
            gather(at);
            for (int mode = 0; mode < LandmarkReading.MODES && left > 0; mode++) {
                describe(densest(), numbers, at + 4 * mode);
            }
        }
        return numbers;
    }

    private void gather(int at) {
        left = 0;
        for (float[] look : looks) {
            for (int m = at; m < at + LandmarkReading.NUMBERS_PER_POINT; m += 4) {
                if (look[m + 3] > 0) {
                    x[left] = look[m];
                    y[left] = look[m + 1];
                    variance[left] = (double) look[m + 2] * look[m + 2];
                    weight[left++] = (double) look[m + 3] / looks.size();
                }
            }
        }
    }

    /** The Gaussian at whose mean the blurred mixture is highest, the first one of equals. */
    private int densest() {
        int best = 0;
        double highest = -1;
        for (int i = 0; i < left; i++) {
            double density = 0;
            for (int j = 0; j < left; j++) {
                double v = variance[j] + blurVariancePx2;
                density += weight[j] / v * Math.exp(-squaredDistance(j, x[i], y[i]) / (2 * v));
            }
            if (density > highest) {
                highest = density;
                best = i;
            }
        }
        return best;
    }

    /** Tells the Gaussians around one as a single mode, and takes them away. */
    private void describe(int centre, float[] into, int at) {
        double centreX = x[centre];
        double centreY = y[centre];
        double mass = 0;
        double precision = 0;
        double meanX = 0;
        double meanY = 0;
        for (int i = 0; i < left; i++) {
            if (squaredDistance(i, centreX, centreY) < reachPx * reachPx) {
                double u = weight[i] / variance[i];
                mass += weight[i];
                precision += u;
                meanX += u * x[i];
                meanY += u * y[i];
            }
        }
        meanX /= precision;
        meanY /= precision;
        double spread = 0;
        int kept = 0;
        for (int i = 0; i < left; i++) {
            if (squaredDistance(i, centreX, centreY) < reachPx * reachPx) {
                spread += weight[i] * (variance[i] + squaredDistance(i, meanX, meanY) / 2);
            } else {
                keep(i, kept++);
            }
        }
        left = kept;
        into[at] = (float) meanX;
        into[at + 1] = (float) meanY;
        into[at + 2] = (float) Math.sqrt(spread / mass);
        into[at + 3] = (float) mass;
    }

    private void keep(int from, int to) {
        x[to] = x[from];
        y[to] = y[from];
        variance[to] = variance[from];
        weight[to] = weight[from];
    }

    private double squaredDistance(int i, double toX, double toY) {
        double dx = x[i] - toX;
        double dy = y[i] - toY;
        return dx * dx + dy * dy;
    }
}
