package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.models.djl.TorchEngine;
import org.boardtopit.observations.Confidence;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.Look;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.CsvwValidator;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The whole way from a file to tables and overlay, on the two clips of the sample competition (60 and 120 frames a second).
 *
 * <p>Outside check: the rendered footage's own truth (SYN), which comes with the clips and was not made by this program. The
 * bounds are those that the project promises for 60 frames a second, not what it reaches.
 */
class WholePipelineTest {
    private static final List<String> CLIPS = List.of("A1_static_720p60", "C1_static_720p120");
    private static final Path COMPETITION = Path.of("..", "sample-config", "competition");

    @TempDir
    private static Path out;

    private static final Map<String, ClipResult> MEASURED = new TreeMap<>();
    private static final Map<String, JsonNode> TRUTH = new TreeMap<>();

    @BeforeAll
    static void measureTheClip() throws Exception {
        MeetSheet meet = MeetSheetReader.read(COMPETITION.resolve("meet.yaml"));
        ClipList list = ClipList.join(ClipFolder.list(List.of(COMPETITION), out, meet.inputFiles()), meet);
        NetworkStore networks = new NetworkStore(new TorchEngine());
        try (PersonDetector detector = networks.openDetector(NetworkStore.DEFAULT_DETECTOR);
                LandmarkPool landmarks = networks.openLandmarks(NetworkStore.DEFAULT_LANDMARKS, 2)) {
            ClipProcessor processor = new ClipProcessor(
                    meet,
                    out,
                    new ClipProcessor.Tools(
                            new FfmpegClipOpener(1),
                            detector,
                            landmarks,
                            Look.of(Effort.QUICK),
                            1,
                            RuleSetReader.builtIn(),
                            true));
            for (Clip clip : list.clips()) {
                MEASURED.put(clip.name(), processor.measure(clip, (stage, share) -> {}));
            }
        }
        for (String clip : CLIPS) {
            try (InputStream in =
                    WholePipelineTest.class.getResourceAsStream("/org/boardtopit/sample/" + clip + ".truth.json")) {
                TRUTH.put(clip, new ObjectMapper().readTree(in));
            }
        }
    }

    @AfterAll
    static void forget() {
        MEASURED.clear();
        TRUTH.clear();
    }

    private static ContactRow row(String clip, ContactKind kind) {
        List<ContactRow> rows = MEASURED.get(clip).contacts().stream()
                .filter(r -> r.kind() == kind)
                .toList();
        assertEquals(1, rows.size(), clip + ": rows of kind " + kind);
        return rows.get(0);
    }

    private static JsonNode truth(String clip, ContactKind kind) {
        for (JsonNode contact : TRUTH.get(clip).get("contacts")) {
            if (contact.get("kind").asText().equals(kind.label())) {
                return contact;
            }
        }
        throw new IllegalStateException("no " + kind + " in the truth");
    }

    private static final List<ContactKind> JUMP =
            List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING);

    @Test
    void findsTheLegalOrderWithTheRightFeet() {
        for (String clip : CLIPS) {
            for (ContactKind kind : JUMP) {
                assertEquals(
                        truth(clip, kind).get("foot").asText(),
                        row(clip, kind).foot().label(),
                        kind.label());
            }
            assertEquals(Foot.BOTH, row(clip, ContactKind.PIT).foot());
            assertEquals(Quality.GOOD, MEASURED.get(clip).attempt().quality());
            assertEquals(ScaleSource.MARKS, MEASURED.get(clip).attempt().scaleSource());
        }
    }

    /** By the rules of W3C's vocabulary for tables, with comma and dot, semicolon and decimal comma. */
    @ParameterizedTest
    @CsvSource({"',',.", ";,','"})
    void itsTablesAreAsTablesJsonDescribesThem(char separator, char decimal, @TempDir Path folder) throws IOException {
        RunTables tables = new RunTables(new TableWriter(folder, new TableFormat(separator, decimal)), List.of());
        MEASURED.values().forEach(tables::add);
        tables.write();

        assertEquals(List.of(), CsvwValidator.problems(folder));

        Path contacts = folder.resolve("contacts.csv");
        String written = Files.readString(contacts);
        Files.writeString(contacts, written.replace("hop_landing", "second_hop"));
        assertTrue(
                CsvwValidator.problems(folder).get(0).contains("kind: 'second_hop' is none of "),
                "a word that is not described is found");
    }

    @Test
    void timesTheContactsToTwentyMilliseconds() {
        List<Double> errors = new ArrayList<>();
        for (String clip : CLIPS) {

            for (ContactKind kind : JUMP) {
                errors.add(Math.abs(row(clip, kind).touchdownS()
                        - truth(clip, kind).get("touchdown_s").asDouble()));
                errors.add(Math.abs(row(clip, kind).toeOffS()
                        - truth(clip, kind).get("toeoff_s").asDouble()));
            }
            errors.add(Math.abs(row(clip, ContactKind.PIT).touchdownS()
                    - TRUTH.get(clip).get("pit").get("landing_s").asDouble()));
        }
        assertTrue(mean(errors) <= 0.020, "mean error in s " + mean(errors));
    }

    @Test
    void sharesOutTheDistanceToAPoint() {
        for (String clip : CLIPS) {
            JsonNode percent = TRUTH.get(clip).get("phases").get("percent");
            List<Double> errors = List.of(
                    Math.abs(MEASURED.get(clip).attempt().hopPct()
                            - percent.get(0).asDouble()),
                    Math.abs(MEASURED.get(clip).attempt().stepPct()
                            - percent.get(1).asDouble()),
                    Math.abs(MEASURED.get(clip).attempt().jumpPct()
                            - percent.get(2).asDouble()));
            assertTrue(mean(errors) <= 1.2, "mean error in points " + mean(errors));
        }
    }

    @Test
    void readsKneeAndTrunkAtTouchdownToSixDegrees() {
        List<Double> knee = new ArrayList<>();
        List<Double> trunk = new ArrayList<>();
        for (String clip : CLIPS) {

            for (ContactKind kind : JUMP) {
                JsonNode at = truth(clip, kind).get("at_touchdown");
                knee.add(Math.abs(row(clip, kind).touchdown().kneeDeg()
                        - at.get("knee_deg").asDouble()));
                trunk.add(Math.abs(row(clip, kind).touchdown().trunkDeg()
                        - at.get("trunk_lean_deg").asDouble()));
            }
        }
        assertTrue(mean(knee) <= 6, "knee, mean error in degrees " + mean(knee));
        assertTrue(mean(trunk) <= 6, "trunk, mean error in degrees " + mean(trunk));
    }

    @Test
    void measuresTheSpeedOfTheCentreOfMassInFlight() {
        for (String clip : CLIPS) {
            // The truth's centre of mass is in free fall between contacts: its speed along is exact.
            for (int i = 0; i < 3; i++) {
                double expected = truth(clip, JUMP.get(i))
                        .get("takeoff_velocity_ms")
                        .get(0)
                        .asDouble();
                String phase = List.of("hop", "step", "jump").get(i);
                double vx = MEASURED.get(clip).phases().stream()
                        .filter(p -> p.phase().label().equals(phase))
                        .findFirst()
                        .orElseThrow()
                        .vxTakeoffMs();
                assertEquals(expected, vx, 0.35, phase);
            }
        }
    }

    @Test
    void writesAnOverlayWithTheFramesAndTimesOfTheClip() throws Exception {
        String clipName = CLIPS.get(0);
        Path overlay = out.resolve("overlays").resolve(clipName + ".mp4");
        assertTrue(Files.size(overlay) > 50_000, "size of the overlay");
        FfmpegClipOpener opener = new FfmpegClipOpener(1);
        try (FrameReader clip = opener.open(COMPETITION.resolve(clipName + ".mp4"));
                FrameReader drawn = opener.open(overlay)) {
            assertEquals(clip.info().widthPx(), drawn.info().widthPx());
            Optional<VideoFrame> a = clip.next();
            Optional<VideoFrame> b = drawn.next();
            int frames = 0;
            while (a.isPresent() && b.isPresent()) {
                long apartUs = Math.abs(a.get().timestampUs() - b.get().timestampUs());
                assertTrue(apartUs <= 10, String.format(Locale.ROOT, "frame %d is %d us apart", frames, apartUs));
                frames++;
                a = clip.next();
                b = drawn.next();
            }
            assertTrue(a.isEmpty() && b.isEmpty(), "both end after " + frames + " frames");
            assertEquals(TRUTH.get(clipName).get("frames").asInt(), frames);
        }
    }

    private static double mean(List<Double> values) {
        return values.stream().mapToDouble(v -> v).average().orElse(Double.NaN);
    }

    /** Focal length, height and distance are those of the truth's camera matrices (SYN): C = -R' t by hand. */
    @ParameterizedTest
    @CsvSource({"A1_static_720p60, 1024, 1.70, 19.0", "C1_static_720p120, 819.2, 1.50, 14.0"})
    void recordsTheCameraThatTheMarksTell(String clip, double focalPx, double heightM, double distanceM) {
        ClipRecord record = MEASURED.get(clip).record();
        assertEquals("still", record.registration().camera());
        assertTrue(record.registration().referenceMatched());
        assertEquals("marks", record.scale().source());
        assertEquals("marks", record.scale().camera());
        assertEquals(focalPx, record.scale().focalPx(), 0.03 * focalPx);
        assertEquals(heightM, record.scale().heightM(), 0.1);
        assertEquals(distanceM, record.scale().distanceM(), 0.03 * distanceM);
        assertTrue(record.scale().marksResidualPx() < 1.5, record.toString());
        assertEquals(Double.NaN, record.scale().misfit());
    }

    /** Nothing was planted into the rendered clips (SYN), so nothing may be said of them that is sure and to be worked on. */
    @Test
    void raisesNoPriorityThatIsSure() {
        for (ClipResult result : MEASURED.values()) {
            assertFalse(result.observations().isEmpty());
            for (ObservationRow row : result.observations()) {
                assertFalse(row.kind() == Kind.PRIORITY && row.confidence() == Confidence.HIGH, row.toString());
            }
        }
    }
}
