package org.boardtopit.video.ffmpeg;

/**
 * Turns the stamps of a clip into times that begin at 0 and always rise.
 *
 * <p>Good stamps pass unchanged, less the first one. The rest is repaired like this, with {@code step} the nominal time
 * between frames:
 *
 * <ul>
 *   <li>no stamp: one step after the frame before;
 *   <li>a stamp equal to the frame before, or up to a second earlier: half a step after it. Half, so that the next good
 *       stamp, normally one step further on, still rises and the repair does not push all later frames;
 *   <li>a stamp more than a second earlier: the recorder restarted its clock. The frame follows one step after the one
 *       before, and all later stamps are shifted by the same amount.
 * </ul>
 */
final class PresentationClock {
    private static final long RESTART_US = 1_000_000; // far beyond any jitter of a muxer, far below a take

    private final long stepUs;
    private boolean started;
    private long originUs;
    private long lastUs;

    /** @param stepUs nominal time between frames, at least 2 */
    PresentationClock(long stepUs) {
        if (stepUs < 2) {
            throw new IllegalArgumentException("stepUs must be at least 2, was " + stepUs);
        }
        this.stepUs = stepUs;
    }

    /** Time of the next frame from its stamp, or from {@link Libav#NO_STAMP}; 0 for the first. */
    long next(long stampUs) {
        if (!started) {
            started = true;
            originUs = stampUs == Libav.NO_STAMP ? 0 : stampUs;
            return 0;
        }
        lastUs = repaired(stampUs);
        return lastUs;
    }

    private long repaired(long stampUs) {
        if (stampUs == Libav.NO_STAMP) {
            return lastUs + stepUs;
        }
        long timeUs = stampUs - originUs;
        if (timeUs > lastUs) {
            return timeUs;
        }
        if (timeUs >= lastUs - RESTART_US) {
            return lastUs + stepUs / 2;
        }
        originUs = stampUs - lastUs - stepUs;
        return lastUs + stepUs;
    }
}
