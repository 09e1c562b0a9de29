package org.boardtopit.corrections;

import java.util.Locale;
import org.boardtopit.clips.Correction;
import org.boardtopit.pose.ClipLandmarks;

/** Turns the frames and times that an analyst wrote into seconds from the first frame, and refuses those outside the clip. */
final class ClipInstants {
    private static final String VALUE = "value";

    private final ClipLandmarks clip;

    ClipInstants(ClipLandmarks clip) {
        this.clip = clip;
    }

    /**
     * Standard deviation of an instant that a person named.
     *
     * <p>Whoever names a frame leaves open half a frame to either side, and no instant within is likelier than another: a
     * rectangular distribution of half-width a = step / 2 has the standard deviation a / sqrt 3 (JCGM 100:2008, "Guide to the
     * expression of uncertainty in measurement", 4.3.7). Between two frames nobody sees more, so it is the same for times.
     */
    double sdS() {
        return clip.frameStepS() / 2 / Math.sqrt(3);
    }

    /** The instant of a correction, or the beginning of its span. */
    double fromS(Correction correction) {
        return seconds(correction, correction.from());
    }

    /** The end of its span; NaN when it has none. */
    double toS(Correction correction) {
        return Double.isNaN(correction.to()) ? Double.NaN : seconds(correction, correction.to());
    }

    private double seconds(Correction correction, double value) {
        int last = clip.frameCount() - 1;
        if (correction.inFrames()) {
            if (value > last) {
                throw new RefusedCorrectionException(
                        correction,
                        VALUE,
                        "frame " + plain(value) + " is outside the clip, whose frames are 0 to " + last);
            }
            int frame = (int) value;
            double share = value - frame;
            return share == 0
                    ? clip.timeS(frame)
                    : clip.timeS(frame) + share * (clip.timeS(frame + 1) - clip.timeS(frame));
        }
        if (value > clip.timeS(last)) {
            throw new RefusedCorrectionException(
                    correction,
                    VALUE,
                    String.format(
                            Locale.ROOT,
                            "%s s is outside the clip, which ends at %.3f s",
                            plain(value),
                            clip.timeS(last)));
        }
        return value;
    }

    private static String plain(double value) {
        return value == Math.rint(value) ? Long.toString((long) value) : Double.toString(value);
    }

    /** For a message: as frame and time. */
    String inWords(double timeS) {
        return String.format(Locale.ROOT, "frame %d (%.3f s)", clip.nearestFrame(timeS), timeS);
    }
}
