package org.boardtopit.accuracy;

import java.util.EnumMap;
import java.util.Map;
import org.boardtopit.measures.BodyAngle;

/**
 * The true posture at a touchdown (the last instant of flight) or a toe-off (the last instant of support).
 *
 * @param readings those that the file has, in the units of {@link BodyAngle}
 * @param comHeightM centre of mass above the ground
 */
record InstantTruth(Map<BodyAngle, Double> readings, double comAlongM, double comHeightM) {
    InstantTruth {
        Map<BodyAngle, Double> copy = new EnumMap<>(BodyAngle.class);
        copy.putAll(readings);
        readings = java.util.Collections.unmodifiableMap(copy);
    }
}
