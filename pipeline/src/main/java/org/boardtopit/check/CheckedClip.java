package org.boardtopit.check;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.Clip;
import org.boardtopit.video.ClipFacts;

/**
 * What a look at a clip told.
 *
 * @param facts empty when it cannot be opened, or was not because consent is refused
 * @param willBeMeasured whether the run will try to measure it
 * @param slowDown by how much slower the file plays than the camera looked; 1 unless {@code capture_fps} says so
 * @param edgePx width of edges that stand still: sharpness, 2 or 3 pixels are sharp; NaN when unknown
 * @param shutterS about how long the shutter is open; NaN when unknown
 * @param smearPx by how much fast movement is smeared; NaN when unknown
 * @param athletePx about how tall the athlete stands at the board; NaN without marks or a match
 * @param picture how the clip fits the reference picture of its camera
 * @param findings what is to be said of it, in the order of weight
 */
public record CheckedClip(
        Clip clip,
        Optional<ClipFacts> facts,
        boolean willBeMeasured,
        double slowDown,
        double edgePx,
        double shutterS,
        double smearPx,
        double athletePx,
        PictureMatch picture,
        List<Finding> findings) {

    /** How a clip fits its camera's reference picture. */
    public enum PictureMatch {
        /** All frames that were looked at lie in it. */
        MATCHES,
        /** Some do. */
        PARTLY,
        /** None does. */
        NO_MATCH,
        /** The camera has no picture, or none is known. */
        NO_PICTURE
    }

    public CheckedClip {
        findings = List.copyOf(findings);
    }

    /** What the sheet says. */
    public Consent consent() {
        return clip.entry().map(e -> e.consent()).orElse(Consent.NOT_SAID);
    }

    /** Frames a second at which the camera looked; NaN when unknown. */
    public double fps() {
        return facts.map(f -> f.fps() * slowDown).orElse(Double.NaN);
    }

    /** A rate as people write it: 60, 59.94, 119.88. */
    public static String spokenRate(double fps) {
        return BigDecimal.valueOf(fps)
                .setScale(2, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** Frames to be read; 0 when it will not be measured. */
    public long frames() {
        return willBeMeasured ? facts.map(f -> Math.max(0, f.frames())).orElse(0L) : 0;
    }
}
