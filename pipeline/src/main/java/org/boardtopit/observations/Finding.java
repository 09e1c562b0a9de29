package org.boardtopit.observations;

import org.boardtopit.measures.Evidence;

/**
 * A value whose whole interval lies on one side of a rule's guide, or clearly inside it.
 *
 * @param statement what the rule says of that side
 * @param widths distance of the interval's near end from the guide in the rule's widths, 0 or more
 * @param score of {@link Confidence}
 */
record Finding(
        Rule rule,
        Statement statement,
        Evidence evidence,
        Interval interval,
        Guide guide,
        double widths,
        double score) {

    /** Beyond this many widths more is not worse: one odd number must not hide everything else. A first guess. */
    private static final double MOST_WIDTHS = 4;

    /** By which findings are ordered: how far out, as far as the guide can be believed. */
    double weight() {
        return Math.min(widths, MOST_WIDTHS) * rule.strength().weight();
    }
}
