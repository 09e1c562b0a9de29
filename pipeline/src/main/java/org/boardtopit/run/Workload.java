package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Arrays;
import java.util.List;
import org.boardtopit.clips.Clip;

/**
 * The work of a run, for the forecast of its end. Clips weigh by their files' sizes: nothing better is known of a clip
 * before it is opened, and the clips of a competition come from few cameras.
 */
final class Workload {
    /** So little of the work says nothing yet of the rest; a first guess, not tuned. */
    private static final double LEAST_SHARE = 0.005;

    private final long[] weights;
    private final double[] shares;

    Workload(long[] weights) {
        this.weights = weights.clone();
        this.shares = new double[weights.length];
    }

    static Workload of(List<Clip> clips) {
        return new Workload(clips.stream().mapToLong(Workload::weight).toArray());
    }

    private static long weight(Clip clip) {
        if (clip.withheld().isPresent()) {
            return 0;
        }
        try {
            return Math.max(1, Files.size(clip.file()));
        } catch (IOException e) {
            return 1; // whoever opens it will say what is wrong
        }
    }

    /** A clip that is no work. */
    void leaveOut(int clip) {
        weights[clip] = 0;
    }

    /** This share of a clip is done, 0 to 1. */
    void done(int clip, double share) {
        shares[clip] = Math.max(0, Math.min(1, share));
    }

    /** Share of the whole work that is done, 0 to 1. */
    double share() {
        double total = Arrays.stream(weights).asDoubleStream().sum();
        double done = 0;
        for (int i = 0; i < weights.length; i++) {
            done += weights[i] * shares[i];
        }
        return total == 0 ? 1 : Math.min(1, done / total);
    }

    /** Seconds that the rest takes; NaN while too little is done to tell. */
    static double remainingS(double share, double elapsedS) {
        return share < LEAST_SHARE ? Double.NaN : elapsedS * (1 - share) / share;
    }
}
