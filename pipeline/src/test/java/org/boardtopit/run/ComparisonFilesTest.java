package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ComparisonFilesTest {
    @TempDir
    private Path out;

    @ParameterizedTest
    @CsvSource({
        "no-ok.mp4, true, the first",
        "ok-no.mp4, true, the second",
        "ok-no-true_time.mp4, true, in true time",
        "ok-no.csv, true, the table",
        "ok-no.compared, true, what it was made from",
        "ok-no.mp4.part, true, half written",
        "no-elsewhere.mp4, true, with one of another competition",
        "ok-other.mp4, false, two that may be seen",
        "ok-nobody.mp4, false, a longer name",
        "ok-my-no.mp4, false, the name of another clip that ends so",
    })
    void aComparisonIsOfAClipWhenEitherOfItsTwoIs(String file, boolean shows, String what) {
        assertEquals(shows, ComparisonFiles.shows(file, Set.of("no"), Set.of("ok", "other", "nobody", "my-no")), what);
    }

    private static Clip clip(String name, boolean withheld) {
        return new Clip(
                Path.of(name + ".mp4"),
                name,
                Optional.empty(),
                Optional.empty(),
                Optional.empty(),
                withheld ? Optional.of("no consent") : Optional.empty());
    }

    @Test
    void whatShowsAWithheldClipIsRemovedBeforeTheRun() throws IOException {
        List<String> files = List.of(
                "comparisons/a-b.mp4", "comparisons/b-a-true_time.mp4", "comparisons/a-b.csv", "work/a-b.compared");
        for (String file : files) {
            Files.createDirectories(out.resolve(file).getParent());
            Files.writeString(out.resolve(file), "of a");
        }
        Path kept = Files.writeString(out.resolve("comparisons/b-c.mp4"), "of others");

        WithheldClips.remove(
                out, new ClipList(List.of(clip("a", true), clip("b", false), clip("c", false)), List.of()));

        files.forEach(file -> assertFalse(Files.exists(out.resolve(file)), file));
        assertTrue(Files.exists(kept));
    }
}
