package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.models.djl.TorchEngine;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.Look;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The clip of the sample competition whose camera looks 5 degrees past square, measured as if nobody had noted a mark.
 *
 * <p>Outside check: the rendered clip's own truth (SYN). Taken for the plane of the run, the picture gives shares that are
 * 1.5 points off on average.
 */
class WithoutMarksTest {
    private static final String CLIP = "C1_static_720p120";
    private static final Path COMPETITION = Path.of("..", "sample-config", "competition");

    @TempDir
    private static Path folder;

    private static ClipResult measured;
    private static JsonNode truth;

    @BeforeAll
    static void measureTheClip() throws Exception {
        Path sheet = folder.resolve("meet.yaml");
        Files.writeString(
                sheet, "competition: Brackenfold Open Meeting\nattempts: attempts.csv\n", StandardCharsets.UTF_8);
        Files.writeString(
                folder.resolve("attempts.csv"),
                "clip,bib,attempt,result,official_m\n" + CLIP + ".mp4,087,1,o,13.77\n",
                StandardCharsets.UTF_8);
        MeetSheet meet = MeetSheetReader.read(sheet);
        Path out = folder.resolve("out");
        ClipList list = ClipList.join(ClipFolder.list(List.of(COMPETITION), out, meet.inputFiles()), meet);
        Clip clip = list.clips().stream()
                .filter(c -> c.name().equals(CLIP))
                .findFirst()
                .orElseThrow();
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
                            RuleSetReader.builtIn(Language.ENGLISH),
                            false));
            measured = processor.measure(clip, (stage, share) -> {});
        }
        try (InputStream in =
                WithoutMarksTest.class.getResourceAsStream("/org/boardtopit/sample/" + CLIP + ".truth.json")) {
            truth = new ObjectMapper().readTree(in);
        }
    }

    @Test
    void takesPerspectiveOutOfTheShares() {
        JsonNode percent = truth.get("phases").get("percent");
        AttemptRow row = measured.attempt();
        assertEquals(percent.get(0).asDouble(), row.hopPct(), 0.6);
        assertEquals(percent.get(1).asDouble(), row.stepPct(), 0.6);
        assertEquals(percent.get(2).asDouble(), row.jumpPct(), 0.6);
    }

    @Test
    void scalesToTheOfficialDistanceAndCountsFromTheTakeOffLine() {
        assertEquals(ScaleSource.OFFICIAL, measured.attempt().scaleSource());
        for (ContactRow row : measured.contacts()) {
            if (row.kind() == ContactKind.HOP_LANDING) {
                assertEquals(toe("hop_landing"), row.toeAlongM(), 0.15);
            }
        }
        assertEquals(
                truth.get("phases").get("hop_m").asDouble(), measured.attempt().hopM(), 0.10);
    }

    private static double toe(String kind) {
        for (JsonNode contact : truth.get("contacts")) {
            if (contact.get("kind").asText().equals(kind)) {
                return contact.get("toe_x_m").asDouble();
            }
        }
        throw new IllegalStateException("no " + kind + " in the truth");
    }

    /** The rendered clip's camera stands still (SYN), and the run of a sharp clip fits a camera as well as expected. */
    @Test
    void recordsWhatTheNumbersRestOn() {
        ClipRecord record = measured.record();
        assertEquals("still", record.registration().camera());
        assertFalse(record.registration().referenceMatched());
        assertTrue(record.registration().residualPx() < 0.5, record.toString());
        assertEquals("official", record.scale().source());
        assertEquals("run", record.scale().camera());
        assertEquals(Double.NaN, record.scale().marksResidualPx());
        assertTrue(record.scale().misfit() > 0 && record.scale().misfit() < 1.5, record.toString());
        assertEquals(1, record.measuring().looksPerFrame());
        assertTrue(record.measuring().fittedFrames() > 200, record.toString());
    }

    @Test
    void isUsableAndSaysWhyItIsNotGood() {
        assertEquals(Quality.USABLE, measured.attempt().quality());
        List<String> warnings = measured.attempt().warnings();
        assertTrue(warnings.stream().anyMatch(w -> w.contains("found from the run itself")), warnings.toString());
    }
}
