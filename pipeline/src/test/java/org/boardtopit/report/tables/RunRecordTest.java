package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RunRecordTest {
    private static final Instant START = Instant.parse("2026-06-14T20:15:00.123Z");

    @TempDir
    Path folder;

    private static <V> Map<String, V> inOrder(String first, V firstValue, String second, V secondValue) {
        Map<String, V> map = new LinkedHashMap<>();
        map.put(first, firstValue);
        map.put(second, secondValue);
        return map;
    }

    @Test
    void writesWhatTheRunWasMadeWith() throws Exception {
        RunRecord record = new RunRecord(
                START,
                START.plusSeconds(90),
                inOrder("boardtopit", "0.1.0", "java", "17"),
                Map.of("full", "ab12"),
                inOrder("threads", 2, "tables", Map.of("separator", "\t")),
                inOrder("pose", 61.25, "report", Double.NaN),
                List.of());
        assertEquals("""
                {
                  "started_at" : "2026-06-14T20:15:00Z",
                  "ended_at" : "2026-06-14T20:16:30Z",
                  "versions" : {
                    "boardtopit" : "0.1.0",
                    "java" : "17"
                  },
                  "hashes" : {
                    "full" : "ab12"
                  },
                  "settings" : {
                    "threads" : 2,
                    "tables" : {
                      "separator" : "\\t"
                    }
                  },
                  "timings_s" : {
                    "pose" : 61.25,
                    "report" : null
                  },
                  "clips" : [ ]
                }
                """, Files.readString(record.write(folder), StandardCharsets.UTF_8));
    }

    @Test
    void unknownNumbersWithinSettingsAreNullToo() throws Exception {
        RunRecord record = new RunRecord(
                START,
                START,
                Map.of(),
                Map.of(),
                Map.of("limits", List.of(Double.NEGATIVE_INFINITY, 1.5)),
                Map.of(),
                List.of());
        String json = Files.readString(record.write(folder), StandardCharsets.UTF_8);
        assertEquals(
                "\"limits\" : [ null, 1.5 ]",
                json.lines()
                        .filter(l -> l.contains("limits"))
                        .findFirst()
                        .orElseThrow()
                        .strip());
    }

    @Test
    void aRunDoesNotEndBeforeItStarts() {
        assertThrows(
                IllegalArgumentException.class,
                () -> new RunRecord(START, START.minusSeconds(1), Map.of(), Map.of(), Map.of(), Map.of(), List.of()));
    }

    @Test
    void saysOfEveryClipWhatItsNumbersRestOn() throws Exception {
        ClipRecord clip = new ClipRecord(
                "a.mp4",
                new ClipRecord.Registration("turning", true, 312, 0.12345, 181.5, Double.NaN, 1024.26),
                new ClipRecord.Scale("marks", "marks", 1022.5, 1.8049, 18.996, 0.714, Double.NaN),
                new ClipRecord.Measuring(2, 190));
        RunRecord record = new RunRecord(START, START, Map.of(), Map.of(), Map.of(), Map.of(), List.of(clip));
        String json = Files.readString(record.write(folder), StandardCharsets.UTF_8);
        assertEquals(
                new ObjectMapper().readTree("""
                [ {
                  "clip" : "a.mp4",
                  "registration" : {
                    "camera" : "turning",
                    "reference_matched" : true,
                    "reference_points" : 312.0,
                    "residual_px" : 0.123,
                    "inliers" : 181.5,
                    "drift_px" : null,
                    "focal_px" : 1024.3
                  },
                  "scale" : {
                    "source" : "marks",
                    "camera" : "marks",
                    "focal_px" : 1022.5,
                    "height_m" : 1.8,
                    "distance_m" : 19.0,
                    "marks_residual_px" : 0.71,
                    "misfit" : null
                  },
                  "measuring" : { "looks_per_frame" : 2, "fitted_frames" : 190 }
                } ]
                """),
                new ObjectMapper().readTree(json).get("clips"));
    }
}
