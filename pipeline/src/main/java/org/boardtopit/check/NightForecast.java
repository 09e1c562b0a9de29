package org.boardtopit.check;

import java.util.List;

/**
 * What a run will need.
 *
 * @param seconds how long it will take
 * @param leastS it hardly takes less
 * @param mostS it hardly takes more
 * @param needBytes most that the output folder will grow by
 * @param frames that are to be measured
 */
public record NightForecast(double seconds, double leastS, double mostS, long needBytes, long frames) {
    /** Surveying, finding the athlete and drawing, in seconds a frame and million pixels; measured with two threads. */
    private static final double OTHER_S_PER_MEGAPIXEL_FRAME = 0.012;

    /** Opening, tests of the networks, measuring and tables. */
    private static final double PER_CLIP_S = 1.0;

    private static final double START_S = 8;

    /** How far two of three clips were from the estimate, other work on the machine left aside. */
    private static final double UNSURE = 0.3;

    /** The encoder's target is 0.12 bits a pixel; hand-held pans reach it. */
    private static final double OVERLAY_BYTES_PER_PIXEL = 0.12 / 8;

    private static final long WORK_BYTES_PER_FRAME = 2000;
    private static final long OTHER_BYTES_PER_CLIP = 1 << 20;

    /**
     * For the clips of a run.
     *
     * @param picturesPerSecond that the network reads on this machine, with the threads of the run
     * @param looks of the network at each frame
     * @param overlays whether overlay videos are made
     */
    public static NightForecast of(List<CheckedClip> clips, double picturesPerSecond, int looks, boolean overlays) {
        double seconds = START_S;
        double bytes = 0;
        long frames = 0;
        for (CheckedClip clip : clips) {
            if (!clip.willBeMeasured()) {
                continue;
            }
            double megapixels = clip.facts()
                    .map(f -> f.info().widthPx() * 1e-6 * f.info().heightPx())
                    .orElse(0.0);
            frames += clip.frames();
            seconds +=
                    PER_CLIP_S + clip.frames() * (looks / picturesPerSecond + megapixels * OTHER_S_PER_MEGAPIXEL_FRAME);
            bytes += OTHER_BYTES_PER_CLIP
                    + clip.frames()
                            * (WORK_BYTES_PER_FRAME + (overlays ? megapixels * 1e6 * OVERLAY_BYTES_PER_PIXEL : 0));
        }
        return new NightForecast(seconds, (1 - UNSURE) * seconds, (1 + UNSURE) * seconds, Math.round(bytes), frames);
    }
}
