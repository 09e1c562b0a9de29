package org.boardtopit.run.workers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorkerPlanTest {

    /** By hand: a processor each, from eight on two; (memory - 1 GiB) / 1600 MiB; no more than clips. */
    @ParameterizedTest
    @CsvSource({
        "1, 2, 0, 0, 60, 1, 1",
        "2, 16, 0, 0, 60, 2, 1",
        "4, 16, 0, 0, 60, 4, 1",
        "8, 16, 0, 0, 60, 4, 2",
        "16, 64, 0, 0, 60, 8, 2",
        "8, 4, 0, 0, 60, 1, 8",
        "4, 5, 0, 0, 60, 2, 2",
        "4, 16, 2, 0, 60, 2, 2",
        "4, 16, 0, 2, 60, 2, 2",
        "4, 16, 3, 7, 60, 3, 7",
        "4, 16, 0, 0, 1, 1, 4",
        "256, 2048, 0, 0, 400, 64, 4",
    })
    void choosesWhatIsNotSaid(int cores, long gib, int workers, int threads, int clips, int expected, int each) {
        WorkerPlan plan = WorkerPlan.choose(cores, gib << 30, workers, threads, clips);

        assertEquals(expected, plan.workers());
        assertEquals(each, plan.threads());
    }

    @Test
    void saysWhatItChose() {
        assertEquals(
                "2 workers of 1 thread and 512 MB of Java heap each (2 processors, 16.0 GB of memory)",
                WorkerPlan.choose(2, 16_000_000_000L, 0, 0, 9).inWords(2, 16_000_000_000L));
    }

    @Test
    void theGentlerPlanHasOneThreadAndTwiceTheHeap() {
        assertEquals(new WorkerPlan(1, 1, 1024), new WorkerPlan(4, 2, 512).gentler());
    }

    /** A head that promises a billion frames in a small file must not make the limit endless: 1000 bytes hold 62 frames. */
    @Test
    void limitsGrowWithTheClipButNotWithWhatItClaims() {
        TimeLimits limits = new TimeLimits(100, 1, 1000, 10, 0.2);

        assertEquals(100 + 600 + 2, limits.quietS(600, 10_000_000), 1e-9);
        assertEquals(1000 + 6000 + 2, limits.wholeS(600, 10_000_000), 1e-9);
        assertEquals(100 + 62, limits.quietS(1_000_000_000, 1000), 1e-3);
        assertEquals(100, limits.quietS(-1, 0), 1e-9);
        assertTrue(TimeLimits.DEFAULT.wholeS(36_000, 1L << 30) > 36_000, "ten minutes at 60 frames a second");
    }
}
