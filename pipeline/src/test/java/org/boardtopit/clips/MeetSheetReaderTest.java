package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.boardtopit.clips.Athlete.Sex;
import org.boardtopit.clips.Camera.View;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MeetSheetReaderTest {
    @TempDir
    Path outer;

    private Path folder;

    @BeforeEach
    void writesTheFilesThatSheetsName() throws IOException {
        folder = Files.createDirectory(outer.resolve("meet"));
        Files.writeString(outer.resolve("outside.csv"), "clip\n");
        Files.writeString(folder.resolve("attempts.csv"), "clip\na.mp4\n");
        Files.writeString(folder.resolve("stand.jpg"), "");
        Files.writeString(
                folder.resolve("stand.csv"),
                "name,along_m,across_m,x_px,y_px\na,0,-1,0,100\nb,0,1,10,90\nc,10,-1,200,100\nd,10,1,190,90\n");
    }

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("meet.yaml"), text, StandardCharsets.UTF_8);
    }

    private MeetSheet read(String text) throws IOException, InputException {
        return MeetSheetReader.read(write(text));
    }

    private String messageOf(String text) throws IOException {
        Path file = write(text);
        InputException e = assertThrows(InputException.class, () -> MeetSheetReader.read(file));
        assertEquals(1, e.getMessage().lines().count(), "one line: " + e.getMessage());
        return e.getMessage().replace(folder + "/", "");
    }

    @Test
    void readsEveryKey() throws Exception {
        MeetSheet sheet = read("""
                competition: "Open: Meeting"
                date: 2026-06-14
                attempts: attempts.csv
                cameras:
                  - name: stand
                    view: rear
                    reference: stand.jpg
                    marks: stand.csv
                athletes:
                  - bib: 087
                    name: Tadao Brennick
                    sex: female
                    stature_m: 1.78
                    born: 2004
                    level: junior
                    team: Brackenfold Juniors
                    id: club-17
                comparisons: [team_mates, best_and_worst]
                settings: {network: heavy, threads: 3, workers: 2, effort: thorough}
                tables: {separator: tab, decimal: ",", bom: true, workbook: xlsx}
                """);
        assertEquals("Open: Meeting", sheet.competition());
        assertEquals(Optional.of(LocalDate.of(2026, 6, 14)), sheet.date());
        assertEquals("a.mp4", sheet.attempts().orElseThrow().entries().get(0).clip());
        Camera camera = sheet.camera("stand").orElseThrow();
        assertEquals(View.REAR, camera.view());
        assertEquals(4, camera.reference().orElseThrow().marks().marks().size());
        assertEquals(
                new Athlete(
                        "087",
                        "Tadao Brennick",
                        Optional.of(Sex.FEMALE),
                        1.78,
                        OptionalInt.of(2004),
                        "junior",
                        "Brackenfold Juniors",
                        "club-17"),
                sheet.athletes().get(0));
        assertEquals(Set.of(AutomaticComparison.BEST_AND_WORST, AutomaticComparison.TEAM_MATES), sheet.comparisons());
        assertEquals(new RunSettings("heavy", 3, 2, Effort.THOROUGH), sheet.settings());
        assertEquals(new TableFormat('\t', ',', true, true), sheet.tables());
        assertEquals(4, sheet.inputFiles().size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "# only a comment\n",
                "---\n",
                "competition:\nathletes:\ncameras:\nsettings:\ntables:\n",
                "{}"
            })
    void takesTheDefaultOfWhateverIsNotGiven(String text) throws Exception {
        MeetSheet sheet = read(text);
        assertEquals(
                MeetSheet.NONE,
                new MeetSheet(
                        Optional.empty(),
                        sheet.competition(),
                        sheet.date(),
                        sheet.attempts(),
                        sheet.cameras(),
                        sheet.athletes(),
                        sheet.settings(),
                        sheet.tables(),
                        sheet.safeguards(),
                        sheet.observationRules(),
                        sheet.language(),
                        sheet.comparisons()));
    }

    @Test
    void aCameraNeedsOnlyItsName() throws Exception {
        Camera camera = read("cameras: [{name: stand}]").cameras().get(0);
        assertEquals(new Camera("stand", View.SIDE, 0, Optional.empty()), camera);
    }

    @Test
    void readsHowMuchTheLensBends() throws Exception {
        List<Camera> cameras = read("cameras: [{name: stand, distortion_k1: 0.02}, {name: pit, distortion_k1: }]")
                .cameras();
        assertEquals(0.02, cameras.get(0).distortionK1());
        assertEquals(0, cameras.get(1).distortionK1());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "0.5 | distortion_k1 must be from -0.15 to 0.3, was 0.5",
                "-0.2 | distortion_k1 must be from -0.15 to 0.3, was -0.2",
                "little | distortion_k1 must be a number such as 0.02"
            })
    void refusesALensThatBendsTooMuch(String value, String problem) {
        InputException e = assertThrows(
                InputException.class, () -> read("cameras: [{name: stand, distortion_k1: " + value + "}]"));
        assertTrue(e.getMessage().contains(problem), e.getMessage());
    }

    @Test
    void anAthleteNeedsOnlyABibOrAName() throws Exception {
        MeetSheet sheet = read("athletes: [{bib: 12}, {name: No}]");
        assertEquals("12", sheet.athletes().get(0).bib());
        assertTrue(Double.isNaN(sheet.athletes().get(0).statureM()));
        // YAML takes a bare No for "false"; as a name it stays what was written.
        assertEquals("No", sheet.athletes().get(1).name());
    }

    @Test
    void keepsTheYearOfABirthday() throws Exception {
        assertEquals(
                OptionalInt.of(2004),
                read("athletes: [{bib: 12, born: 2004-02-29}]")
                        .athletes()
                        .get(0)
                        .bornYear());
    }

    @Test
    void separatesCellsBySemicolonsWhereNumbersHaveACommaAndNothingElseIsSaid() throws Exception {
        assertEquals(new TableFormat(';', ','), read("tables: {decimal: \",\"}").tables());
    }

    @Test
    void readsPastAByteOrderMarkAndWindowsLineEnds() throws Exception {
        assertEquals(
                "Meeting",
                read("\uFEFFcompetition: Meeting\r\ndate: 2026-06-14\r\n").competition());
    }

    @Test
    void findsFilesInFoldersBelow() throws Exception {
        Files.createDirectory(folder.resolve("sheets"));
        Files.writeString(folder.resolve("sheets/a.csv"), "clip\n");
        assertEquals(
                folder.resolve("sheets/a.csv"),
                read("attempts: ./sheets/../sheets/a.csv")
                        .attempts()
                        .orElseThrow()
                        .file());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "compettion: Meeting | meet.yaml, line 1, column 1: unknown key 'compettion'; did you mean 'competition'?",
                "venue: Field | meet.yaml, line 1, column 1: unknown key 'venue'; known here are competition, date, attempts, cameras, athletes, settings, tables, consent, faces, names, names_key, retention, observations, language, comparisons",
                "comparisons: best_and_worst | meet.yaml, line 1, column 14: comparisons must be a list such as [best_and_worst, team_mates]",
                "comparisons: [best] | meet.yaml, line 1, column 15: comparisons must have some of best_and_worst, team_mates, each once, was 'best'",
                "comparisons: [team_mates, team_mates] | meet.yaml, line 1, column 27: comparisons must have some of best_and_worst, team_mates, each once, was 'team_mates'",
                "cameras: [{name: stand, refrence: a.jpg}] | meet.yaml, line 1, column 25: unknown key 'refrence'; did you mean 'reference'?",
                "athletes: [{bib: 1, stature: 1.8}] | meet.yaml, line 1, column 21: unknown key 'stature'; did you mean 'stature_m'?",
                "settings: {thread: 2} | meet.yaml, line 1, column 12: unknown key 'thread'; did you mean 'threads'?",
                "tables: {decimals: 2} | meet.yaml, line 1, column 10: unknown key 'decimals'; did you mean 'decimal'?",
                "competition: [a] | meet.yaml, line 1, column 14: competition must be a text, was a list",
                "competition: {a: b} | meet.yaml, line 1, column 14: competition must be a text, was a group of keys",
                "competition: \"a\\nb\" | meet.yaml, line 1, column 14: competition must stay on one line and hold no control characters",
                "competition: a~competition: b | meet.yaml, line 2, column 1: the key 'competition' is already on line 1",
                "date: 14.06.2026 | meet.yaml, line 1, column 7: date must be a day of the calendar written year-month-day such as 2026-06-14, was '14.06.2026'",
                "date: 2026-02-30 | meet.yaml, line 1, column 7: date must be a day of the calendar written year-month-day such as 2026-06-14, was '2026-02-30'",
                "attempts: no.csv | meet.yaml, line 1, column 11: attempts: there is no file 'no.csv' in the folder of meet.yaml",
                "attempts: ../outside.csv | meet.yaml, line 1, column 11: attempts must be a path relative to the folder of meet.yaml that does not leave it, was '../outside.csv'",
                "attempts: /etc/passwd | meet.yaml, line 1, column 11: attempts must be a path relative to the folder of meet.yaml that does not leave it, was '/etc/passwd'",
                "attempts: \"a\\0.csv\" | meet.yaml, line 1, column 11: attempts must stay on one line and hold no control characters",
                "cameras: stand | meet.yaml, line 1, column 10: cameras must be a list; begin each item with '- name: ...'",
                "cameras: [stand] | meet.yaml, line 1, column 11: each item of cameras must begin with '- name: ...'",
                "cameras: [{view: side}] | meet.yaml, line 1, column 11: a camera needs a name",
                "cameras: [{name: a}, {name: a}] | meet.yaml, line 1, column 29: there are two cameras named 'a'",
                "cameras: [{name: a, view: back}] | meet.yaml, line 1, column 27: view must be one of side, front, rear, was 'back'",
                "cameras: [{name: a, reference: stand.jpg}] | meet.yaml, line 1, column 32: reference is of use only together with marks; give both, or neither",
                "cameras: [{name: a, marks: stand.csv}] | meet.yaml, line 1, column 28: marks is of use only together with reference; give both, or neither",
                "athletes: [{sex: male}] | meet.yaml, line 1, column 12: an athlete needs a bib or a name",
                "athletes: [{bib: 1, id: a}, {bib: 2, id: a}] | meet.yaml, line 1, column 42: there are two athletes with id 'a'",
                "athletes: [{bib: 1}, {bib: \"1\"}] | meet.yaml, line 1, column 28: there are two athletes with bib '1'",
                "athletes: [{name: A}, {name: A}] | meet.yaml, line 1, column 30: there are two athletes named 'A'; give bibs",
                "athletes: [{bib: 1, sex: man}] | meet.yaml, line 1, column 26: sex must be one of male, female, was 'man'",
                "athletes: [{bib: 1, stature_m: 186}] | meet.yaml, line 1, column 32: stature_m must be from 1 to 2.4, was 186",
                "athletes: [{bib: 1, stature_m: \"1.86\"}] | meet.yaml, line 1, column 32: stature_m must be a number such as 1.80, with a dot and without quotes, was '1.86'",
                "athletes: [{bib: 1, stature_m: .nan}] | meet.yaml, line 1, column 32: stature_m must be a number such as 1.80, with a dot and without quotes, was '.nan'",
                "athletes: [{bib: 1, stature_m: yes}] | meet.yaml, line 1, column 32: stature_m must be a number such as 1.80, with a dot and without quotes, was 'yes'",
                "athletes: [{bib: 1, born: 04}] | meet.yaml, line 1, column 27: born must be from 1900 to 2100, was 04",
                "athletes: [{bib: 1, born: 2004.5}] | meet.yaml, line 1, column 27: born must be a whole number such as 2004",
                "settings: {network: \"a b\"} | meet.yaml, line 1, column 21: network must be the name of a network such as full, was 'a b'",
                "settings: {threads: -1} | meet.yaml, line 1, column 21: threads must be from 0 to 256, was -1",
                "settings: {effort: huge} | meet.yaml, line 1, column 20: effort must be one of quick, normal, thorough, was 'huge'",
                "settings: {threads: many} | meet.yaml, line 1, column 21: threads must be a number such as 2, with a dot and without quotes, was 'many'",
                "settings: full | meet.yaml, line 1, column 11: settings must hold lines such as 'network: ...'",
                "tables: {separator: \":\"} | meet.yaml, line 1, column 21: separator must be one of ,, ;, tab, was ':'",
                "tables: {separator: \",\", decimal: \",\"} | meet.yaml, line 1, column 21: separator and decimal must not both be a comma; write separator: \";\"",
                "- competition: a | meet.yaml, line 1, column 1: expected lines such as 'competition: Open Meeting'",
                "competition: a~---~date: 2026-06-14 | meet.yaml, line 3, column 1: a second document begins here; one file holds one",
                "competition: &a x~date: *a | meet.yaml, line 2, column 7: aliases (*name) are not read; write the value out",
            })
    void saysWhatIsWrongAndWhere(String text, String message) throws IOException {
        assertEquals(message, messageOf(text.replace('~', '\n')));
    }

    @Test
    void pointsIntoTheMarksFileWhenTheMistakeIsThere() throws IOException {
        Files.writeString(folder.resolve("stand.csv"), "name,along_m,across_m,x_px,y_px\na,zero,0,0,0\n");
        assertEquals(
                "stand.csv, line 2, column along_m: must be a number such as 11.0, was 'zero'",
                messageOf("cameras: [{name: a, reference: stand.jpg, marks: stand.csv}]"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"cameras:\n\t- name: a\n", "competition: \"open\n", "a: b: c", "cameras: [", "a: @b"})
    void namesThePlaceWhereTheFileStopsBeingYaml(String text) throws IOException {
        String message = messageOf(text);
        assertTrue(message.matches("meet\\.yaml, line \\d+, column \\d+: this is not YAML: .+"), message);
    }

    @Test
    void saysThatTabsDoNotIndent() throws IOException {
        assertTrue(messageOf("cameras:\n\t- name: a\n").endsWith("; indent with spaces, not with tabs"));
    }

    @Test
    void refusesALinkThatLeavesTheFolder() throws IOException {
        Files.createSymbolicLink(folder.resolve("link.csv"), outer.resolve("outside.csv"));
        assertEquals(
                "meet.yaml, line 1, column 11: attempts must be a path relative to the folder of meet.yaml that does"
                        + " not leave it, was 'link.csv'",
                messageOf("attempts: link.csv"));
    }

    @Test
    void aSmallFileCannotUnfoldIntoALargeOne() {
        StringBuilder bomb = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
        for (int i = 1; i < 20; i++) {
            String last = "*a" + (i - 1);
            bomb.append(
                    "a" + i + ": &a" + i + " [" + String.join(", ", java.util.Collections.nCopies(9, last)) + "]\n");
        }
        String message = assertTimeoutPreemptively(Duration.ofSeconds(5), () -> messageOf(bomb.toString()));
        assertTrue(message.contains("aliases (*name) are not read"), message);
    }

    @Test
    void refusesDeepNesting() {
        String message =
                assertTimeoutPreemptively(Duration.ofSeconds(5), () -> messageOf("athletes: " + "[".repeat(10_000)));
        assertTrue(message.contains("nested deeper") || message.contains("Nesting Depth"), message);
    }

    @Test
    void refusesAFileThatNoClubWouldWrite() throws IOException {
        String message = messageOf("#".repeat(InputText.MOST_BYTES + 1));
        assertEquals("meet.yaml: the file is 1048577 bytes long, at most 1048576 are read", message);
    }

    @Test
    void saysWhichLineIsNotUtf8() throws IOException {
        Path file = folder.resolve("meet.yaml");
        Files.write(file, "date: 2026-06-14\ncompetition: Bl\u00FCte\n".getBytes(StandardCharsets.ISO_8859_1));
        InputException e = assertThrows(InputException.class, () -> MeetSheetReader.read(file));
        assertEquals(
                file + ", line 2: a character is not UTF-8; save the file with the encoding UTF-8", e.getMessage());
    }

    @Test
    void saysThatTheFileIsNotThere() {
        Path file = folder.resolve("nothing.yaml");
        InputException e = assertThrows(InputException.class, () -> MeetSheetReader.read(file));
        assertEquals(file + ": there is no such file", e.getMessage());
    }
}
