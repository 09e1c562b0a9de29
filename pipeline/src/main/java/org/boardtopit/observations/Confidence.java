package org.boardtopit.observations;

import org.boardtopit.clips.Label;
import org.boardtopit.measures.Quality;

/**
 * How far an observation can be trusted.
 *
 * <p>score = d / (d + 0.5) * basis * clip * contact, with d the distance of the near end of the 90 % interval from the guide in
 * widths of the rule, basis the weight of {@link BasisStrength}, clip 1, 0.85 or 0.4 for good, usable or poor quality, and contact
 * the least confidence of the contacts that bound the part. High from 0.6, medium from 0.3. So a guide that is only
 * remembered never gives high, and one of common practice only when even the near end is two widths out in a good clip. The numbers are ours,
 * chosen for that, not measured.
 */
public enum Confidence implements Label {
    HIGH("high"),
    MEDIUM("medium"),
    LOW("low");

    private static final double HALF_CLEAR_WIDTHS = 0.5;
    private static final double LEAST_HIGH = 0.6;
    private static final double LEAST_MEDIUM = 0.3;

    private final String label;

    Confidence(String label) {
        this.label = label;
    }

    @Override
    public String label() {
        return label;
    }

    /**
     * The formula's number, 0 to below 1.
     *
     * @param widths distance of the interval's near end from the guide, 0 or more
     * @param contact least confidence of the contacts concerned, 0 to 1
     */
    static double score(double widths, BasisStrength basis, Quality clip, double contact) {
        double clear = widths / (widths + HALF_CLEAR_WIDTHS);
        return clear * basis.weight() * weight(clip) * contact;
    }

    private static double weight(Quality clip) {
        return switch (clip) {
            case GOOD -> 1;
            case USABLE -> 0.85;
            case POOR -> 0.4;
        };
    }

    static Confidence of(double score) {
        return score >= LEAST_HIGH ? HIGH : score >= LEAST_MEDIUM ? MEDIUM : LOW;
    }
}
