package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The examples that users copy must work as they are, and the document must describe what the readers read. */
class SampleConfigTest {
    private static final Path SAMPLES = Path.of("..", "sample-config");

    @Test
    void theCommentedExampleIsValidAndShowsEveryKey() throws Exception {
        Path file = SAMPLES.resolve("meet.yaml");
        MeetSheet sheet = MeetSheetReader.read(file);
        assertEquals(2, sheet.cameras().size());
        assertEquals(5, sheet.athletes().size());
        assertEquals(8, sheet.attempts().orElseThrow().entries().size());
        assertEquals(RunSettings.DEFAULT, sheet.settings());
        assertEquals(TableFormat.DEFAULT, sheet.tables());
        assertEquals(documentedKeys(), keysOf(Files.readString(file, StandardCharsets.UTF_8)));
    }

    /** Keys of the form {@code `cameras.view`} in the document's tables, by their last part. */
    private static Set<String> documentedKeys() throws IOException {
        Set<String> keys = new TreeSet<>();
        Matcher matcher = Pattern.compile("(?m)^\\| `(?:[a-z]+\\.)?([a-z_]+)` \\| key ")
                .matcher(Files.readString(Path.of("..", "docs", "inputs.md"), StandardCharsets.UTF_8));
        while (matcher.find()) {
            keys.add(matcher.group(1));
        }
        return keys;
    }

    private static Set<String> keysOf(String yaml) {
        Set<String> keys = new TreeSet<>();
        Matcher matcher = Pattern.compile("(?m)^ *(?:- )?([a-z_]+):").matcher(yaml);
        while (matcher.find()) {
            keys.add(matcher.group(1));
        }
        return keys;
    }

    @Test
    void theDocumentDescribesEveryColumnInTheirOrder() throws Exception {
        List<String> documented = Pattern.compile("(?m)^\\| `([a-z_]+)` \\| column ")
                .matcher(Files.readString(Path.of("..", "docs", "inputs.md"), StandardCharsets.UTF_8))
                .results()
                .map(match -> match.group(1))
                .toList();
        assertEquals(
                Stream.concat(AttemptSheetReader.COLUMNS.stream(), CameraMarksReader.COLUMNS.stream())
                        .toList(),
                documented);
    }

    @Test
    void theSampleCompetitionIsJoinedWithoutAWarning() throws Exception {
        MeetSheet sheet = MeetSheetReader.read(SAMPLES.resolve("competition/meet.yaml"));
        ClipFolder folder =
                ClipFolder.list(List.of(SAMPLES.resolve("competition")), Path.of("target", "out"), sheet.inputFiles());
        ClipList list = ClipList.join(folder, sheet);
        assertEquals(List.of(), list.warningLines());
        assertEquals(
                List.of("A1_static_720p60", "C1_static_720p120"),
                list.clips().stream().map(Clip::name).toList());
        assertEquals(
                List.of("README.md"),
                list.skipped().stream()
                        .map(s -> s.file().getFileName().toString())
                        .toList());
        for (Clip clip : list.clips()) {
            assertTrue(clip.entry().isPresent());
            assertTrue(clip.camera().orElseThrow().reference().isPresent());
            assertFalse(Double.isNaN(clip.athlete().orElseThrow().statureM()));
        }
    }

    /** The truth of the rendering: exact to 0.001 px where the sheet has 0.1 px, so they differ by rounding alone. */
    @ParameterizedTest
    @ValueSource(strings = {"A1_static_720p60", "C1_static_720p120"})
    void theMarksOfTheSampleAreWhereTheRenderingPutThem(String clip) throws Exception {
        JsonNode truth;
        try (InputStream in =
                SampleConfigTest.class.getResourceAsStream("/org/boardtopit/sample/" + clip + ".truth.json")) {
            truth = new ObjectMapper().readTree(in);
        }
        CameraMarks marks = CameraMarksReader.read(SAMPLES.resolve("competition/REF_" + clip + ".csv"));
        Map<String, JsonNode> exact = new HashMap<>();
        truth.get("marks").forEach(mark -> exact.put(mark.get("name").asText(), mark));
        assertEquals(17, marks.marks().size());
        for (Mark mark : marks.marks()) {
            JsonNode rendered = exact.get(mark.name());
            assertEquals(rendered.get("along_m").asDouble(), mark.alongM());
            assertEquals(rendered.get("across_m").asDouble(), mark.acrossM());
            assertEquals(rendered.get("px").get(0).asDouble(), mark.pixel().x(), 0.0501);
            assertEquals(rendered.get("px").get(1).asDouble(), mark.pixel().y(), 0.0501);
        }
    }

    @Test
    void readsACompetitionOfSixCameras(@TempDir Path folder) throws Exception {
        Path source = Path.of("src/test/resources/org/boardtopit/clips/six-cameras");
        try (Stream<Path> files = Files.list(source)) {
            for (Path file : files.toList()) {
                Files.copy(file, folder.resolve(file.getFileName()));
                if (file.getFileName().toString().startsWith("REF_")) {
                    Files.createFile(folder.resolve(ClipFolder.stem(file) + ".jpg"));
                }
            }
        }
        MeetSheet sheet = MeetSheetReader.read(folder.resolve("meet.yaml"));
        assertEquals(6, sheet.cameras().size());
        assertEquals(
                17,
                sheet.cameras().get(0).reference().orElseThrow().marks().marks().size());
        List<AttemptEntry> entries = sheet.attempts().orElseThrow().entries();
        assertEquals(6, entries.size());
        assertEquals("087", entries.get(3).bib());
        assertEquals(-0.3, entries.get(2).windMs());
        for (AttemptEntry entry : entries) {
            assertTrue(sheet.camera(entry.camera()).isPresent());
        }
    }
}
