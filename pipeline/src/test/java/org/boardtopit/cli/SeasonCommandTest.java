package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.report.tables.CsvwValidator;
import org.boardtopit.season.DrawnSeason;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SeasonCommandTest {
    private static final TableFormat GERMAN = new TableFormat(';', ',', true, false);

    @TempDir
    Path folder;

    private CommandLineRun program;

    @BeforeEach
    void program() {
        program = new CommandLineRun(folder);
    }

    private DrawnSeason competition(int month, TableFormat format) {
        return new DrawnSeason(folder.resolve("c" + month), format, "Meeting " + month, LocalDate.of(2026, month, 14));
    }

    private int season(String... folders) {
        List<String> words = Stream.of(
                        Stream.of("season"), Stream.of(folders).map(f -> "@" + f), Stream.of("--out", "@season"))
                .flatMap(s -> s)
                .toList();
        return program.run(words.toArray(String[]::new));
    }

    private String text(String file) throws IOException {
        return Files.readString(folder.resolve("season").resolve(file));
    }

    /** Five competitions in two forms, in no order; Vask's step grows by a point each, Yolland's stays. */
    private void fiveCompetitions() {
        for (int i = 0; i < 5; i++) {
            competition(5 + i, i % 2 == 0 ? GERMAN : new TableFormat('\t', '.'))
                    .add("", "2" + i, "Corin Vask", 2001, 26 + i, 26.3 + i, 26.1 + i)
                    .add("", "3" + i, "Piers Yolland", null, 27.4, 27.6)
                    .write();
        }
    }

    @Test
    void namesTheTrendThatIsThereAndNoOther() throws IOException {
        fiveCompetitions();
        assertEquals(0, season("c7", "c5", "c9", "c6", "c8"), program.err());
        List<String> trends = text("trends.csv").lines().toList();
        assertEquals(
                List.of("hop_pct falling", "step_pct rising"),
                trends.stream()
                        .map(line -> line.split("[;\\t]", -1))
                        .filter(c -> c[0].equals("Corin Vask") && c[8].matches("rising|falling"))
                        .map(c -> c[1] + " " + c[8])
                        .sorted()
                        .toList());
        assertTrue(
                trends.stream().noneMatch(line -> line.matches("Piers.*(step|hop|jump)_pct.*(rising|falling)")),
                trends.toString());
        String page = text("index.html");
        assertTrue(page.contains("Share of the step has risen"), "the page says so");
    }

    @Test
    void theTablesAreWhatTheirDescriptionSaysInTheFormOfTheFirstFolder() throws IOException {
        fiveCompetitions();
        assertEquals(0, season("c5", "c6", "c7", "c8", "c9"), program.err());
        assertEquals(List.of(), CsvwValidator.problems(folder.resolve("season")));
        assertTrue(text("athletes.csv").startsWith("\uFEFFathlete;bib;"));
    }

    /** Short steps (below 28 %) are observed in the first two competitions of Vask and in all of Yolland. */
    @Test
    void whatComesBackIsCounted() throws IOException {
        fiveCompetitions();
        season("c5", "c6", "c7", "c8", "c9");
        assertTrue(
                text("recurring.csv")
                        .contains("Corin Vask;step;effort_distribution;no;short step;2;5;6;15;2026-05-14;2026-06-14"),
                text("recurring.csv"));
        assertTrue(text("recurring.csv").contains("Piers Yolland;step;effort_distribution;no;short step;5;5;10;10;"));
    }

    @Test
    void twoCompetitionsHaveChangesAndNoTrend() throws IOException {
        competition(5, GERMAN).add("", "1", "Corin Vask", null, 26, 26.2).write();
        competition(6, GERMAN).add("", "2", "Corin Vask", null, 31, 31.2).write();
        assertEquals(0, season("c5", "c6"), program.err());
        assertFalse(text("trends.csv").contains("rising"));
        assertTrue(text("index.html").contains("Too few competitions for a trend"));
        assertTrue(text("index.html").contains("more than before"));
    }

    @Test
    void aCompetitionThatIsThereTwiceCountsOnceAndIsTold() throws IOException {
        competition(5, GERMAN).add("", "1", "Corin Vask", null, 26, 26.2).write();
        new DrawnSeason(folder.resolve("copy"), GERMAN, "Meeting 5", LocalDate.of(2026, 5, 14))
                .add("", "1", "Corin Vask", null, 26, 26.2)
                .write();
        assertEquals(0, season("c5", "copy"), program.err());
        assertTrue(program.err().contains("counted once"), program.err());
        assertTrue(text("index.html").contains("2 attempts in 1 competition."));
    }

    @Test
    void tidiedFoldersJoinNobody() throws IOException {
        competition(5, GERMAN).add("", "1", "Corin Vask", 2001, 26, 26.2).write();
        competition(6, GERMAN).add("", "2", "Piers Yolland", 2003, 27, 27.2).write();
        for (String one : List.of("@c5", "@c6")) {
            assertEquals(0, program.run("tidy", one, "--now"), program.err());
        }
        assertEquals(0, season("c5", "c6"), program.err());
        assertTrue(program.err().contains("c5 was tidied"), program.err());
        assertEquals(
                2,
                text("appearances.csv")
                        .lines()
                        .filter(l -> l.endsWith(";nothing"))
                        .count());
        assertFalse(text("appearances.csv").contains("2001"));
    }

    @Test
    void theResultsOfARunAreNotWrittenOver() throws IOException {
        Path first = competition(5, GERMAN).add("", "1", "Corin Vask", null, 26).write();
        String before = Files.readString(first.resolve("athletes.csv"));
        assertEquals(2, program.run("season", "@c5", "--out", "@c5"));
        assertTrue(program.err().contains("a folder of its own"), program.err());
        assertEquals(before, Files.readString(first.resolve("athletes.csv")));
    }

    @Test
    void aLaterVersionIsRefused() {
        competition(5, GERMAN).add("", "1", "Corin Vask", null, 26).write("9.0.1");
        assertEquals(2, season("c5"));
        assertTrue(program.err().contains("written by version 9.0.1"), program.err());
        assertFalse(Files.exists(folder.resolve("season")));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "athletes.csv  | 2026-05-14 | | a season needs the day",
                "athletes.csv  | 2026-05-14 | 14.5.26 | a day such as 2026-06-14 is expected",
                "attempts.csv  | official_m | official | the column official_m is missing",
                "intervals.csv | 34,0000 | about 34 | a number such as 14,88 is expected",
                "contacts.csv  | attempt-1 | \"attempt-1 | the quotes do not match"
            })
    void damagedTablesAreToldInOneLine(String table, String from, String to, String problem) throws IOException {
        Path file = competition(5, GERMAN)
                .add("", "1", "Corin Vask", null, 26)
                .write()
                .resolve(table.strip());
        Files.writeString(file, Files.readString(file).replace(from, to == null ? "" : to));
        assertEquals(2, season("c5"), program.err());
        assertTrue(program.err().contains(problem), program.err());
        assertEquals(1, program.err().lines().count(), program.err());
    }

    @Test
    void foldersThatAreNoneAreRefused() {
        competition(5, GERMAN).add("", "1", "Corin Vask", null, 26).write();
        assertEquals(2, season("c5", "nowhere"));
        assertEquals(2, season("c5", "c5"));
        assertTrue(program.err().contains("given twice"), program.err());
    }

    @Test
    void thePageIsThereInGermanWithNamesEscaped() throws IOException {
        competition(5, GERMAN).add("", "1", "<b>Vask & Co</b>", null, 26, 27).write();
        assertEquals(0, program.run("season", "@c5", "--out", "@season", "--language", "de"), program.err());
        String page = text("index.html");
        assertTrue(page.contains("<html lang=\"de\">"));
        assertTrue(page.contains("Saison"));
        assertTrue(page.contains("&lt;b&gt;Vask &amp; Co&lt;/b&gt;"));
        assertFalse(page.contains("<b>Vask"));
    }
}
