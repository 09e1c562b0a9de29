package org.boardtopit.accuracy;

import java.util.List;
import java.util.Optional;

/**
 * All errors of one clip.
 *
 * @param notMeasured why there are no measures at all; every error is then missing
 * @param quality as the tables state it; empty when not measured
 */
public record ClipScore(
        String clip,
        Optional<String> notMeasured,
        String quality,
        ContactScore contacts,
        List<MeasuredError> errors,
        List<PointError> points,
        LegExchanges legsBefore,
        LegExchanges legsAfter,
        Optional<GroundErrors> ground) {

    public ClipScore {
        errors = List.copyOf(errors);
        points = List.copyOf(points);
    }
}
