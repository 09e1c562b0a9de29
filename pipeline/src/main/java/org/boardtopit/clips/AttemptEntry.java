package org.boardtopit.clips;

import java.util.Optional;
import java.util.OptionalInt;

/**
 * One row of the competition's attempts sheet.
 *
 * @param line of the sheet, counted from 1, for messages
 * @param clip file name of the clip, without a folder
 * @param bib number on the shirt; empty when not given
 * @param athlete name or pseudonym; empty when not given
 * @param event such as Triple Jump; empty when not given
 * @param attempt number of the attempt in the competition, from 1
 * @param result as on the card
 * @param officialM official distance, from the take-off line; NaN when not given
 * @param windMs along the runway, from behind the athlete positive; NaN when not given
 * @param takeoffFoot foot on the board, of a drill that of the first contact, where the user knows it
 * @param camera name of a camera of the meet sheet; empty when not given
 * @param captureFps frames a second at which the camera looked, for slow motion that is stored slower; NaN when not given
 * @param pattern what a drill clip shows; empty for a triple jump
 * @param consent whether the athlete agreed to be filmed and measured
 */
public record AttemptEntry(
        int line,
        String clip,
        String bib,
        String athlete,
        String event,
        OptionalInt attempt,
        Optional<AttemptResult> result,
        double officialM,
        double windMs,
        Optional<TakeoffFoot> takeoffFoot,
        String camera,
        double captureFps,
        Optional<Pattern> pattern,
        Consent consent) {

    /** More than any competition has, jump-offs included. */
    public static final int MOST_ATTEMPTS = 99;

    /** Twice the distance of any triple jump; leaves room for long series of bounds in drills. */
    public static final double MOST_OFFICIAL_M = 40;

    /** A storm; no competition is held in it. */
    public static final double MOST_WIND_MS = 25;

    /** Faster than phones and camcorders record. */
    public static final double MOST_CAPTURE_FPS = 2000;

    /** NOT_SAID is not a refusal: the sheet has no word on it. */
    public enum Consent {
        YES,
        NO,
        NOT_SAID
    }

    /** The same row with another bib and name. */
    AttemptEntry named(String otherBib, String otherAthlete) {
        return new AttemptEntry(
                line,
                clip,
                otherBib,
                otherAthlete,
                event,
                attempt,
                result,
                officialM,
                windMs,
                takeoffFoot,
                camera,
                captureFps,
                pattern,
                consent);
    }

    public AttemptEntry {
        if (clip.isBlank()) {
            throw new IllegalArgumentException("an entry needs a clip");
        }
        if (attempt.isPresent() && (attempt.getAsInt() < 1 || attempt.getAsInt() > MOST_ATTEMPTS)) {
            throw new IllegalArgumentException("attempt must be from 1 to " + MOST_ATTEMPTS + ", was " + attempt);
        }
        if (officialM <= 0 || officialM > MOST_OFFICIAL_M) {
            throw new IllegalArgumentException("officialM must be above 0 and at most " + MOST_OFFICIAL_M);
        }
        if (Math.abs(windMs) > MOST_WIND_MS) {
            throw new IllegalArgumentException("windMs must be from -25 to 25, was " + windMs);
        }
        if (captureFps <= 0 || captureFps > MOST_CAPTURE_FPS) {
            throw new IllegalArgumentException("captureFps must be above 0 and at most " + MOST_CAPTURE_FPS);
        }
    }
}
