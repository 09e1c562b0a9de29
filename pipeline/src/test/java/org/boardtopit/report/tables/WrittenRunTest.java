package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WrittenRunTest {
    @TempDir
    private Path folder;

    @Test
    void tidyingTakesAwayWhoCorrectedAndWhyAndLeavesWhatWasCorrected() throws Exception {
        Path file = Files.writeString(folder.resolve(RunRecord.FILE_NAME), """
                {"versions": {"boardtopit": "0.1.0"},
                 "clips": [{"clip": "a.mp4", "corrections": [
                   {"contact": "3", "field": "touchdown_frame", "value": "131", "by": "Mara", "note": "shadow"}]},
                  {"clip": "b.mp4"}]}
                """);

        WrittenRun.in(folder).orElseThrow().writeTidied(LocalDate.of(2026, 6, 14));

        JsonNode run = new ObjectMapper().readTree(file.toFile());
        assertEquals(
                new ObjectMapper().readTree("{\"contact\": \"3\", \"field\": \"touchdown_frame\", \"value\": \"131\"}"),
                run.at("/clips/0/corrections/0"));
        assertEquals("b.mp4", run.at("/clips/1/clip").asText());
        assertEquals("2026-06-14", run.at("/tidied_on").asText());
    }
}
