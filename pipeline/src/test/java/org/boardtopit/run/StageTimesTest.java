package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.Test;

class StageTimesTest {
    private static final double SMALL = 1e-9;
    private long nowNs;

    private void pass(StageTimes times, String stage, int ms, int workedMs) {
        times.worked(Duration.ofMillis(workedMs));
        times.at(stage, 0);
        nowNs += ms * 1_000_000L;
    }

    @Test
    void addsUpClockAndProcessorTimeOfAStageThatComesAgain() {
        StageTimes times = new StageTimes(() -> nowNs);
        pass(times, "survey", 100, 1000); // the process has worked for a second before its first clip
        pass(times, "faces", 30, 1150);
        pass(times, "survey", 50, 1200);
        times.worked(Duration.ofMillis(1260));
        times.pause();

        assertEquals(0.150, times.secondsByStage().get("survey"), SMALL);
        assertEquals(0.030, times.secondsByStage().get("faces"), SMALL);
        assertEquals(0.150 + 0.060, times.processorSecondsByStage().get("survey"), SMALL);
        assertEquals(0.050, times.processorSecondsByStage().get("faces"), SMALL);
        assertEquals(
                List.of("survey", "faces"), List.copyOf(times.secondsByStage().keySet()));
    }

    @Test
    void addsTheStagesOfSeveralClips() {
        StageTimes all = new StageTimes(() -> nowNs);
        for (int clip = 0; clip < 3; clip++) {
            StageTimes one = new StageTimes(() -> nowNs);
            pass(one, "track", 10, 0);
            one.worked(Duration.ofMillis(20));
            one.pause();
            all.add(one);
        }
        assertEquals(0.030, all.secondsByStage().get("track"), SMALL);
        assertEquals(0.060, all.processorSecondsByStage().get("track"), SMALL);
    }

    @Test
    void theProcessorTimeOfThisProcessIsAsked() {
        long[] workedNs = {5_000_000};
        StageTimes times = StageTimes.ofThisProcess(() -> workedNs[0]);
        times.at("measure", 0);
        workedNs[0] = 12_000_000;
        times.pause();
        assertEquals(0.007, times.processorSecondsByStage().get("measure"), SMALL);
    }
}
