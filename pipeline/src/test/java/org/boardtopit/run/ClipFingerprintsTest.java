package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Correction.Field;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ClipFingerprintsTest {
    private static final String MARKS = """
            name,along_m,across_m,x_px,y_px
            a,0,0,100,500
            b,10,0,900,500
            c,0,1.22,150,400
            d,10,1.22,850,400
            """;
    private static final String MEET = """
            competition: Open Meeting
            date: 2026-06-14
            attempts: attempts.csv
            cameras:
              - name: stand
                reference: stand.jpg
                marks: stand.csv
            athletes:
              - bib: "214"
                name: Corin Vask
                stature_m: 1.80
            observations: rules.yaml
            language: en
            """;
    private static final String SHEET = "clip,bib,attempt,official_m,camera\na.mp4,214,1,14.20,stand\n";

    @TempDir
    private Path folder;

    @BeforeEach
    void aCompetition() throws IOException {
        file("clips/a.mp4", "bytes");
        file("meet.yaml", MEET);
        file("attempts.csv", SHEET);
        file("stand.csv", MARKS);
        file("stand.jpg", "picture");
        file("rules.yaml", "rules");
    }

    private void file(String name, String text) throws IOException {
        Files.createDirectories(folder.resolve(name).getParent());
        Files.writeString(folder.resolve(name), text);
    }

    private String fingerprint(String program, String measuring) throws Exception {
        MeetSheet meet = MeetSheetReader.read(folder.resolve("meet.yaml"));
        ClipList list = ClipList.join(
                ClipFolder.list(List.of(folder.resolve("clips")), folder.resolve("out"), meet.inputFiles()), meet);
        return new ClipFingerprints(program, meet, measuring).of(list.clips().get(0), List.of());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "clips/a.mp4 | bytes | bites",
                "attempts.csv | 14.20 | 14.21",
                "attempts.csv | 214,1 | 214,2",
                "meet.yaml | Open Meeting | Closed Meeting",
                "meet.yaml | 06-14 | 06-15",
                "meet.yaml | 1.80 | 1.81",
                "meet.yaml | name: stand | distortion_k1: 0.02, name: stand",
                "stand.csv | 900 | 901",
                "stand.jpg | picture | other picture",
                "rules.yaml | rules | other rules",
                "meet.yaml | language: en | language: de",
            })
    void isAnotherOneWhenAnythingItIsMadeFromChanges(String file, String from, String to) throws Exception {
        String before = fingerprint("1", "full");
        String text = Files.readString(folder.resolve(file));
        file(
                file,
                to.startsWith("distortion")
                        ? text.replace("- name", "- distortion_k1: 0.02\n    name")
                        : text.replace(from, to));
        assertNotEquals(text, Files.readString(folder.resolve(file)), "the test changes something");

        assertNotEquals(before, fingerprint("1", "full"));
    }

    @Test
    void isAnotherOneForAnotherProgramNetworkOrJoinedClip() throws Exception {
        String before = fingerprint("1", "full");

        assertNotEquals(before, fingerprint("2", "full"));
        assertNotEquals(before, fingerprint("1", "lite"));
        MeetSheet meet = MeetSheetReader.read(folder.resolve("meet.yaml"));
        file("clips/b.mp4", "from in front");
        List<Clip> both = ClipList.join(
                        ClipFolder.list(List.of(folder.resolve("clips")), folder.resolve("out"), meet.inputFiles()),
                        meet)
                .clips();
        assertNotEquals(before, new ClipFingerprints("1", meet, "full").of(both.get(0), List.of(both.get(1))));
    }

    /** None of these is read by what makes a result. */
    @Test
    void staysWhenOtherRowsThePlaceOfFilesTheTablesFormOrTheLastDayChange() throws Exception {
        String before = fingerprint("1", "full");
        file("attempts.csv", "clip,bib,attempt,official_m,camera\nz.mp4,7,1,13.00,stand\na.mp4,214,1,14.20,stand\n");
        file("marks/stand.csv", MARKS);
        file(
                "meet.yaml",
                MEET.replace("marks: stand.csv", "marks: marks/stand.csv")
                                .replace("stature_m", "team: Juniors\n    stature_m")
                        + "tables: {decimal: \",\"}\nretention: 2027-06-30\ncomparisons: [team_mates]\n");

        assertEquals(before, fingerprint("1", "full"));
    }

    @Test
    void theProgramsOwnNumberIsTheSameEveryTime() throws IOException {
        assertEquals(ProgramHash.of(ProgramHash.class), ProgramHash.of(ProgramHash.class));
        assertNotEquals(ProgramHash.of(ProgramHash.class), ProgramHash.of(ClipFingerprintsTest.class));
    }

    @Test
    void aCorrectionCountsButNotTheLineOnWhichItStands() throws Exception {
        Clip clip = new Clip(folder.resolve("clips/a.mp4"), "a", Optional.empty(), Optional.empty(), Optional.empty());
        ClipFingerprints fingerprints = new ClipFingerprints("program", MeetSheet.NONE, "measuring");
        String without = fingerprints.of(clip, List.of());
        String with = fingerprints.of(clip.with(List.of(touchdown(2, 131))), List.of());
        assertNotEquals(without, with);
        assertEquals(with, fingerprints.of(clip.with(List.of(touchdown(7, 131))), List.of()));
        assertNotEquals(with, fingerprints.of(clip.with(List.of(touchdown(2, 132))), List.of()));
        Clip other = new Clip(folder.resolve("clips/a.mp4"), "b", Optional.empty(), Optional.empty(), Optional.empty());
        assertNotEquals(
                fingerprints.of(other, List.of(clip)),
                fingerprints.of(other, List.of(clip.with(List.of(touchdown(2, 131))))),
                "also of a clip that is joined");
    }

    private static Correction touchdown(int line, int frame) {
        return new Correction(
                line, "3", Field.TOUCHDOWN_FRAME, "", "", frame, Double.NaN, true, "" + frame, "Mara", "");
    }
}
