package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.List;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.PersonDetector;

/**
 * What the detector found in one square of the picture, said again as long as the square shows the same: before a camera that
 * stands still most of the picture does.
 *
 * <p>The square shows the same when no small part of it has changed by more than noise since the detector looked. After a few
 * repetitions the detector looks all the same, because what it overlooks depends on noise, too; of two looks at the same the one
 * counts that found more people.
 */
final class SquareMemory {
    /** Of the square as the detector gets it: the smallest head that is looked for fills one. */
    private static final int CELL_PX = 8;

    /**
     * Mean difference in a cell, of 255. A first guess, not tuned: above the noise of a daylight clip, well below what a head
     * does before a lawn. Noise beyond it only means that the detector looks each time.
     */
    private static final double LARGEST_NOISE = 6;

    private static final int MOST_REPETITIONS = 3;

    private final int sidePx;
    private final byte[] seen;
    private final byte[] now;
    private List<DetectedPerson> people = List.of();
    private int repetitions;
    private boolean looked;

    SquareMemory(int sidePx) {
        this.sidePx = sidePx;
        this.seen = new byte[3 * sidePx * sidePx];
        this.now = new byte[3 * sidePx * sidePx];
    }

    /** Who is in the square; the detector is asked only where it can find something new. */
    List<DetectedPerson> people(ByteBuffer rgb, PersonDetector detector) {
        rgb.get(0, now);
        boolean same = looked && isSame();
        if (same && repetitions < MOST_REPETITIONS) {
            repetitions++;
            return people;
        }
        List<DetectedPerson> found = detector.find(rgb);
        if (!same || found.size() >= people.size()) {
            people = List.copyOf(found);
            System.arraycopy(now, 0, seen, 0, now.length);
        }
        looked = true;
        repetitions = 0;
        return people;
    }

    private boolean isSame() {
        for (int y = 0; y < sidePx; y += CELL_PX) {
            for (int x = 0; x < sidePx; x += CELL_PX) {
                if (difference(x, y) > LARGEST_NOISE) {
                    return false;
                }
            }
        }
        return true;
    }

    /** Mean over a cell; cells at the right and lower edge may be smaller. */
    private double difference(int left, int top) {
        int right = Math.min(sidePx, left + CELL_PX);
        int bottom = Math.min(sidePx, top + CELL_PX);
        int sum = 0;
        for (int y = top; y < bottom; y++) {
            int end = 3 * (y * sidePx + right);
            for (int i = 3 * (y * sidePx + left); i < end; i++) {
                sum += Math.abs((seen[i] & 0xff) - (now[i] & 0xff));
            }
        }
        return sum / (3.0 * (right - left) * (bottom - top));
    }
}
