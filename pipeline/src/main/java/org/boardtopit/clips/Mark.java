package org.boardtopit.clips;

/**
 * A point of the runway that can be seen in a camera's reference picture.
 *
 * @param name what it is, such as "board front near"
 * @param alongM metres from the take-off line, towards the pit positive
 * @param acrossM metres from the middle of the runway, to the athlete's left positive
 * @param xPx from the left edge of the reference picture; (0, 0) is the outer corner of the top-left pixel
 * @param yPx from its top edge, downwards
 */
public record Mark(String name, double alongM, double acrossM, double xPx, double yPx) {
    /** A runway is 40 to 45 m long and a pit ends 21 m or more after the line (rules of the event); with room to spare. */
    public static final double MOST_ALONG_M = 100;

    /** The runway is 1.22 m wide; cones and fences beside it may be used too. */
    public static final double MOST_ACROSS_M = 50;

    /** Wider than any camera's picture; points a little outside the picture are of use. */
    public static final double MOST_PX = 20_000;

    public Mark {
        if (name.isBlank()) {
            throw new IllegalArgumentException("a mark needs a name");
        }
        within("alongM", alongM, MOST_ALONG_M);
        within("acrossM", acrossM, MOST_ACROSS_M);
        within("xPx", xPx, MOST_PX);
        within("yPx", yPx, MOST_PX);
    }

    private static void within(String what, double value, double most) {
        if (!(Math.abs(value) <= most)) {
            throw new IllegalArgumentException(what + " must be from -" + most + " to " + most + ", was " + value);
        }
    }
}
