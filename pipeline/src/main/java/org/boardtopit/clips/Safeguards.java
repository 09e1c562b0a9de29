package org.boardtopit.clips;

import java.time.LocalDate;
import java.util.Optional;

/**
 * What a competition says about protecting the people in its clips; {@code docs/safeguarding.md} gives the reasons for the
 * defaults.
 *
 * @param consent what a row without a word on consent means
 * @param faces whose faces are made unrecognisable in pictures
 * @param names whether tables name athletes
 * @param retention the last day on which pictures, landmarks and names may be kept
 */
public record Safeguards(Consents consent, Faces faces, Names names, Optional<LocalDate> retention) {

    /** What to do with a clip of which nobody said that the athlete agreed. */
    public enum Consents {
        /** Measure it unless the sheet says no. */
        ASSUMED,
        /** Withhold it unless the sheet says yes. */
        REQUIRED
    }

    /** Whose faces are covered in overlays and stills. */
    public enum Faces {
        BLUR_OTHERS,
        BLUR_ALL,
        SHOW
    }

    /** What outputs call an athlete. */
    public enum Names {
        SHOW,
        PSEUDONYMS,
        /** The bib, too, is replaced by the pseudonym. */
        PSEUDONYMS_AND_BIBS
    }

    public static final Safeguards DEFAULT =
            new Safeguards(Consents.ASSUMED, Faces.BLUR_OTHERS, Names.SHOW, Optional.empty());

    /** True when the last day of retention is before this one. */
    public boolean hasExpired(LocalDate today) {
        return retention.map(last -> last.isBefore(today)).orElse(false);
    }
}
