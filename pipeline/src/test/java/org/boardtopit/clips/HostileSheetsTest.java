package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Sheets that nobody means well with, or that a program has spoilt: one line each, soon, and within the memory at hand. */
class HostileSheetsTest {
    private static final Duration SOON = Duration.ofSeconds(10);

    @TempDir
    Path folder;

    private interface Reading {
        Object read() throws Exception;
    }

    /** The one line that a sheet is refused with. */
    private String refusal(Reading reading) {
        return assertTimeoutPreemptively(SOON, () -> {
            InputException e = assertThrows(InputException.class, reading::read);
            assertEquals(1, e.getMessage().lines().count(), e.getMessage());
            assertTrue(e.getMessage().length() < 600, e.getMessage());
            return e.getMessage().replace(folder + "/", "");
        });
    }

    private Path file(String name, byte[] content) throws IOException {
        return Files.write(folder.resolve(name), content);
    }

    private Path file(String name, String content) throws IOException {
        return file(name, content.getBytes(StandardCharsets.UTF_8));
    }

    private String attemptsRefusal(String text) throws IOException {
        Path sheet = file("attempts.csv", text);
        return refusal(() -> AttemptSheetReader.read(sheet));
    }

    private String meetRefusal(String text) throws IOException {
        Path sheet = file("meet.yaml", text);
        return refusal(() -> MeetSheetReader.read(sheet));
    }

    // ---- encodings

    @ParameterizedTest
    @ValueSource(strings = {"UTF-16", "UTF-16LE", "UTF-16BE"})
    void saysThatASheetIsUtf16(String encoding) throws IOException {
        byte[] text = "clip,athlete\na.mp4,Brennick\n".getBytes(Charset.forName(encoding));
        Path sheet = file("attempts.csv", text);
        assertEquals(
                "attempts.csv: the file is UTF-16; save it with the encoding UTF-8",
                refusal(() -> AttemptSheetReader.read(sheet)));
        byte[] yaml = "competition: Open Meeting\n".getBytes(Charset.forName(encoding));
        Path meet = file("meet.yaml", yaml);
        assertEquals(
                "meet.yaml: the file is UTF-16; save it with the encoding UTF-8",
                refusal(() -> MeetSheetReader.read(meet)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"ISO-8859-1", "windows-1252", "IBM850"})
    void saysWhichLineIsNotUtf8(String encoding) throws IOException {
        Path sheet =
                file("attempts.csv", "clip,athlete\na.mp4,Ann\nb.mp4,J\u00fcrg\n".getBytes(Charset.forName(encoding)));
        assertEquals(
                "attempts.csv, line 3: a character is not UTF-8; save the file with the encoding UTF-8",
                refusal(() -> AttemptSheetReader.read(sheet)));
    }

    @Test
    void saysInWhichCellAZeroByteIs() throws IOException {
        assertEquals(
                "attempts.csv, line 2, column athlete: the cell must stay on one line and hold no control characters",
                attemptsRefusal("clip,athlete\na.mp4,An\0n\n"));
    }

    /** What is no text at all has no good place to point to, but must end in one line, too. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void anythingButASheetIsRefusedInOneLine(int seed) throws IOException {
        byte[] noise = new byte[20_000];
        new Random(seed).nextBytes(noise);
        if (seed % 2 == 0) {
            for (int i = 0; i < noise.length; i++) {
                noise[i] = (byte) " \n,;:-\"'{}[]&*!|>%@`#abc012\t".charAt(noise[i] & 0xff & 27);
            }
        }
        Path attempts = file("attempts.csv", noise);
        Path meet = file("meet.yaml", noise);
        Path marks = file("marks.csv", noise);
        refusal(() -> AttemptSheetReader.read(attempts));
        refusal(() -> MeetSheetReader.read(meet));
        refusal(() -> CameraMarksReader.read(marks));
    }

    // ---- size

    @Test
    void refusesAMillionRows() throws IOException {
        StringBuilder rows = new StringBuilder("clip\n");
        IntStream.range(0, 1_000_000).forEach(i -> rows.append(i).append('\n'));
        assertTrue(attemptsRefusal(rows.toString()).endsWith("at most 1048576 are read"));
    }

    @Test
    void refusesShortRowsByTheTensOfThousands() throws IOException {
        String rows = IntStream.range(0, 150_000).mapToObj(Integer::toString).collect(Collectors.joining("\n"));
        assertEquals(
                "attempts.csv, line 20002: more than 20000 rows; a sheet has one for each clip",
                attemptsRefusal("clip\n" + rows));
    }

    @Test
    void aMillionEmptyLinesAreNoRows() throws Exception {
        Path sheet = file("attempts.csv", "clip\n" + "\n".repeat(1_000_000) + "a.mp4\n");
        AttemptSheet read = assertTimeoutPreemptively(SOON, () -> AttemptSheetReader.read(sheet));
        assertEquals(1_000_002, read.entries().get(0).line());
    }

    @Test
    void refusesMarksByTheHundreds() throws IOException {
        String rows = IntStream.range(0, 500)
                .mapToObj(i -> "m" + i + "," + i * 0.1 + "," + i % 7 + "," + i + "," + i % 11)
                .collect(Collectors.joining("\n"));
        Path marks = file("marks.csv", "name,along_m,across_m,x_px,y_px\n" + rows);
        assertEquals(
                "marks.csv, line 102, column name: more than 100 marks; six to ten are enough",
                refusal(() -> CameraMarksReader.read(marks)));
    }

    @Test
    void aMillionCommasAreOneLine() throws IOException {
        assertTrue(attemptsRefusal("clip" + ",".repeat(1_000_000) + "x").contains("unknown column 'x'"));
    }

    @Test
    void aQuoteThatIsNeverClosedIsOneLine() throws IOException {
        assertTrue(attemptsRefusal("clip,athlete\na.mp4,\"" + "x".repeat(900_000))
                .startsWith("attempts.csv, line 2: the quotes in this row do not match"));
    }

    @Test
    void refusesAthletesByTheTensOfThousands() throws IOException {
        String athletes =
                IntStream.range(0, 50_000).mapToObj(i -> "- {bib: " + i + "}").collect(Collectors.joining("\n"));
        assertEquals(
                "meet.yaml, line 5002, column 3: athletes has 50000 items, at most 5000 are read",
                meetRefusal("athletes:\n" + athletes + "\n"));
    }

    // ---- YAML

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "a: &a [x, x]~b: &b [*a, *a]~c: [*b, *b] | aliases (*name) are not read",
                "competition: !!java.net.URL [http://x.invalid] | competition must be a text",
                "competition: !!binary aGFsbG8= | ",
                "<<: {competition: a} | unknown key '<<'",
                "? [a, b]~: c | this is not YAML",
                "competition: a~...~---~date: 2026-06-14 | a second document begins here",
            })
    void noTrickOfYamlDoesMoreThanText(String text, String said) throws IOException {
        String yaml = text.replace('~', '\n');
        Path meet = file("meet.yaml", yaml);
        if (said == null) {
            assertTimeoutPreemptively(SOON, () -> MeetSheetReader.read(meet)); // a text like any other
            return;
        }
        assertTrue(meetRefusal(yaml).contains(said), meetRefusal(yaml));
    }

    @ParameterizedTest
    @ValueSource(strings = {"[", "{a: ", "- ", "? ", "!!seq [", "&a ["})
    void refusesDeepNestingOfEveryKind(String open) throws IOException {
        String refused = meetRefusal("athletes:\n  " + open.repeat(50_000));
        assertTrue(
                refused.contains("nested deeper") || refused.contains("Nesting Depth") || refused.contains("not YAML"),
                refused);
    }

    // ---- numbers

    @ParameterizedTest
    @ValueSource(
            strings = {
                "1e999",
                "-1e999",
                "0x7fffffffffffffff",
                "1e-999999999",
                "99999999999999999999999",
                ".inf",
                "1_0",
                "1:30"
            })
    void aNumberBeyondAllBoundsIsRefusedLikeAnyOther(String number) throws IOException {
        String refused = meetRefusal("athletes: [{bib: 1, stature_m: " + number + "}]");
        assertTrue(refused.contains("stature_m must be "), refused);
    }

    @Test
    void aNumberOfAHundredThousandDigitsIsRefusedSoon() throws IOException {
        String digits = "9".repeat(100_000);
        assertTrue(meetRefusal("settings: {threads: " + digits + "}").contains("threads"));
        assertTrue(attemptsRefusal("clip,bib,official_m\na.mp4,1," + digits).contains("longer than 200 characters"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"0x10", "1e3", "Infinity", "\u0661\u0662", "1.2.3", "--1", "1,2,3"})
    void aCellIsANumberOnlyWhenAPersonWouldWriteItSo(String number) throws IOException {
        String refused = attemptsRefusal("clip;wind_ms\na.mp4;" + number + "\n");
        assertTrue(refused.contains("wind_ms: must be"), refused);
    }

    // ---- other files

    @ParameterizedTest
    @ValueSource(strings = {"../a.mp4", "..\\a.mp4", "/etc/hosts", "C:\\clips\\a.mp4", "clips/a.mp4"})
    void aRowNamesNoPlace(String clip) throws IOException {
        assertTrue(attemptsRefusal("clip\n" + clip + "\n").contains("must be a file name without a folder"));
    }

    @ParameterizedTest
    @ValueSource(strings = {"attempts: %s", "observations: %s", "cameras: [{name: a, reference: %s, marks: m.csv}]"})
    void noKeyLeadsOutOfTheFolder(String key) throws IOException {
        Path inner = Files.createDirectories(folder.resolve("inner"));
        Files.writeString(folder.resolve("outside.csv"), "clip\n");
        Files.writeString(inner.resolve("m.csv"), "name\n");
        Files.createSymbolicLink(inner.resolve("link.csv"), folder.resolve("outside.csv"));
        Files.createSymbolicLink(inner.resolve("way"), folder);
        for (String path :
                new String[] {"../outside.csv", "link.csv", "way/outside.csv", "/etc/hosts", "./x/../../outside.csv"}) {
            Path meet = Files.writeString(inner.resolve("meet.yaml"), key.formatted("'" + path + "'") + "\n");
            String refused = refusal(() -> MeetSheetReader.read(meet));
            assertTrue(refused.contains("that does not leave it"), refused);
        }
    }

    @Test
    void aFolderOrADeviceIsNoSheet() throws IOException {
        Path inner = Files.createDirectories(folder.resolve("attempts.csv"));
        assertEquals("attempts.csv: this is not a file", refusal(() -> AttemptSheetReader.read(inner)));
        Path device = Path.of("/dev/zero");
        if (Files.exists(device)) {
            assertEquals("/dev/zero: this is not a file", refusal(() -> AttemptSheetReader.read(device)));
        }
    }

    /** A link to nowhere and one to itself among the clips. */
    @Test
    void aLinkThatLeadsNowhereIsNamed() throws IOException {
        Path clips = Files.createDirectories(folder.resolve("clips"));
        Files.createSymbolicLink(clips.resolve("round.mp4"), clips.resolve("round.mp4"));
        String refused = refusal(() -> ClipFolder.list(List.of(clips), Set.of()));
        assertTrue(refused.contains("round.mp4: the file cannot be found; is it a link to nowhere?"), refused);
    }

    @Test
    void aFormulaInASheetIsTextLikeAnyOther() throws Exception {
        Path sheet = file("attempts.csv", "clip,athlete\na.mp4,\"=HYPERLINK(\"\"http://x.invalid\"\",\"\"x\"\")\"\n");
        // The tables put an apostrophe before it: TableWriterTest.
        assertEquals(
                "=HYPERLINK(\"http://x.invalid\",\"x\")",
                AttemptSheetReader.read(sheet).entries().get(0).athlete());
    }
}
