package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.util.List;
import org.boardtopit.clips.Clip;

/**
 * The work of a run, for the forecast of its end. Clips weigh by their files' sizes: nothing better is known of a clip
 * before it is opened, and the clips of a competition come from few cameras.
 */
final class Workload {
    /** So little of the work says nothing yet of the rest; a first guess, not tuned. */
    private static final double LEAST_SHARE = 0.005;

    private final double[] doneBefore;
    private final double total;

    Workload(long[] weights) {
        doneBefore = new double[weights.length + 1];
        for (int i = 0; i < weights.length; i++) {
            doneBefore[i + 1] = doneBefore[i] + weights[i];
        }
        total = doneBefore[weights.length];
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

    /** Share of the whole work that is done, 0 to 1, when this share of a clip is. */
    double share(int clip, double clipShare) {
        double within = Math.max(0, Math.min(1, clipShare));
        double done = doneBefore[clip] + within * (doneBefore[clip + 1] - doneBefore[clip]);
        return total == 0 ? 1 : done / total;
    }

    /** Seconds that the rest takes; NaN while too little is done to tell. */
    static double remainingS(double share, double elapsedS) {
        return share < LEAST_SHARE ? Double.NaN : elapsedS * (1 - share) / share;
    }
}
