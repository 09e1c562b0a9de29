package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.OrderStatistics;

/**
 * How sharply the legs are seen, from the network's own standard deviations.
 *
 * @param legSdStature median of the leg points per axis, over standing height
 * @param fastFootRatio median of ankles, heels and toes that move faster than {@value #FAST_MS} m/s over that of those slower
 *     than {@value #SLOW_MS} m/s; NaN without enough of both
 */
record Sharpness(double legSdStature, double fastFootRatio) {
    private static final double FAST_MS = 10;
    private static final double SLOW_MS = 2;
    private static final int LEAST_SAMPLES = 10;

    static Sharpness of(MotionTrack motion) {
        List<Double> all = new ArrayList<>();
        List<Double> fast = new ArrayList<>();
        List<Double> slow = new ArrayList<>();
        for (int f = 1; f < motion.frameCount() - 1; f++) {
            for (int i = BodyPoint.LEFT_HIP.index(); i < BodyPoint.COUNT; i++) {
                BodyPoint point = BodyPoint.at(i);
                double sd = motion.sd(f, point) / motion.statureM();
                if (!Double.isFinite(sd)) {
                    continue;
                }
                all.add(sd);
                double speed = motion.smooth(f + 1, point).distanceTo(motion.smooth(f - 1, point))
                        / (motion.timeS(f + 1) - motion.timeS(f - 1));
                if (i >= BodyPoint.LEFT_ANKLE.index() && speed > FAST_MS) {
                    fast.add(sd);
                } else if (i >= BodyPoint.LEFT_ANKLE.index() && speed < SLOW_MS) {
                    slow.add(sd);
                }
            }
        }
        boolean enough = Math.min(fast.size(), slow.size()) >= LEAST_SAMPLES;
        return new Sharpness(median(all), enough ? median(fast) / median(slow) : Double.NaN);
    }

    private static double median(List<Double> values) {
        return OrderStatistics.median(values.stream().mapToDouble(v -> v).toArray());
    }
}
