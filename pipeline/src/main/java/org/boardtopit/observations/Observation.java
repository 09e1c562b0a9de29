package org.boardtopit.observations;

import java.util.Optional;
import org.boardtopit.clips.Label;

/**
 * One remark on an attempt with its evidence.
 *
 * @param rank place among the attempt's observations, from 1
 * @param phase word of the phase; empty for the attempt as a whole
 * @param finding a few words, the same in every language
 * @param heading the same in the language of the competition
 * @param evidence what was measured; empty for what is only described or not visible
 * @param basis what the guide rests on and what that means for the athlete's level
 * @param severity widths by which the near end of the interval lies outside the guide, or inside it for a strength; NaN without
 *     evidence
 * @param causedBy what it was set up by, phase and finding, the same in every language; empty when nothing is known
 * @param practice a suggestion with its cautions; may be empty
 */
public record Observation(
        int rank,
        Kind kind,
        String topic,
        String phase,
        String finding,
        String heading,
        Optional<Measured> evidence,
        String basis,
        Confidence confidence,
        double severity,
        String causedBy,
        AthleteLevel level,
        String text,
        String practice) {

    /** What an observation is, in the order in which they are given. */
    public enum Kind implements Label {
        PRIORITY("priority"),
        STRENGTH("strength"),
        REMARK("remark"),
        NOT_VISIBLE("not_visible");

        private final String label;

        Kind(String label) {
            this.label = label;
        }

        @Override
        public String label() {
            return label;
        }
    }

    /**
     * The number behind it.
     *
     * @param part and {@code measure} as in {@link org.boardtopit.measures.Evidence}
     * @param atS seconds from the first frame at which a picture shows it
     */
    public record Measured(
            String part, String measure, double atS, double value, Interval interval, MeasureUnit unit, Guide guide) {}
}
