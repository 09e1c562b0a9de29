package org.boardtopit.models;

/**
 * The 33 points of the body that every landmark network is mapped to, in the order of the tables and arrays.
 *
 * <p>Left and right are the athlete's own. Hips, knees, ankles, shoulders, elbows and wrists are joint centres; heel and
 * toe are the ends of the shoe as the tuned networks see them.
 */
public enum BodyPoint {
    NOSE,
    LEFT_EYE_INNER,
    LEFT_EYE,
    LEFT_EYE_OUTER,
    RIGHT_EYE_INNER,
    RIGHT_EYE,
    RIGHT_EYE_OUTER,
    LEFT_EAR,
    RIGHT_EAR,
    MOUTH_LEFT,
    MOUTH_RIGHT,
    LEFT_SHOULDER,
    RIGHT_SHOULDER,
    LEFT_ELBOW,
    RIGHT_ELBOW,
    LEFT_WRIST,
    RIGHT_WRIST,
    LEFT_LITTLE_FINGER,
    RIGHT_LITTLE_FINGER,
    LEFT_INDEX_FINGER,
    RIGHT_INDEX_FINGER,
    LEFT_THUMB,
    RIGHT_THUMB,
    LEFT_HIP,
    RIGHT_HIP,
    LEFT_KNEE,
    RIGHT_KNEE,
    LEFT_ANKLE,
    RIGHT_ANKLE,
    LEFT_HEEL,
    RIGHT_HEEL,
    LEFT_TOE,
    RIGHT_TOE;

    private static final BodyPoint[] ALL = values();

    /** Number of points: 33. */
    public static final int COUNT = ALL.length;

    /** Place of the point in every array of points, 0 to 32. */
    @SuppressWarnings("EnumOrdinal") // the order of the constants is the order of the arrays, by definition
    public int index() {
        return ordinal();
    }

    /** The point at a place in the arrays. */
    public static BodyPoint at(int index) {
        return ALL[index];
    }

    /** The same point of the other side of the body; the nose is its own. */
    public BodyPoint otherSide() {
        return switch (this) {
            case NOSE -> NOSE;
            case LEFT_EYE_INNER, LEFT_EYE, LEFT_EYE_OUTER -> at(index() + 3);
            case RIGHT_EYE_INNER, RIGHT_EYE, RIGHT_EYE_OUTER -> at(index() - 3);
            default -> at(index() % 2 == 1 ? index() + 1 : index() - 1);
        };
    }

    /** True for the athlete's left half. The nose belongs to neither. */
    public boolean isLeft() {
        return name().startsWith("LEFT") || this == MOUTH_LEFT;
    }
}
