package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.LongSupplier;
import java.util.stream.Collectors;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.SkippedFile;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.TableWriter;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class MeetRunnerTest {
    private static final Instant START = Instant.parse("2026-06-14T18:00:00Z");

    @TempDir
    private Path out;

    private final ScriptedMeasurer measurer = new ScriptedMeasurer();
    private final Heard heard = new Heard();

    @Test
    void givesOneRowForEveryClipInInputOrder() throws IOException {
        measurer.on("b.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("subject", "nobody runs through the picture", null);
        });

        RunSummary summary = run(clips("c.mp4", "b.mp4", "a.mp4"));

        assertEquals(List.of("c.mp4 measured", "b.mp4 not_measured", "a.mp4 measured"), outcomes());
        assertEquals(List.of("c.mp4", "a.mp4"), firstCells("attempts.csv"));
        assertEquals(2, summary.measured());
        assertEquals(1, summary.notMeasured());
        assertEquals(0, summary.bugs());
        assertEquals(3, summary.clips());
    }

    @Test
    void writesTheAttemptOfAJoinedClipOnce() throws IOException {
        measurer.on("front.mp4", (clip, listener) -> {
            ClipResult own = ScriptedMeasurer.result(clip, List.of());
            return new ClipResult(
                    own.attempt(),
                    List.of(),
                    own.contacts(),
                    own.intervals(),
                    own.observations(),
                    own.clip(),
                    own.record(),
                    Optional.of("side.mp4"));
        });

        run(clips("front.mp4", "side.mp4"));

        assertEquals(List.of("front.mp4 measured", "side.mp4 measured"), outcomes());
        assertEquals(List.of("side.mp4"), firstCells("attempts.csv"));
        assertEquals(List.of("front.mp4", "side.mp4"), firstCells("contacts.csv"));
    }

    @Test
    void aClipThatCannotBeMeasuredSaysWhereAndWhy() throws IOException {
        measurer.on("a.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("video", "the file is cut off", null);
        });

        run(clips("a.mp4"));

        String row = lines("clips.csv").get(1);
        assertTrue(row.startsWith("a.mp4,not_measured,video,the file is cut off,"), row);
        String log = Files.readString(out.resolve("run.log"), StandardCharsets.UTF_8);
        assertTrue(log.contains("a.mp4: not_measured in 0.0 s (video): the file is cut off\n"), log);
        assertFalse(log.contains("Exception"), "an unfit clip is no bug");
    }

    @Test
    void aBugOrLackOfMemoryCostsOneClipAndLeavesItsTrace() throws IOException {
        measurer.on("a.mp4", (clip, listener) -> {
            listener.at("landmarks", 0.5);
            throw new IllegalStateException("the index was off by one");
        });
        measurer.on("b.mp4", (clip, listener) -> {
            throw new OutOfMemoryError("Java heap space");
        });
        measurer.on("c.mp4", (clip, listener) -> {
            throw new UnsatisfiedLinkError("no such library");
        });

        RunSummary summary = run(clips("a.mp4", "b.mp4", "c.mp4", "d.mp4"));

        assertEquals(
                List.of("a.mp4 not_measured", "b.mp4 not_measured", "c.mp4 not_measured", "d.mp4 measured"),
                outcomes());
        assertEquals(3, summary.bugs());
        assertTrue(lines("clips.csv").get(1).contains("landmarks,a fault of the program"));
        String log = Files.readString(out.resolve("run.log"), StandardCharsets.UTF_8);
        assertTrue(log.contains("a.mp4, stage landmarks"), log);
        assertTrue(log.contains("IllegalStateException: the index was off by one"), log);
        assertTrue(log.contains("at org.boardtopit.run.MeetRunnerTest"), log);
        assertTrue(log.contains("OutOfMemoryError") && log.contains("UnsatisfiedLinkError"), log);
    }

    @Test
    void addsToTheLogOfAnEarlierStart() throws IOException {
        Files.writeString(out.resolve("run.log"), "earlier\n");

        run(clips("a.mp4"));

        List<String> log = Files.readAllLines(out.resolve("run.log"), StandardCharsets.UTF_8);
        assertEquals(4, log.size(), log.toString());
        assertEquals("earlier", log.get(0));
        assertTrue(log.get(1).contains("start: 1 clips, 0 done by an earlier start"), log.get(1));
        assertTrue(log.get(2)
                .matches("\\d{4}-\\d\\d-\\d\\d \\d\\d:\\d\\d:\\d\\d[+-]\\d\\d:\\d\\d  a.mp4: measured in .* s"));
        assertTrue(log.get(3).contains("end: 1 measured, 0 not, 0 withheld"), log.get(3));
    }

    @Test
    void doesNotOpenAClipWithoutConsent() throws IOException {
        Clip refused = clip("b.mp4", Optional.of(entry("b.mp4", Consent.NO)));
        Clip agreed = clip("c.mp4", Optional.of(entry("c.mp4", Consent.YES)));
        Clip unknown = clip("d.mp4", Optional.of(entry("d.mp4", Consent.NOT_SAID)));

        RunSummary summary = run(new ClipList(List.of(refused, agreed, unknown), List.of()));

        assertEquals(List.of("c.mp4", "d.mp4"), measurer.opened());
        assertEquals(List.of("b.mp4 withheld", "c.mp4 measured", "d.mp4 measured"), outcomes());
        assertEquals(1, summary.withheld());
    }

    @Test
    void listsSkippedFilesAfterTheClips() throws IOException {
        SkippedFile notes = new SkippedFile(Path.of("clips", "notes.txt"), "not a video by the ending of its name");

        RunSummary summary = run(new ClipList(clips("a.mp4").clips(), List.of(notes)));

        assertEquals(List.of("a.mp4 measured", "notes.txt skipped"), outcomes());
        assertEquals(1, summary.skipped());
        assertEquals(1, summary.clips());
    }

    @Test
    void anAttemptWithWarningsIsMeasuredWithWarnings() throws IOException {
        measurer.on("a.mp4", (clip, listener) -> ScriptedMeasurer.result(clip, List.of("the pit is out of view")));

        RunSummary summary = run(clips("a.mp4", "b.mp4"));

        assertEquals(List.of("a.mp4 measured_with_warnings", "b.mp4 measured"), outcomes());
        assertEquals(2, summary.measured());
        assertEquals(1, summary.withWarnings());
        assertEquals(List.of(List.of("the pit is out of view"), List.of()), heard.warnings);
    }

    @Test
    void allFilesAreCompleteAfterEveryClip() throws IOException {
        heard.whenDone = number -> {
            assertEquals(1 + number, lines("clips.csv").size());
            assertEquals(1 + number, lines("attempts.csv").size());
            assertEquals(1 + number, lines("phases.csv").size());
            assertEquals(1 + 2 * number, lines("contacts.csv").size());
            assertEquals(1 + number, lines("intervals.csv").size());
            assertEquals(1 + number, lines("observations.csv").size());
            assertTrue(Files.exists(out.resolve("run.json")));
        };

        run(clips("a.mp4", "b.mp4", "c.mp4"));

        assertEquals(3, heard.warnings.size());
    }

    @Test
    void whatIsMeasuredStaysWhenTheRunIsBrokenOff() throws IOException {
        heard.whenDone = number -> {
            if (number == 2) {
                throw new IllegalStateException("pulled the plug");
            }
        };

        assertThrows(IllegalStateException.class, () -> run(clips("a.mp4", "b.mp4", "c.mp4")));

        assertEquals(List.of("a.mp4", "b.mp4"), firstCells("attempts.csv"));
        assertEquals(List.of("a.mp4 measured", "b.mp4 measured"), outcomes());
    }

    @Test
    void triesTablesAgainThatCouldNotBeWritten() throws IOException {
        Path blocked = out.resolve("phases.csv");
        Files.createDirectories(blocked.resolve("in the way"));
        heard.whenDone = number -> {
            if (number == 1) {
                Files.delete(blocked.resolve("in the way"));
                Files.delete(blocked);
            }
        };

        run(clips("a.mp4", "b.mp4"));

        assertEquals(1, heard.troubles.size());
        assertEquals(List.of("a.mp4", "b.mp4"), firstCells("phases.csv"));
    }

    @Test
    void failsWhenTheTablesCannotBeWrittenInTheEnd() throws IOException {
        Files.createDirectories(out.resolve("phases.csv").resolve("in the way"));

        assertThrows(IOException.class, () -> run(clips("a.mp4", "b.mp4")));

        assertEquals(List.of("a.mp4", "b.mp4"), measurer.opened());
        assertEquals(2, heard.troubles.size());
    }

    @Test
    void recordsWithWhatTheRunWasMadeAndWhereTheTimeWent() throws IOException {
        Seconds clock = new Seconds();
        measurer.on("a.mp4", (clip, listener) -> {
            listener.at("survey", 0);
            clock.now += 2;
            listener.at("landmarks", 0.2);
            clock.now += 3;
            listener.at("landmarks", 0.9);
            clock.now += 5;
            return ScriptedMeasurer.result(clip, List.of());
        });

        run(clips("a.mp4", "a.mp4"), clock);

        JsonNode json = new ObjectMapper().readTree(out.resolve("run.json").toFile());
        assertEquals("2026-06-14T18:00:00Z", json.get("started_at").asText());
        assertEquals("2026-06-14T18:00:20Z", json.get("ended_at").asText());
        assertEquals("0.1.0", json.get("versions").get("boardtopit").asText());
        assertEquals("abc", json.get("hashes").get("full").asText());
        assertEquals(2, json.get("settings").get("threads").asInt());
        assertEquals(4, json.get("timings_s").get("survey").asDouble(), 1e-9);
        assertEquals(16, json.get("timings_s").get("landmarks").asDouble(), 1e-9);
        assertEquals("10.00", lines("clips.csv").get(1).split(",", -1)[9]);
    }

    @Test
    void recordsWhatTheNumbersOfEachMeasuredClipRestOn() throws IOException {
        measurer.on("b.mp4", (clip, listener) -> {
            throw new ClipNotMeasuredException("track", "nobody runs", null);
        });

        run(clips("a.mp4", "b.mp4", "c.mp4"));

        JsonNode records =
                new ObjectMapper().readTree(out.resolve("run.json").toFile()).get("clips");
        assertEquals(2, records.size());
        assertEquals("a.mp4", records.get(0).get("clip").asText());
        assertEquals("c.mp4", records.get(1).get("clip").asText());
        assertEquals(180, records.get(1).get("measuring").get("fitted_frames").asInt());
    }

    @Test
    void forecastsTheEndFromTheSizesOfTheFiles() throws IOException {
        Path small = Files.write(out.resolve("small.mp4"), new byte[100]);
        Path large = Files.write(out.resolve("large.mp4"), new byte[300]);
        Seconds clock = new Seconds();
        measurer.on("small.mp4", (clip, listener) -> {
            clock.now += 5;
            listener.at("landmarks", 0.5);
            clock.now += 5;
            return ScriptedMeasurer.result(clip, List.of());
        });
        measurer.on("large.mp4", (clip, listener) -> {
            clock.now += 10;
            listener.at("landmarks", 1.0 / 3);
            return ScriptedMeasurer.result(clip, List.of());
        });
        List<Clip> clips = List.of(
                new Clip(small, "small", Optional.empty(), Optional.empty(), Optional.empty()),
                new Clip(large, "large", Optional.empty(), Optional.empty(), Optional.empty()));

        run(new ClipList(clips, List.of()), clock);

        // 50 of 400 bytes in 5 s; then 200 of 400 bytes in 20 s.
        assertEquals(0.125, heard.progress.get(0).share(), 1e-9);
        assertEquals(35, heard.progress.get(0).remainingS(), 1e-9);
        assertEquals(0.5, heard.progress.get(1).share(), 1e-9);
        assertEquals(20, heard.progress.get(1).remainingS(), 1e-9);
        assertEquals(2, heard.progress.get(1).clip());
        assertEquals(2, heard.progress.get(1).clips());
    }

    @Test
    void removesWhatAnEarlierRunLeftOfAClipThatIsNowWithheld() throws IOException {
        run(clips("jump.mp4", "jump-2.mp4"));
        List<String> others = List.of("work/jump-2.landmarks", "overlays/jump-2.mp4", "stills/jump-2-3-toe_off.jpg");
        List<String> own = List.of(
                "work/jump.landmarks",
                "work/jump.people",
                "work/jump/stage.part",
                "overlays/jump.mp4",
                "overlays/jump.mp4.part",
                "stills/jump-3-toe_off.jpg",
                "stills/jump-2-toe_off.jpg", // of its contact 2, not of the clip jump-2
                "stills/jump-strip.jpg",
                "comparisons/jump_and_others.mp4");
        for (String file : List.of(others, own).stream().flatMap(List::stream).toList()) {
            Files.createDirectories(out.resolve(file).getParent());
            Files.writeString(out.resolve(file), "x");
        }
        measurer.on("jump-2.mp4", (clip, listener) -> {
            // Before the first clip is opened nothing of the other can be seen any more.
            own.forEach(file -> assertFalse(Files.exists(out.resolve(file)), file));
            others.forEach(file -> assertTrue(Files.exists(out.resolve(file)), file));
            for (String table : List.of("attempts", "phases", "contacts", "intervals", "observations")) {
                try {
                    assertEquals(List.of("jump-2.mp4"), firstCells(table + ".csv"), table);
                } catch (IOException e) {
                    throw new AssertionError(e);
                }
            }
            return ScriptedMeasurer.good(clip, listener);
        });
        Clip refused = clip("jump.mp4", Optional.of(entry("jump.mp4", Consent.NO)));

        RunSummary summary = run(new ClipList(
                List.of(named(clip("jump-2.mp4", Optional.empty()), "jump-2"), named(refused, "jump")), List.of()));

        assertEquals(1, summary.measured(), () -> heard.troubles.toString());
        assertEquals(List.of("jump-2.mp4 measured", "jump.mp4 withheld"), outcomes());
        assertFalse(Files.readString(out.resolve("run.json")).contains("\"jump.mp4\""));
    }

    /** The row of the sheet still names it, here without its ending and in other letters. */
    @Test
    void removesWhatIsLeftOfARefusedClipThatHasBeenDeletedSince() throws IOException {
        run(clips("jump.mp4", "jump-2.mp4"));
        List<String> others = List.of("work/jump-2.result", "overlays/jump-2.mp4");
        List<String> own = List.of("work/jump.result", "overlays/jump.mp4", "stills/jump-board-toe_off.jpg");
        for (String file : List.of(others, own).stream().flatMap(List::stream).toList()) {
            Files.createDirectories(out.resolve(file).getParent());
            Files.writeString(out.resolve(file), "x");
        }
        measurer.on("jump-2.mp4", (clip, listener) -> {
            own.forEach(file -> assertFalse(Files.exists(out.resolve(file)), file));
            others.forEach(file -> assertTrue(Files.exists(out.resolve(file)), file));
            try {
                assertEquals(List.of("jump-2.mp4"), firstCells("attempts.csv"));
            } catch (IOException e) {
                throw new AssertionError(e);
            }
            return ScriptedMeasurer.good(clip, listener);
        });

        RunSummary summary = run(new ClipList(
                List.of(named(clip("jump-2.mp4", Optional.empty()), "jump-2")), List.of(), List.of(), List.of("Jump")));

        assertEquals(1, summary.measured(), () -> heard.troubles.toString());
    }

    /** The overlay of jump.mov has the name that the file jump.mp4 had. */
    @Test
    void keepsTheOverlayOfAnotherClipThatIsCalledLikeARefusedFile() throws IOException {
        Files.createDirectories(out.resolve("overlays"));
        Files.writeString(out.resolve("overlays/jump.mp4"), "x");
        Files.writeString(out.resolve("overlays/jump.mp4.mp4"), "of the two of the same stem");

        run(new ClipList(
                List.of(named(clip("jump.mov", Optional.empty()), "jump")), List.of(), List.of(), List.of("jump.mp4")));

        assertTrue(Files.exists(out.resolve("overlays/jump.mp4")));
        assertFalse(Files.exists(out.resolve("overlays/jump.mp4.mp4")));
    }

    /** Summer time ends, or the network corrects a wrong clock: in the middle of a clip it is two hours earlier. */
    @Test
    void aClockThatIsSetBackInTheMiddleChangesNoDurationAndNoResult() throws IOException {
        Seconds steady = new Seconds();
        WallClock wall = new WallClock(START);
        StoringMeasurer storing = new StoringMeasurer(
                (clip, listener) -> {
                    steady.now += 30;
                    wall.now = wall.now.plusSeconds(30).minus(Duration.ofHours(2));
                    return ScriptedMeasurer.good(clip, listener);
                },
                out,
                Clip::fileName,
                () -> Long.MAX_VALUE,
                steady);
        measurer.on("a.mp4", storing::measure).on("b.mp4", storing::measure);
        ClipList list = clips("a.mp4", "b.mp4");

        run(list, Map.of(), steady, wall, START);

        JsonNode json = new ObjectMapper().readTree(out.resolve("run.json").toFile());
        assertEquals("2026-06-14T18:01:00Z", json.get("ended_at").asText(), "two clips of 30 s");
        assertEquals(
                List.of("30.00", "30.00"),
                lines("clips.csv").stream()
                        .skip(1)
                        .map(line -> line.split(",", -1)[9])
                        .toList());
        List<String> log = Files.readAllLines(out.resolve("run.log"));
        assertTrue(log.get(1).startsWith("2026-06-14 16:00:30+00:00  a.mp4: measured in 30.0 s"), log.get(1));

        // The next start, by the clock that is late now, and with an earlier date than that of the results.
        StoredResults results = new StoredResults(out);
        Map<String, StoredResult> earlier = list.clips().stream()
                .collect(Collectors.toMap(
                        Clip::name, clip -> results.find(clip, clip.fileName()).orElseThrow()));
        String tables = Files.readString(out.resolve("clips.csv"));
        RunSummary second = run(list, earlier, steady, wall, wall.now);
        assertEquals(2, second.kept());
        assertEquals(tables, Files.readString(out.resolve("clips.csv")));
        assertEquals(2, measurer.opened().size(), "each clip once");
    }

    @Test
    void makesTheWorkbookOnceBehindTheLastClip() throws IOException {
        Path workbook = out.resolve("tables.xlsx");
        measurer.on("b.mp4", (clip, listener) -> {
            assertFalse(Files.exists(workbook));
            return ScriptedMeasurer.good(clip, listener);
        });
        assertEquals(2, withWorkbook(clips("a.mp4", "b.mp4")).measured());
        assertTrue(Files.size(workbook) > 0);
    }

    @Test
    void aWorkbookThatCannotBeWrittenIsToldAndDoesNotFailTheRun() throws IOException {
        Files.createDirectories(out.resolve("tables.xlsx/in the way"));
        assertEquals(1, withWorkbook(clips("a.mp4")).measured());
        assertEquals(1, heard.troubles.size());
        assertTrue(heard.troubles.get(0).startsWith("the workbook cannot be written: "), heard.troubles.get(0));
    }

    private RunSummary withWorkbook(ClipList list) throws IOException {
        RunFacts facts = new RunFacts(START, Map.of("boardtopit", "0.1.0"), Map.of(), Map.of());
        TableWriter tables = new TableWriter(out, new TableFormat(',', '.', false, true));
        return new MeetRunner(measurer, 1, tables, out, facts, heard, System::nanoTime).run(list);
    }

    private static Clip named(Clip clip, String name) {
        return new Clip(clip.file(), name, clip.entry(), clip.camera(), clip.athlete(), clip.withheld());
    }

    private RunSummary run(ClipList list) throws IOException {
        return run(list, System::nanoTime);
    }

    private RunSummary run(ClipList list, LongSupplier clock) throws IOException {
        return run(list, Map.of(), clock, Clock.systemUTC(), START);
    }

    private RunSummary run(
            ClipList list, Map<String, StoredResult> earlier, LongSupplier clock, Clock wall, Instant start)
            throws IOException {
        RunFacts facts =
                new RunFacts(start, Map.of("boardtopit", "0.1.0"), Map.of("full", "abc"), Map.of("threads", 2));
        TableWriter tables = new TableWriter(out, TableFormat.DEFAULT);
        return new MeetRunner(measurer, 1, tables, out, facts, heard, clock, wall).run(list, earlier);
    }

    private static ClipList clips(String... names) {
        List<Clip> clips = new ArrayList<>();
        for (String name : names) {
            clips.add(clip(name, Optional.empty()));
        }
        return new ClipList(clips, List.of());
    }

    private static Clip clip(String name, Optional<AttemptEntry> entry) {
        return new Clip(Path.of("clips", name), name, entry, Optional.empty(), Optional.empty());
    }

    private static AttemptEntry entry(String clip, Consent consent) {
        return new AttemptEntry(
                2,
                clip,
                "214",
                "Corin Vask",
                "",
                OptionalInt.empty(),
                Optional.empty(),
                Double.NaN,
                Double.NaN,
                Optional.empty(),
                "",
                Double.NaN,
                Optional.empty(),
                consent);
    }

    private List<String> outcomes() throws IOException {
        return lines("clips.csv").stream()
                .skip(1)
                .map(line -> line.split(",", -1))
                .map(cells -> cells[0] + " " + cells[1])
                .toList();
    }

    private List<String> firstCells(String table) throws IOException {
        return lines(table).stream()
                .skip(1)
                .map(line -> line.split(",", -1)[0])
                .distinct()
                .toList();
    }

    private List<String> lines(String table) throws IOException {
        return Files.readAllLines(out.resolve(table), StandardCharsets.UTF_8);
    }

    /** The clock of the day, that can be set. */
    private static final class WallClock extends Clock {
        private Instant now;

        WallClock(Instant now) {
            this.now = now;
        }

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return now;
        }
    }

    private static final class Seconds implements LongSupplier {
        private long now = 1000;

        @Override
        public long getAsLong() {
            return now * 1_000_000_000L;
        }
    }

    private interface Check {
        void done(int number) throws IOException;
    }

    private static final class Heard implements RunListener {
        private final List<String> begun = new ArrayList<>();
        private final List<Progress> progress = new ArrayList<>();
        private final List<List<String>> warnings = new ArrayList<>();
        private final List<String> troubles = new ArrayList<>();
        private Check whenDone = number -> {};

        @Override
        public void begun(int kept, int clips) {
            begun.add(kept + " of " + clips);
        }

        @Override
        public void progress(Progress now) {
            progress.add(now);
        }

        @Override
        public void clipDone(ClipRow row, List<String> rowWarnings, int number, int clips) {
            warnings.add(rowWarnings);
            try {
                whenDone.done(number);
            } catch (IOException e) {
                throw new AssertionError(e);
            }
        }

        @Override
        public void trouble(String what) {
            troubles.add(what);
        }
    }
}
