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
    /**
     * Surveying, finding the athlete and drawing a frame of a million pixels, in looks of the network: so a slow machine is slow
     * in both. Measured on six clips with two threads, overlays included, on a machine that did other work as well.
     */
    private static final double OTHER_LOOKS_PER_MEGAPIXEL = 1.9;

    /** Opening, the fit of the whole clip, and tables. */
    private static final double PER_CLIP_S = 2.5;

    /** Start of the program and tests of the networks. */
    private static final double START_S = 8;

    /** What the machine does beside, heat and clips of other kinds: a first guess, not tuned. */
    private static final double UNSURE = 0.4;

    /** The encoder's target is 0.12 bits a pixel; hand-held pans reach it. */
    private static final double OVERLAY_BYTES_PER_PIXEL = 0.12 / 8;

    /** Thirteen stills, the strip and the phase picture: 1.4 to 1.9 MB on our footage, noisy clips take twice that. */
    private static final long STILLS_BYTES_PER_CLIP = 4 << 20;

    private static final long WORK_BYTES_PER_FRAME = 2000;
    private static final long OTHER_BYTES_PER_CLIP = 1 << 20;

    /**
     * For the clips of a run.
     *
     * @param picturesPerSecond that the network reads on this machine, with the threads of the run
     * @param looks of the network at each frame
     * @param overlays whether overlay videos and stills are made
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
                    PER_CLIP_S + clip.frames() * (looks + megapixels * OTHER_LOOKS_PER_MEGAPIXEL) / picturesPerSecond;
            bytes += OTHER_BYTES_PER_CLIP
                    + (overlays ? STILLS_BYTES_PER_CLIP : 0)
                    + clip.frames()
                            * (WORK_BYTES_PER_FRAME + (overlays ? megapixels * 1e6 * OVERLAY_BYTES_PER_PIXEL : 0));
        }
        return new NightForecast(seconds, (1 - UNSURE) * seconds, (1 + UNSURE) * seconds, Math.round(bytes), frames);
    }
}
