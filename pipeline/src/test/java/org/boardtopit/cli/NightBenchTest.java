package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.cli.NightBench.Figures;
import org.boardtopit.clips.Clip;
import org.boardtopit.models.NetworkTiming;
import org.boardtopit.run.StageTimes;
import org.boardtopit.run.workers.WorkerPlan;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class NightBenchTest {
    @TempDir
    private Path folder;

    private static Clip clip(String name) {
        return new Clip(Path.of(name + ".mp4"), name, Optional.empty(), Optional.empty(), Optional.empty());
    }

    @Test
    void theSameClipsComeAgainUnderOtherNames() {
        List<Clip> copies = NightBench.copies(List.of(clip("a"), clip("b")), 5);
        assertEquals(
                List.of("a", "b", "a-2", "b-2", "a-3"),
                copies.stream().map(Clip::name).toList());
        assertEquals("a.mp4", copies.get(4).fileName());
    }

    /** Worked by hand: 100 frames at two looks of 10 ms by the clock and 15 ms of two processors make 2 s and 3 s. */
    @Test
    void theReportComparesClockWithClockAndProcessorsWithProcessors() {
        StageTimes with = stages("landmarks", 4);
        with.add(stages("overlay", 1));
        List<String> said = new ArrayList<>();
        new NightReport(
                        (format, values) -> said.add(String.format(Locale.ROOT, format, values)),
                        2,
                        List.of(
                                new NetworkTiming("full", 2, 10, 0.08, 0.1),
                                new NetworkTiming("full", 2, 10, 0.12, 0.2)))
                .report(
                        4,
                        new WorkerPlan(2, 1, 512),
                        new Figures(100, 3, 6, with),
                        new Figures(100, 2.4, 4.8, stages("landmarks", 4)));
        assertEquals("Run: 4 clips, 100 frames, 2 workers of 1 threads", said.get(0));
        assertEquals("  network alone              2.00 s    1.00       3.00 s    1.00", said.get(2));
        assertEquals("  with overlays              3.00 s    1.50       6.00 s    2.00", said.get(3));
        assertEquals("Overlays add 25 % to the clock, 25 % to the processors.", said.get(5));
        assertEquals("  landmarks                  4.00 s   1.333   without overlays     4.00 s   1.333", said.get(7));
        assertEquals("  overlay                    1.00 s   0.333   without overlays     0.00 s   0.000", said.get(8));
        assertEquals("  start, tests, tables       1.00 s   0.333   without overlays     0.80 s   0.267", said.get(9));
    }

    private static StageTimes stages(String stage, int seconds) {
        StageTimes times = new StageTimes();
        times.at(stage, 0);
        times.worked(Duration.ofSeconds(seconds));
        times.pause();
        return times;
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "--workers 0           | --workers must be from 1 to 64, was 0",
                "--workers 2 --clips 1 | --clips must be at least one for each worker, was 1",
                "--workers 2           | there are no workers here"
            })
    void refusesARunThatCannotBe(String options, String message) {
        CommandLineRun program = new CommandLineRun(folder);
        program.network("tiny");
        program.file("a.mp4", "a");
        List<String> words =
                new ArrayList<>(List.of("bench", "@a.mp4", "--network", "tiny", "--networks", "@networks"));
        words.addAll(List.of(options.split(" ")));
        assertEquals(2, program.run(words.toArray(String[]::new)));
        assertEquals("error: " + message + " - see: boardtopit bench --help\n", program.err());
    }
}
