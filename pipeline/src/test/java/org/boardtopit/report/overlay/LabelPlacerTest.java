package org.boardtopit.report.overlay;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.boardtopit.report.overlay.LabelPlacer.Lean;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class LabelPlacerTest {
    private static final List<Lean> LEANS = List.of(Lean.values());

    static LongStream seeds() {
        return LongStream.range(0, 200);
    }

    @ParameterizedTest(name = "seed {0}")
    @MethodSource("seeds")
    void labelsNeverOverlapAndNeverLeaveThePicture(long seed) {
        Random random = new Random(seed);
        double width = 100 + random.nextInt(1800);
        double height = 100 + random.nextInt(1000);
        LabelPlacer placer = new LabelPlacer(width, height);
        Box blocked = new Box(0, height - 40, width, height);
        placer.block(blocked);
        List<Box> placed = new ArrayList<>();
        for (int i = 0; i < 20; i++) {
            Lean lean = LEANS.get(random.nextInt(LEANS.size()));
            placer.place(
                            random.nextDouble() * width,
                            random.nextDouble() * height,
                            10 + random.nextInt(150),
                            8 + random.nextInt(20),
                            4,
                            lean)
                    .ifPresent(placed::add);
        }
        for (int i = 0; i < placed.size(); i++) {
            assertTrue(new Box(0, 0, width, height).contains(placed.get(i)));
            assertFalse(blocked.overlaps(placed.get(i)));
            for (int j = 0; j < i; j++) {
                assertFalse(placed.get(i).overlaps(placed.get(j)), "labels " + i + " and " + j);
            }
        }
        assertFalse(placed.isEmpty());
    }

    @Test
    void theFirstLabelStandsBelowItsAnchorAndTheSecondMakesWay() {
        LabelPlacer placer = new LabelPlacer(200, 200);
        assertEquals(
                new Box(80, 105, 120, 115),
                placer.place(100, 100, 40, 10, 5, Lean.BELOW).orElseThrow());
        Box second = placer.place(100, 100, 40, 10, 5, Lean.BELOW).orElseThrow();
        assertTrue(second.top() >= 105, "still below: " + second);
    }

    @Test
    void aLabelWithoutRoomIsLeftOut() {
        assertEquals(Optional.empty(), new LabelPlacer(30, 30).place(15, 15, 40, 10, 2, Lean.LEFT));
    }

    @Test
    void clearedPlacesAreFreeAgain() {
        LabelPlacer placer = new LabelPlacer(200, 200);
        Optional<Box> first = placer.place(100, 100, 40, 10, 5, Lean.RIGHT);
        placer.clear();
        assertEquals(first, placer.place(100, 100, 40, 10, 5, Lean.RIGHT));
    }
}
