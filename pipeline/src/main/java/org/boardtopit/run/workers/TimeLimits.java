package org.boardtopit.run.workers;

/**
 * How long a clip may take before its worker is taken for hung. Two limits: one without any sign of life, where reading a frame
 * is one, and one on the whole clip. Both grow with what is known of the clip.
 *
 * @param quietS without a sign of life, for a clip of no length
 * @param quietPerFrameS more for each frame: the fits over the whole clip read none
 * @param wholeS for a clip of no length
 * @param wholePerFrameS more for each frame
 * @param perMegabyteS more on both for each megabyte: the file is read through for its fingerprint
 */
public record TimeLimits(
        double quietS, double quietPerFrameS, double wholeS, double wholePerFrameS, double perMegabyteS) {

    /**
     * First guesses with a wide margin: two cores were measured to take 0.1 to 0.2 s a frame at normal effort, and the longest
     * silence some seconds; a slow network drive gives 5 MB/s.
     */
    public static final TimeLimits DEFAULT = new TimeLimits(180, 0.05, 900, 4, 0.2);

    /** No codec makes frames smaller than this, whatever the head of the file says of their number. */
    private static final int LEAST_BYTES_PER_FRAME = 16;

    double quietS(long frames, long bytes) {
        return quietS + quietPerFrameS * believable(frames, bytes) + perMegabyteS * bytes * 1e-6;
    }

    double wholeS(long frames, long bytes) {
        return wholeS + wholePerFrameS * believable(frames, bytes) + perMegabyteS * bytes * 1e-6;
    }

    private static double believable(long frames, long bytes) {
        return Math.max(0, Math.min(frames, bytes / LEAST_BYTES_PER_FRAME));
    }
}
