package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boardtopit.measures.BodyAngle;

/**
 * A measure of an attempt whose error is counted.
 *
 * @param name as in the report; unique
 * @param group what the report pools it with
 * @param unit of the reported errors
 * @param perUnit how many of that unit make one of the pipeline's own (seconds, metres, degrees, points)
 */
record Measure(String name, Group group, String unit, double perUnit) {

    /** What belongs together in the report. */
    enum Group {
        TIMES("contact times"),
        APPROACH("approach contacts"),
        PLACES("places"),
        DISTANCES("distances"),
        SHARES("shares"),
        SPEEDS("speeds"),
        ANGLES_TOUCHDOWN("angles at touchdown"),
        ANGLES_TOE_OFF("angles at toe-off"),
        MOVEMENT("movement in supports and flights");

        private final String label;

        Group(String label) {
            this.label = label;
        }

        String label() {
            return label;
        }
    }

    static final Measure TOUCHDOWN = new Measure("touchdown", Group.TIMES, "ms", 1000);
    static final Measure PIT_TOUCHDOWN = new Measure("touchdown in the pit", Group.TIMES, "ms", 1000);
    static final Measure TOE_OFF = new Measure("toe-off", Group.TIMES, "ms", 1000);
    static final Measure SUPPORT = new Measure("support time", Group.TIMES, "ms", 1000);
    static final Measure APPROACH_TOUCHDOWN = new Measure("touchdown, approach", Group.APPROACH, "ms", 1000);
    static final Measure APPROACH_TOE_OFF = new Measure("toe-off, approach", Group.APPROACH, "ms", 1000);
    static final Measure APPROACH_SUPPORT = new Measure("support time, approach", Group.APPROACH, "ms", 1000);
    static final Measure TOE_PLACE = new Measure("toe place", Group.PLACES, "cm", 100);
    static final Measure TOE_TO_BOARD = new Measure("toe to board", Group.PLACES, "cm", 100);
    static final Measure PIT_MARK = new Measure("rear heel in the pit", Group.PLACES, "cm", 100);
    static final Measure DISTANCE = new Measure("phase distance", Group.DISTANCES, "cm", 100);
    static final Measure EFFECTIVE = new Measure("effective distance", Group.DISTANCES, "cm", 100);
    static final Measure SHARE = new Measure("share", Group.SHARES, "points", 1);
    static final Measure LEAD = new Measure("lead", Group.SHARES, "points", 1);
    static final Measure VX = new Measure("vx at take-off", Group.SPEEDS, "m/s", 1);
    static final Measure VY = new Measure("vy at take-off", Group.SPEEDS, "m/s", 1);
    static final Measure TAKEOFF_ANGLE = new Measure("take-off angle", Group.SPEEDS, "deg", 1);
    static final Measure APPROACH_SPEED = new Measure("approach speed", Group.SPEEDS, "m/s", 1);
    static final Measure SPEED_CHANGE = new Measure("speed change", Group.SPEEDS, "m/s", 1);
    static final Measure LAST_STRIDES = new Measure("last two strides", Group.DISTANCES, "cm", 100);
    static final Measure COM_HEIGHT = new Measure("centre of mass at take-off", Group.SPEEDS, "cm", 100);
    static final Measure GRAVITY = new Measure("gravity ratio", Group.SPEEDS, "%", 100);

    static final Measure KNEE_MIN = movement("least knee in support", "deg");
    static final Measure KNEE_YIELD = movement("knee yield", "deg");
    static final Measure BEFORE_MID_SUPPORT = movement("before mid-support", "%");
    static final Measure INTERVAL = movement("interval", "ms", 1000);
    static final Measure SUPPORT_SHARE = movement("support share", "%");
    static final Measure RHYTHM = movement("rhythm evenness", "%");
    static final Measure FREE_THIGH_MAX = movement("free thigh, largest", "deg");
    static final Measure FREE_THIGH_HOLD = movement("free thigh held", "%");
    static final Measure FREE_THIGH_MIN = movement("free thigh, least", "deg");
    static final Measure FREE_KNEE_MIN = movement("free knee, least", "deg");
    static final Measure FREE_LEVER_MIN = movement("free lever, least", "%");
    static final Measure THIGH_SEPARATION = movement("thigh separation", "deg");
    static final Measure REACH_SHANK = movement("reach of the shank", "deg");
    static final Measure PULL_BACK = movement("pull-back", "deg");
    static final Measure TRUNK_MAX = movement("trunk, largest lean", "deg");
    static final Measure TRUNK_CHANGE = movement("trunk change", "deg");
    static final Measure HEAD_CHANGE = movement("head change", "deg");
    static final Measure THIGH_DROP = movement("thighs drop before the pit", "ms", 1000);
    static final Measure FOOT_SPEED = movement("foot speed at touchdown", "m/s");
    static final Measure FOOT_SPEED_RELATIVE = movement("foot speed against the body", "m/s");
    static final Measure ARM_TOUCHDOWN = movement("arm at touchdown", "deg");
    static final Measure ARM_TOE_OFF = movement("arm at toe-off", "deg");
    static final Measure COM_PEAK = movement("centre of mass at its highest", "cm", 100);
    static final Measure HEEL_AHEAD = movement("heel ahead in the pit", "cm", 100);
    static final Measure WRISTS_BEHIND = movement("wrists behind in the pit", "cm", 100);

    private static Measure movement(String name, String unit) {
        return movement(name, unit, 1);
    }

    private static Measure movement(String name, String unit, double perUnit) {
        return new Measure(name, Group.MOVEMENT, unit, perUnit);
    }

    /** In the order of the report. */
    static final List<BodyAngle> ANGLES = List.of(
            BodyAngle.KNEE,
            BodyAngle.HIP,
            BodyAngle.TRUNK,
            BodyAngle.ANKLE,
            BodyAngle.THIGH,
            BodyAngle.SHANK,
            BodyAngle.FREE_KNEE,
            BodyAngle.FREE_THIGH,
            BodyAngle.FOOT_AHEAD);

    static Measure angle(BodyAngle angle, boolean touchdown) {
        String name = angle.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        boolean length = angle == BodyAngle.FOOT_AHEAD;
        return new Measure(
                name + (touchdown ? " at touchdown" : " at toe-off"),
                touchdown ? Group.ANGLES_TOUCHDOWN : Group.ANGLES_TOE_OFF,
                length ? "cm" : "deg",
                length ? 100 : 1);
    }

    /** All, in the order of the report. */
    static List<Measure> all() {
        List<Measure> all = new ArrayList<>(List.of(
                TOUCHDOWN,
                PIT_TOUCHDOWN,
                TOE_OFF,
                SUPPORT,
                APPROACH_TOUCHDOWN,
                APPROACH_TOE_OFF,
                APPROACH_SUPPORT,
                TOE_PLACE,
                TOE_TO_BOARD,
                PIT_MARK,
                DISTANCE,
                EFFECTIVE,
                SHARE,
                LEAD,
                VX,
                VY,
                TAKEOFF_ANGLE,
                SPEED_CHANGE,
                LAST_STRIDES,
                APPROACH_SPEED,
                COM_HEIGHT,
                GRAVITY));
        for (boolean touchdown : new boolean[] {true, false}) {
            ANGLES.forEach(angle -> all.add(angle(angle, touchdown)));
        }
        all.addAll(List.of(
                KNEE_MIN,
                KNEE_YIELD,
                BEFORE_MID_SUPPORT,
                INTERVAL,
                SUPPORT_SHARE,
                RHYTHM,
                FREE_THIGH_MAX,
                FREE_THIGH_HOLD,
                FREE_THIGH_MIN,
                FREE_KNEE_MIN,
                FREE_LEVER_MIN,
                THIGH_SEPARATION,
                REACH_SHANK,
                PULL_BACK,
                TRUNK_MAX,
                TRUNK_CHANGE,
                HEAD_CHANGE,
                THIGH_DROP,
                FOOT_SPEED,
                FOOT_SPEED_RELATIVE,
                ARM_TOUCHDOWN,
                ARM_TOE_OFF,
                COM_PEAK,
                HEEL_AHEAD,
                WRISTS_BEHIND));
        return all;
    }
}
