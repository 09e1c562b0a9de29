package org.boardtopit.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ComparisonLinksTest {
    @TempDir
    private Path out;

    @Test
    void thePageLeadsToTheVideosInWhichOneOfAnAthletesAttemptsIs() throws IOException {
        Path folder = Files.createDirectory(out.resolve("comparisons"));
        for (String file : List.of("a 1-a2.mp4", "b-a2-true_time.mp4", "b-c.mp4", "a 1-a2.csv", "b-aa2.mp4")) {
            Files.createFile(folder.resolve(file));
        }
        assertEquals(
                Map.of(
                        "a 1-a2", "comparisons/a%201-a2.mp4",
                        "b-a2-true_time", "comparisons/b-a2-true_time.mp4"),
                PageFiles.in(out).comparisons(List.of("a 1", "a2")));
    }
}
