package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicLong;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.report.page.PageWriter;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.TableWriter;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** When a run writes its page. */
class PageOfRunTest {
    @TempDir
    private Path out;

    private final ScriptedMeasurer measurer = new ScriptedMeasurer();
    private final AtomicLong clockS = new AtomicLong();
    private final List<String> troubles = new ArrayList<>();
    private Path page;

    @BeforeEach
    void name() {
        page = out.resolve(PageWriter.FILE_NAME);
    }

    private RunSummary run(String... clips) throws IOException {
        return run(
                Arrays.stream(clips).map(name -> clip(name, Optional.empty())).toList());
    }

    private RunSummary run(List<Clip> clips) throws IOException {
        RunFacts facts =
                new RunFacts(Instant.parse("2026-06-14T18:00:00Z"), Map.of("boardtopit", "0.1.0"), Map.of(), Map.of());
        TableWriter tables = new TableWriter(out, TableFormat.DEFAULT);
        return new MeetRunner(measurer, 1, tables, out, facts, new Listener(), () -> clockS.get() * 1_000_000_000L)
                .with(new PageWriter(out, MeetSheet.NONE))
                .run(new ClipList(clips, List.of()));
    }

    private static Clip clip(String name, Optional<String> withheld) {
        return new Clip(Path.of("clips", name), name, Optional.empty(), Optional.empty(), Optional.empty(), withheld);
    }

    private String page() throws IOException {
        return Files.readString(page, StandardCharsets.UTF_8);
    }

    private void on(String clip, Check check) {
        measurer.on(clip, (measured, listener) -> {
            try {
                check.run();
            } catch (IOException e) {
                throw new AssertionError(e);
            }
            return ScriptedMeasurer.good(measured, listener);
        });
    }

    private interface Check {
        void run() throws IOException;
    }

    @Test
    void theLastPageHasAllClips() throws IOException {
        assertEquals(2, run("a.mp4", "b.mp4").measured());
        assertTrue(page().contains("2 attempts measured"), page());
        assertFalse(page().contains("The run goes on"));
    }

    @Test
    void aPageIsThereWhileTheRunGoesOnAndIsNotWrittenForEveryClip() throws IOException {
        on("b.mp4", () -> assertTrue(page().contains("1 of 4 clips are done")));
        on("c.mp4", () -> {
            assertTrue(page().contains("1 of 4 clips are done"), "half a minute is not over");
            clockS.addAndGet(31);
        });
        on("d.mp4", () -> assertTrue(page().contains("3 of 4 clips are done"), page()));
        assertEquals(4, run("a.mp4", "b.mp4", "c.mp4", "d.mp4").measured(), troubles::toString);
        assertTrue(page().contains("4 attempts measured"));
    }

    @Test
    void aPageThatCannotBeWrittenIsToldCostsNoTableAndFailsTheRun() throws IOException {
        Files.createDirectories(page.resolve("in the way"));
        assertThrows(IOException.class, () -> run("a.mp4"));
        assertTrue(troubles.get(0).startsWith("the page cannot be written now: "), troubles.toString());
        assertEquals(2, Files.readAllLines(out.resolve("clips.csv")).size());
        assertTrue(Files.readString(out.resolve("run.log")).contains("the page could not be written"));
    }

    @Test
    void anEarlierPageGoesBeforeTheFirstClipWhenAClipIsWithheldNow() throws IOException {
        Files.writeString(page, "shows b.mp4");
        on("a.mp4", () -> assertFalse(Files.exists(page)));
        run(List.of(clip("a.mp4", Optional.empty()), clip("b.mp4", Optional.of("the athlete did not agree"))));
        assertTrue(page().contains("Withheld clips: 1."), page());
    }

    private final class Listener implements RunListener {
        @Override
        public void begun(int kept, int clips) {}

        @Override
        public void progress(Progress progress) {}

        @Override
        public void clipDone(ClipRow row, List<String> warnings, int number, int clips) {}

        @Override
        public void trouble(String what) {
            troubles.add(what);
        }
    }
}
