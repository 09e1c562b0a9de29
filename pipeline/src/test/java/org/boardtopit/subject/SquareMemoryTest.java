package org.boardtopit.subject;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.ByteBuffer;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.PersonDetector;
import org.junit.jupiter.api.Test;

class SquareMemoryTest {
    private static final int SIDE = 40;

    /** Finds so many people, one number for each look. */
    private static final class Scripted implements PersonDetector {
        private final Deque<Integer> counts = new ArrayDeque<>();
        private int looks;

        Scripted(Integer... counts) {
            this.counts.addAll(List.of(counts));
        }

        @Override
        public NetworkCard card() {
            throw new UnsupportedOperationException();
        }

        @Override
        public int inputSizePx() {
            return SIDE;
        }

        @Override
        public List<DetectedPerson> find(ByteBuffer rgb) {
            looks++;
            return IntStream.range(0, counts.remove())
                    .mapToObj(unused -> new DetectedPerson(1, 20, 20, 20, 10, 20))
                    .toList();
        }

        @Override
        public void close() {}
    }

    /** Grey with noise of the seed, evenly from -noise to noise. */
    private static ByteBuffer picture(long seed, int noise) {
        Random random = new Random(seed);
        ByteBuffer rgb = ByteBuffer.allocateDirect(3 * SIDE * SIDE);
        for (int i = 0; i < rgb.capacity(); i++) {
            rgb.put(i, (byte) (100 + random.nextInt(2 * noise + 1) - noise));
        }
        return rgb;
    }

    /** Brightens a square of pixels. */
    private static ByteBuffer with(ByteBuffer rgb, int left, int top, int side) {
        for (int y = top; y < top + side; y++) {
            for (int i = 3 * (y * SIDE + left); i < 3 * (y * SIDE + left + side); i++) {
                rgb.put(i, (byte) 140);
            }
        }
        return rgb;
    }

    @Test
    void saysTheSameAgainWhileOnlyNoiseChanges() {
        Scripted detector = new Scripted(2);
        SquareMemory memory = new SquareMemory(SIDE);
        for (int look = 0; look < 4; look++) {
            assertEquals(2, memory.people(picture(look, 4), detector).size(), "look " + look);
        }
        assertEquals(1, detector.looks);
    }

    @Test
    void looksAgainWhenSomethingAsSmallAsAHeadHasCome() {
        for (int left : new int[] {0, 13, 32}) {
            Scripted detector = new Scripted(0, 1);
            SquareMemory memory = new SquareMemory(SIDE);
            memory.people(picture(1, 4), detector);
            assertEquals(
                    1,
                    memory.people(with(picture(2, 4), left, left, 8), detector).size(),
                    "at " + left);
        }
    }

    @Test
    void noticesWhatComesSoSlowlyThatNoTwoLooksInARowDiffer() {
        Scripted detector = new Scripted(0, 1);
        SquareMemory memory = new SquareMemory(SIDE);
        int[] seen = new int[4];
        for (int look = 0; look < 4; look++) {
            ByteBuffer rgb = picture(3, 0);
            for (int i = 0; i < rgb.capacity(); i++) {
                rgb.put(i, (byte) (100 + 3 * look));
            }
            seen[look] = memory.people(rgb, detector).size();
        }
        assertEquals(0, seen[2], "6 levels are noise");
        assertEquals(1, seen[3], "9 are not, though 3 since the last look");
    }

    @Test
    void looksAllTheSameAfterThreeRepetitionsAndKeepsWhatWasOverlookedThen() {
        Scripted detector = new Scripted(1, 0, 2);
        SquareMemory memory = new SquareMemory(SIDE);
        int[] seen = new int[9];
        for (int look = 0; look < 9; look++) {
            seen[look] = memory.people(picture(look, 2), detector).size();
        }
        assertEquals(3, detector.looks);
        assertEquals(1, seen[4], "the second look found nobody where nothing has changed");
        assertEquals(2, seen[8], "the third found more");
    }

    @Test
    void forgetsWhoHasGone() {
        Scripted detector = new Scripted(1, 0);
        SquareMemory memory = new SquareMemory(SIDE);
        memory.people(with(picture(1, 2), 10, 10, 12), detector);
        assertEquals(0, memory.people(picture(1, 2), detector).size());
    }
}
