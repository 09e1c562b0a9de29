package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ReviewCommandTest {
    @TempDir
    private Path folder;

    private CommandLineRun program;
    private Path worksheet;

    @BeforeEach
    void layTwoClips() throws Exception {
        KeptCompetition competition = KeptCompetition.in(folder);
        program = competition.program();
        worksheet = competition.out().resolve("review.csv");
    }

    private List<Map<String, String>> rows(char separator) throws IOException {
        CSVFormat format =
                CSVFormat.RFC4180.builder().setDelimiter(separator).setHeader().get();
        List<Map<String, String>> rows = new ArrayList<>();
        try (Reader text = Files.newBufferedReader(worksheet);
                CSVParser parser = format.parse(text)) {
            parser.forEach(row -> rows.add(row.toMap()));
        }
        return rows;
    }

    /** Fills in the first row of an event, as an analyst does in a spreadsheet program. */
    private void fillIn(char separator, String event, String value, String note) throws IOException {
        List<String> lines = new ArrayList<>(Files.readAllLines(worksheet));
        for (int i = 1; i < lines.size(); i++) {
            if (lines.get(i).contains(event)) {
                String open = lines.get(i).substring(0, lines.get(i).length() - 3); // field, then three empty cells
                lines.set(i, open + separator + value + separator + "Mara" + separator + note);
                break;
            }
        }
        Files.write(worksheet, lines);
    }

    @Test
    void listsEveryEventTheDoubtfulFirstAndReadyToBeFilledIn() throws Exception {
        assertEquals(0, program.run("review", "@results"), program.err());

        List<Map<String, String>> rows = rows(',');
        // Two approach contacts and three of the jump with two ends each, and the pit, of two clips.
        assertEquals(2 * (5 * 2 + 1), rows.size());
        for (int i = 1; i < rows.size(); i++) {
            double before = Double.parseDouble(rows.get(i - 1).get("doubt"));
            assertTrue(before >= Double.parseDouble(rows.get(i).get("doubt")), "row " + i);
        }
        for (Map<String, String> row : rows) {
            assertTrue(!row.get("why").isBlank());
            assertEquals(row.get("event").equals("touchdown") ? "touchdown_frame" : "toe_off_frame", row.get("field"));
            assertEquals("", row.get("value"));
        }
    }

    @ParameterizedTest
    @CsvSource({"'',','", "'tables: {decimal: \",\"}\n',;"})
    void aFilledInWorksheetIsAFileOfCorrections(String tables, char separator) throws Exception {
        program.file("meet.yaml", "competition: Brackenfold Open Meeting\nattempts: attempts.csv\n" + tables);
        program.run("review", "@results");
        String half = separator == ';' ? "130,5" : "130.5";
        fillIn(separator, "hop_landing" + separator + "L" + separator + "touchdown", half, "shadow");

        assertEquals(0, program.run("remeasure", "@results", "--corrections", "@results/review.csv"), program.err());

        assertTrue(program.out().contains("Measured 2 of 2 clips anew"), program.out());
        assertEquals(
                1,
                Files.readAllLines(program.path("results/contacts.csv")).stream()
                        .filter(line -> line.contains(separator + "yes" + separator))
                        .count());
        // The next worksheet has it in its place.
        assertEquals(0, program.run("review", "@results"), program.err());
        List<Map<String, String>> filled = rows(separator).stream()
                .filter(row -> !row.get("value").isEmpty())
                .toList();
        assertEquals(1, filled.size());
        assertEquals(half, filled.get(0).get("value"));
        assertEquals("yes", filled.get(0).get("corrected"));
        assertEquals("Mara", filled.get(0).get("by"));
        assertEquals("132", filled.get(0).get("frame"), "as the program found it");
    }

    @Test
    void doesNotWriteOverWorkThatIsNotInForce() throws Exception {
        program.run("review", "@results");
        fillIn(',', "hop_landing,L,touchdown", "130.5", "shadow");
        List<String> before = Files.readAllLines(worksheet);

        assertEquals(2, program.run("review", "@results"));

        assertTrue(program.err().contains("column value: this correction is not in force"), program.err());
        assertEquals(before, Files.readAllLines(worksheet));
    }

    @Test
    void rowsOfAClipThatIsWithheldNowGoFromTheWorksheet() throws Exception {
        program.run("review", "@results");
        program.file("attempts.csv", "clip,bib,attempt,consent\na.mp4,214,1,no\nb.mp4,214,2,yes\n");
        assertEquals(0, program.run("remeasure", "@results"), program.err());
        assertTrue(rows(',').stream().allMatch(row -> row.get("clip").equals("b.mp4")));
        assertTrue(rows(',').size() > 0);
    }

    @Test
    void correctionsThatAreAboutNoEventComeFirst() throws Exception {
        program.file("results/corrections.csv", """
                clip,contact,field,value,by,note
                b,,reject,somebody else,Mara,
                a,,not_the_athlete,0-20,Mara,
                a,hop_landing,remove,yes,Mara,
                """);
        assertEquals(0, program.run("review", "@results"), program.err());
        List<Map<String, String>> rows = rows(',');
        assertEquals(
                List.of("not_the_athlete", "reject"),
                List.of(rows.get(0).get("field"), rows.get(1).get("field")));
        assertEquals("", rows.get(0).get("doubt"));
        Map<String, String> removed = rows.stream()
                .filter(row -> row.get("field").equals("remove"))
                .findFirst()
                .orElseThrow();
        assertEquals("3", removed.get("contact"), "what is removed is still there to be taken back");
        assertEquals(0, program.run("review", "@results"), program.err());
    }
}
