package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.CameraMarks;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Mark;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.Pattern;
import org.boardtopit.clips.ReferencePicture;
import org.boardtopit.clips.TakeoffFoot;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.Test;

class RecordJsonTest {
    private record Numbers(double a, Double b, List<Double> c, Optional<LocalDate> day) {}

    private static <T> T thereAndBack(T value, Class<T> type) throws Exception {
        String json = RecordJson.mapperOfRecords().writeValueAsString(value);
        assertTrue(json.chars().allMatch(c -> c >= 0x20 && c < 0x7f), "ASCII on one line: " + json);
        return RecordJson.mapperOfRecords().readValue(json, type);
    }

    @Test
    void numbersComeBackToTheLastBit() throws Exception {
        Numbers odd = new Numbers(
                Double.NaN,
                null,
                List.of(0.1 + 0.2, Double.MIN_VALUE, -0.0, 1 / 3.0, Double.NEGATIVE_INFINITY),
                Optional.of(LocalDate.of(2026, 6, 14)));
        assertEquals(odd, thereAndBack(odd, Numbers.class));
    }

    @Test
    void aClipComesBackWithEverythingThatTheSheetsSay() throws Exception {
        AttemptEntry entry = new AttemptEntry(
                7,
                "Sprünge 😀\n.mp4",
                "087",
                "Tadao Brennick",
                "",
                OptionalInt.of(3),
                Optional.of(AttemptResult.VALID),
                14.2,
                Double.NaN,
                Optional.of(TakeoffFoot.LEFT),
                "stand",
                Double.NaN,
                Optional.of(Pattern.parse("R R L L")),
                AttemptEntry.Consent.NOT_SAID);
        CameraMarks marks = new CameraMarks(List.of(
                new Mark("a", 0, 0, new Point2(100, 500)),
                new Mark("b", 10, 0, new Point2(900, 500)),
                new Mark("c", 0, 1.22, new Point2(150, 400)),
                new Mark("d", 10, 1.22, new Point2(850, 400))));
        Camera camera = new Camera(
                "stand",
                Camera.View.REAR,
                0.02,
                Optional.of(new ReferencePicture(Path.of("a b", "stand.jpg"), Path.of("stand.csv"), marks)));
        Athlete athlete = new Athlete("087", "", Optional.of(Athlete.Sex.FEMALE), Double.NaN, OptionalInt.empty(), "");
        Clip clip = new Clip(
                Path.of("clips", "-Sprünge 😀.mp4"),
                "x",
                Optional.of(entry),
                Optional.of(camera),
                Optional.of(athlete));

        assertEquals(clip, thereAndBack(clip, Clip.class));
        Correction correction = new Correction(
                7, "3", Correction.Field.TOUCHDOWN_S, "", "", 1 / 3.0, Double.NaN, false, "0.333", "Mara", "=\"1\"");
        Clip corrected = clip.with(List.of(correction));
        assertEquals(corrected, thereAndBack(corrected, Clip.class));
        Clip bare = new Clip(Path.of("a.mp4"), "a", Optional.empty(), Optional.empty(), Optional.empty());
        assertEquals(bare, thereAndBack(bare, Clip.class));
    }

    @Test
    void aMeetSheetComesBack() throws Exception {
        MeetSheet meet = MeetSheetReader.read(Path.of("..", "sample-config", "competition", "meet.yaml"));
        assertEquals(meet, thereAndBack(meet, MeetSheet.class));
        assertEquals(MeetSheet.NONE, thereAndBack(MeetSheet.NONE, MeetSheet.class));
    }
}
