package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

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
                inOrder("pose", 61.25, "report", Double.NaN));
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
                  }
                }
                """, Files.readString(record.write(folder), StandardCharsets.UTF_8));
    }

    @Test
    void unknownNumbersWithinSettingsAreNullToo() throws Exception {
        RunRecord record = new RunRecord(
                START, START, Map.of(), Map.of(), Map.of("limits", List.of(Double.NEGATIVE_INFINITY, 1.5)), Map.of());
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
                () -> new RunRecord(START, START.minusSeconds(1), Map.of(), Map.of(), Map.of(), Map.of()));
    }
}
