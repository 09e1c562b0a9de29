package org.boardtopit.video.ffmpeg;

import java.util.ArrayList;
import java.util.List;

/**
 * One of the eight ways a stored picture becomes upright: first x and y are swapped or not, then the result is mirrored left
 * to right, then top to bottom.
 *
 * @param swapsAxes the stored picture's rows become columns
 * @param mirrorsX the result is then mirrored left to right
 * @param mirrorsY the result is then mirrored top to bottom
 */
record Orientation(boolean swapsAxes, boolean mirrorsX, boolean mirrorsY) {
    static final Orientation UPRIGHT = new Orientation(false, false, false);

    /**
     * From the nine numbers of a display matrix (ISO/IEC 14496-12, 8.3.2.3: x' = a x + c y, y' = b x + d y with a, b at 0, 1
     * and c, d at 3, 4). Any other angle is taken as the nearest right one.
     */
    static Orientation ofDisplayMatrix(int[] matrix) {
        long a = matrix[0];
        long b = matrix[1];
        long c = matrix[3];
        long d = matrix[4];
        if (Math.abs(a) + Math.abs(d) >= Math.abs(b) + Math.abs(c)) {
            return new Orientation(false, a < 0, d < 0);
        }
        return new Orientation(true, c < 0, b < 0);
    }

    /** Clockwise turn, leaving a mirroring aside: 0, 90, 180 or 270. */
    int clockwiseDeg() {
        if (swapsAxes) {
            return mirrorsX ? 90 : 270;
        }
        return mirrorsX && mirrorsY ? 180 : 0;
    }

    /** The filters that do it, none when the picture is upright already. */
    List<String> filters() {
        if (swapsAxes) {
            return List.of("transpose=dir=" + transposeDirection());
        }
        List<String> filters = new ArrayList<>();
        if (mirrorsX) {
            filters.add("hflip");
        }
        if (mirrorsY) {
            filters.add("vflip");
        }
        return filters;
    }

    private String transposeDirection() {
        if (mirrorsX) {
            return mirrorsY ? "clock_flip" : "clock";
        }
        return mirrorsY ? "cclock" : "cclock_flip";
    }
}
