package org.boardtopit.report.overlay;

/**
 * Time along the phase strip.
 *
 * @param leftPx where 0 lies
 * @param rightPx where durationUs lies
 */
public record TimeAxis(double leftPx, double rightPx, long durationUs) {

    public TimeAxis {
        if (!(rightPx >= leftPx)) {
            throw new IllegalArgumentException("rightPx must not be left of leftPx, was " + rightPx + " < " + leftPx);
        }
        if (durationUs <= 0) {
            throw new IllegalArgumentException("durationUs must be positive, was " + durationUs);
        }
    }

    /** Proportional to time; times outside the clip are held at its ends. */
    public double xAt(long timeUs) {
        long inside = Math.max(0, Math.min(durationUs, timeUs));
        return leftPx + (rightPx - leftPx) * inside / durationUs;
    }
}
