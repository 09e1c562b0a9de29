package org.boardtopit.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.InputException;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.TruthFiles;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class AttemptTruthReaderTest {
    @TempDir
    private static Path drawn;

    private static DrawnClip clip;

    @TempDir
    private Path folder;

    @BeforeAll
    static void drawOnce() throws IOException {
        clip = new DrawnClip(
                DrawnClip.Setup.ordinary(3).perfect().withStillCamera().atFps(60));
        new TruthFiles(clip, drawn).write("drawn");
    }

    private static Clip clipIn(Path folder) {
        return new Clip(folder.resolve("drawn.mp4"), "drawn", Optional.empty(), Optional.empty(), Optional.empty());
    }

    @Test
    void readsTheTruthOfADrawnJump() throws InputException {
        AttemptTruth truth = AttemptTruthReader.read(clipIn(drawn));

        assertEquals(clip.landmarks().frameCount(), truth.frames().size());
        assertEquals(100, truth.sharePct(0) + truth.sharePct(1) + truth.sharePct(2), 1e-9);
        ContactTruth board = truth.contact(ContactKind.BOARD);
        assertTrue(truth.isSeen(board));
        // The camera of the file sees the hips where the drawn points have them.
        FrameTruth frame = truth.frames().get(40);
        Point2 hips = truth.camera(40).project(frame.comAlongM(), 0, frame.comUpM());
        Point2 middle = frame.points()
                .get(BodyPoint.LEFT_HIP)
                .plus(frame.points().get(BodyPoint.RIGHT_HIP))
                .times(0.5);
        assertEquals(0, hips.distanceTo(middle), 0.05);
    }

    @Test
    void takesTheApproachSpeedOverTheLastFiveMetres() throws InputException {
        AttemptTruth truth = AttemptTruthReader.read(clipIn(drawn));
        double end = truth.contact(ContactKind.BOARD).touchdownS();
        double endM = clip.jumper().hips(end)[0];
        double startS = end;
        while (clip.jumper().hips(startS)[0] > endM - 5) {
            startS -= 1e-4;
        }

        assertEquals(5 / (end - startS), truth.approachSpeedMs().orElseThrow(), 0.01);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"format\" : 2 | \"format\" : 3 | drawn.truth.json: format must be 2",
                "\"stature_m\" : | \"height_m\" : | drawn.truth.json: athlete.stature_m must be a number",
                "\"width\" : 1280 | \"width\" : 0 | drawn.truth.json: width must be above 0, was 0.0",
                "\"width\" : 1280 | \"width\" : \"1280\" | drawn.truth.json: width must be a number",
                "\"hop_landing\" | \"hop\" | must be approach, board, hop_landing or step_landing, was 'hop'",
                "\"hop_landing\" | \"board\" | drawn.truth.json: contacts must have one board",
                "\"marks\" : | \"points\" : | drawn.truth.json: marks must be a list that is not empty",
                "\"pit\" : | \"pit\" | drawn.truth.json, line",
                "\"takeoff_velocity_ms\" : [ | \"takeoff_velocity_ms\" : [ 1, | takeoff_velocity_ms must hold 2 numbers",
                "\"foot\" : \"L\" | \"foot\" : \"both\" | foot must be L or R, was 'both'"
            })
    void saysInOneLineWhatIsWrongInTheTruth(String right, String wrong, String message) throws IOException {
        refuses("drawn.truth.json", right, wrong, message);
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "stance | stand | drawn.frames.csv, line 1: the column 'stance' is missing",
                "left_knee_px | left_knee_x | the column 'left_knee_px' is missing",
                "'\n0,0.000000,approach' | '\n0,0.000000,running' | line 2, column phase: must be approach, hop, step, jump or landing, was 'running'",
                "'\n0,' | '\n1,' | line 2, column frame: frames must be counted from 0, one row each; expected 0",
            })
    void saysInOneLineWhatIsWrongInTheFrames(String right, String wrong, String message) throws IOException {
        refuses("drawn.frames.csv", right, wrong, message);
    }

    private void refuses(String file, String right, String wrong, String message) throws IOException {
        for (String name : new String[] {"drawn.truth.json", "drawn.frames.csv"}) {
            Files.copy(drawn.resolve(name), folder.resolve(name));
        }
        String text = Files.readString(folder.resolve(file));
        assertTrue(text.contains(right), right);
        Files.writeString(folder.resolve(file), text.replace(right, wrong));

        InputException e = assertThrows(InputException.class, () -> AttemptTruthReader.read(clipIn(folder)));

        assertTrue(e.getMessage().contains(message), e.getMessage());
        assertEquals(1, e.getMessage().lines().count(), e.getMessage());
    }

    @Test
    void missesTheFileOfTheFrames() throws IOException {
        Files.copy(drawn.resolve("drawn.truth.json"), folder.resolve("drawn.truth.json"));

        InputException e = assertThrows(InputException.class, () -> AttemptTruthReader.read(clipIn(folder)));

        assertEquals(folder.resolve("drawn.frames.csv") + ": there is no such file", e.getMessage());
    }
}
