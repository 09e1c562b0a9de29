package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

/** On the clips of the sample competition. */
@Timeout(120)
class CheckCommandTest {
    private static final Path SAMPLE = Path.of("..", "sample-config", "competition");

    @TempDir
    private Path folder;

    private CommandLineRun program;

    @BeforeEach
    void begin() {
        program = new CommandLineRun(folder);
        program.network("tiny");
    }

    private int check(String... words) {
        return program.run(Stream.concat(
                        Stream.of("check", "--network", "tiny", "--networks", "@networks", "--threads", "2"),
                        Stream.of(words))
                .toArray(String[]::new));
    }

    private void copy(String name, String as) throws IOException {
        Path target = program.path(as);
        Files.createDirectories(target.getParent());
        Files.copy(SAMPLE.resolve(name), target);
    }

    private String row(String clip) {
        return program.out()
                .lines()
                .filter(line -> line.startsWith(clip))
                .findFirst()
                .orElseThrow();
    }

    /**
     * CALC from the truth of the two clips (SYN): the athletes of 1.86 m and 1.78 m stand 19.05 m and 18.6 m away from cameras
     * with a focal length of 1024 px, so that the first is 100 px tall.
     */
    @Test
    void findsNothingInTheWayOfTheSampleCompetition() throws IOException {
        int code =
                check(SAMPLE.toString(), "--meet", SAMPLE.resolve("meet.yaml").toString(), "--out", "@out");

        assertEquals(0, code, program.out() + program.err());
        assertTrue(program.out().startsWith("No problems.\n"), program.out());
        assertTrue(
                row("A1_static_720p60.mp4")
                        .matches("A1_static_720p60.mp4 +241 +60 +1280 x 720 +0 +h264 +\\d .*(99|100|101) +A1_static.*"),
                program.out());
        assertTrue(row("C1_static_720p120.mp4").contains(" 475     120  "), program.out());
        assertTrue(program.out().contains("2 clips: 2 can be measured"), program.out());
        assertTrue(program.out().contains("for 716 frames"), program.out());
        assertFalse(Files.exists(program.path("out")), "it writes nothing");
    }

    @Test
    void saysOfEachBadClipWhatIsWrongWithIt() throws IOException {
        copy("A1_static_720p60.mp4", "clips/good.mp4");
        copy("A1_static_720p60.mp4", "clips/same again.mp4");
        copy("C1_static_720p120.mp4", "clips/refused.mp4");
        program.file("clips/empty.mp4", "");
        program.file("clips/text.mov", "not a clip");
        byte[] whole = Files.readAllBytes(SAMPLE.resolve("A1_static_720p60.mp4"));
        Files.write(program.path("clips/-cut off.mp4"), java.util.Arrays.copyOf(whole, whole.length / 2));
        program.file("meet.yaml", "attempts: attempts.csv\n");
        program.file("attempts.csv", """
                clip,bib,attempt,consent,capture_fps
                good.mp4,1,1,yes,30
                same again.mp4,1,2,yes,
                refused.mp4,1,3,no,
                empty.mp4,1,4,yes,
                text.mov,1,5,yes,
                -cut off.mp4,1,6,yes,
                forgotten.mp4,2,1,yes,
                """);

        int code = check("@clips", "--meet", "@meet.yaml");

        String out = program.out();
        assertEquals(1, code, out + program.err());
        assertTrue(out.startsWith("3 problems:\n"), out);
        assertTrue(out.contains("\n  empty.mp4: the file is empty (0 bytes)"), out);
        assertTrue(out.contains("\n  text.mov: is not a video file"), out);
        assertTrue(out.contains("\n  -cut off.mp4: the file breaks off; what is there is measured"), out);
        assertTrue(out.contains("line 8: there is no clip 'forgotten.mp4'"), out);
        assertTrue(out.contains("\n  same again.mp4: the same recording as good.mp4"), out);
        assertTrue(out.contains("\n  good.mp4: capture_fps is below the 60 frames a second of the file"), out);
        assertTrue(out.contains("6 clips: 3 can be measured, 2 cannot, 1 withheld (consent: no)"), out);
        assertTrue(row("refused.mp4").endsWith("no"), out);
    }

    @Test
    void namesTheCameraThatAClipFitsInstead() throws IOException {
        copy("A1_static_720p60.mp4", "clips/a.mp4");
        for (String camera : new String[] {"A1_static_720p60", "C1_static_720p120"}) {
            copy("REF_" + camera + ".jpg", "REF_" + camera + ".jpg");
            copy("REF_" + camera + ".csv", "REF_" + camera + ".csv");
        }
        program.file("meet.yaml", """
                attempts: attempts.csv
                cameras:
                  - {name: left, reference: REF_A1_static_720p60.jpg, marks: REF_A1_static_720p60.csv}
                  - {name: right, reference: REF_C1_static_720p120.jpg, marks: REF_C1_static_720p120.csv}
                """);
        program.file("attempts.csv", "clip,camera\na.mp4,right\n");

        assertEquals(1, check("@clips", "--meet", "@meet.yaml"), program.err());
        assertTrue(
                program.out()
                        .contains("a.mp4: it does not show what the reference picture of camera 'right' shows, so its"
                                + " marks cannot be used; it fits camera 'left': correct the column camera"),
                program.out());
    }

    @Test
    void marksThatDoNotAgreeAreToldOnce() throws IOException {
        copy("A1_static_720p60.mp4", "clips/a.mp4");
        copy("REF_A1_static_720p60.jpg", "r.jpg");
        String marks = Files.readString(SAMPLE.resolve("REF_A1_static_720p60.csv"));
        program.file("r.csv", marks.replaceFirst("(?m)^(tape 2 near,)2", "$13"));
        program.file("meet.yaml", "cameras: [{name: stand, reference: r.jpg, marks: r.csv}]\n");

        assertEquals(1, check("@clips", "--meet", "@meet.yaml"), program.err());
        assertTrue(
                program.out().startsWith("1 problem:\n  camera stand: the marks in r.csv do not agree"), program.out());
    }

    /** The invented network takes no time, so that what is left is the clip and the start: well over 8 seconds, below a minute. */
    @ParameterizedTest(name = "at 22:00, before {0}: code {1}")
    @CsvSource({"6:30, 0, ''", "22:00, 0, ''", "22:01, 0, ''"})
    void anHourThatIsPastIsTheOneOfTomorrow(String before, int code, String said) throws IOException {
        copy("A1_static_720p60.mp4", "clips/a.mp4");
        assertEquals(code, atTen("--before", before), said);
    }

    @Test
    void saysThatTheNightIsTooShort() throws IOException {
        copy("A1_static_720p60.mp4", "clips/a.mp4");
        StringWriter out = new StringWriter();
        // Five seconds to ten, and the start alone takes eight.
        int code = at(Instant.parse("2026-06-13T21:59:55Z"), out, "--before", "22:00");
        assertEquals(1, code, out.toString());
        assertTrue(out.toString().contains("a run started now ends at about 22:00, not before 22:00"), out.toString());
    }

    private int atTen(String... words) {
        return at(Instant.parse("2026-06-13T22:00:00Z"), new StringWriter(), words);
    }

    private int at(Instant now, StringWriter out, String... words) {
        Console console = new Console(new PrintWriter(out), new PrintWriter(out), false);
        Surroundings surroundings =
                new Surroundings(console, new FakeEngine(), null, Optional.empty(), Optional.empty());
        CommandLine command = new CommandLine(new CheckCommand(surroundings, Clock.fixed(now, ZoneOffset.UTC)));
        return command.execute(Stream.concat(
                        Stream.of(
                                program.path("clips").toString(),
                                "--network",
                                "tiny",
                                "--networks",
                                program.path("networks").toString()),
                        Stream.of(words))
                .toArray(String[]::new));
    }

    @Test
    void refusesAnHourThatIsNone() throws IOException {
        copy("A1_static_720p60.mp4", "clips/a.mp4");
        assertEquals(2, check("@clips", "--before", "morning"));
        assertTrue(
                program.err().startsWith("error: --before must be an hour such as 6:30 or 22:00, was 'morning'"),
                program.err());
    }

    @Test
    void aSheetThatIsWrongIsCodeTwo() throws IOException {
        copy("A1_static_720p60.mp4", "clips/a.mp4");
        program.file("meet.yaml", "venue: field\n");
        assertEquals(2, check("@clips", "--meet", "@meet.yaml"));
        assertEquals(1, program.err().lines().count(), program.err());
    }
}
