package org.boardtopit.body;

/** The segments that the body is cut into. Arms and legs come twice. */
public enum Segment {
    /** Vertex to the middle of the jaw angles. */
    HEAD(1),
    /** Middle of the shoulders to middle of the hips. */
    TRUNK(1),
    /** Shoulder to elbow. */
    UPPER_ARM(2),
    /** Elbow to wrist. */
    FOREARM(2),
    /** Wrist to the third knuckle. */
    HAND(2),
    /** Hip to knee. */
    THIGH(2),
    /** Knee to ankle joint centre. */
    SHANK(2),
    /** Heel to toe tip. */
    FOOT(2);

    private final int count;

    Segment(int count) {
        this.count = count;
    }

    /** How many of them a body has, 1 or 2. */
    public int count() {
        return count;
    }
}
