package org.boardtopit.video.ffmpeg;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The expected times are worked by hand from the rules in the class comment; the step is 40 ms. */
class PresentationClockTest {

    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "good stamps pass unchanged,            0 40000 80000 120000,           0 40000 80000 120000",
        "the first stamp becomes zero,          500000 540000 590000,           0 40000 90000",
        "a negative first stamp becomes zero,   -40000 0 40000,                 0 40000 80000",
        "a variable rate is kept,               0 33000 50000 51000 900000,     0 33000 50000 51000 900000",
        "a missing stamp follows by a step,     0 - 80000,                      0 40000 80000",
        "a missing first stamp is zero,         - - 80000,                      0 40000 80000",
        "an equal stamp follows by half a step, 0 40000 40000 80000 120000,     0 40000 60000 80000 120000",
        "a falling stamp follows by half,       0 40000 10000 80000,            0 40000 60000 80000",
        "a restarted clock runs on,             0 5000000 100000 140000,        0 5000000 5040000 5080000"
    })
    void repairsStamps(String rule, String stamps, String times) {
        PresentationClock clock = new PresentationClock(40_000);
        long[] actual = Arrays.stream(stamps.split(" "))
                .mapToLong(stamp -> stamp.equals("-") ? Libav.NO_STAMP : Long.parseLong(stamp))
                .map(clock::next)
                .toArray();
        long[] expected =
                Arrays.stream(times.split(" ")).mapToLong(Long::parseLong).toArray();
        assertArrayEquals(expected, actual, rule);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void timesRiseWhateverTheStamps(long seed) {
        Random random = new Random(seed);
        PresentationClock clock = new PresentationClock(2);
        long last = clock.next(random.nextInt());
        for (int i = 0; i < 1000; i++) {
            long stamp = random.nextInt(10) == 0 ? Libav.NO_STAMP : random.nextInt(5_000_000) - 1_000_000;
            long time = clock.next(stamp);
            assertTrue(time > last, "at " + i + ": " + time + " after " + last);
            last = time;
        }
    }

    @Test
    void refusesAStepThatCannotBeHalved() {
        assertThrows(IllegalArgumentException.class, () -> new PresentationClock(1));
    }
}
