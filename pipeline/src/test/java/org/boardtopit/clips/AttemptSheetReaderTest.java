package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class AttemptSheetReaderTest {
    private static final String HEADER = "clip,bib,athlete,event,attempt,result,official_m,wind_ms,takeoff_foot,camera,"
            + "capture_fps,pattern,consent\n";

    @TempDir
    Path folder;

    private List<AttemptEntry> read(String text) throws IOException, InputException {
        Path file = Files.writeString(folder.resolve("attempts.csv"), text, StandardCharsets.UTF_8);
        return AttemptSheetReader.read(file).entries();
    }

    private AttemptEntry only(String text) throws IOException, InputException {
        List<AttemptEntry> entries = read(text);
        assertEquals(1, entries.size());
        return entries.get(0);
    }

    private String messageOf(String text) {
        InputException e = assertThrows(InputException.class, () -> read(text));
        assertEquals(1, e.getMessage().lines().count(), "one line: " + e.getMessage());
        return e.getMessage().replace(folder + "/", "");
    }

    @Test
    void readsEveryColumn() throws Exception {
        assertEquals(
                new AttemptEntry(
                        2,
                        "a.mp4",
                        "087",
                        "Tadao Brennick",
                        "Triple Jump",
                        OptionalInt.of(3),
                        Optional.of(AttemptResult.VALID),
                        13.77,
                        -0.3,
                        Optional.of(TakeoffFoot.LEFT),
                        "stand",
                        240,
                        Optional.of(Pattern.parse("hop-hop-hop")),
                        Consent.YES),
                only(HEADER + "a.mp4,087,Tadao Brennick,Triple Jump,3,o,13.77,-0.3,L,stand,240,hop-hop-hop,yes\n"));
    }

    @Test
    void needsOnlyTheClip() throws Exception {
        AttemptEntry entry = only("clip\na.mp4\n");
        assertEquals("", entry.bib());
        assertEquals(OptionalInt.empty(), entry.attempt());
        assertEquals(Optional.empty(), entry.result());
        assertTrue(Double.isNaN(entry.officialM()));
        assertTrue(Double.isNaN(entry.windMs()));
        assertTrue(Double.isNaN(entry.captureFps()));
        assertEquals(Optional.empty(), entry.takeoffFoot());
        assertEquals(Consent.NOT_SAID, entry.consent());
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({"o,VALID", "x,FAILED", "-,PASSED", "r,RETIRED", "X,FAILED", "\u2013,PASSED", "\u2212,PASSED"})
    void readsTheResultAsOnAFieldEventCard(String symbol, AttemptResult result) throws Exception {
        assertEquals(
                Optional.of(result), only("clip,result\na.mp4," + symbol + "\n").result());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "clip;official_m;wind_ms\na.mp4;14,88;+0,8\n",
                "clip\tofficial_m\twind_ms\na.mp4\t14,88\t+0,8\n",
                "clip;official_m;wind_ms\r\na.mp4;14.88;+0.8\r\n",
                "\uFEFFclip,official_m,wind_ms\na.mp4,14.88,0.8\n",
                "clip,official_m,wind_ms\na.mp4,\"14,88\",\"0,8\"\n",
                "wind_ms,clip,official_m\n 0.80 , a.mp4 ,\u00A014.88\n",
                "clip,official_m,wind_ms,,\n\na.mp4,14.88,.8,,\n,,,,\n\n",
                "clip,official_m,wind_ms,bib,consent\na.mp4,14.88,0.8",
            })
    void readsWhatSpreadsheetsAndEditorsWrite(String text) throws Exception {
        AttemptEntry entry = only(text);
        assertEquals("a.mp4", entry.clip());
        assertEquals(14.88, entry.officialM());
        assertEquals(0.8, entry.windMs());
    }

    @Test
    void takesATrueMinusSignForAMinus() throws Exception {
        assertEquals(-0.3, only("clip,wind_ms\na.mp4,\u22120.3\n").windMs());
    }

    @Test
    void noWindInformationIsAnUnknownWind() throws Exception {
        // NWI on result lists: common practice, no source.
        assertTrue(Double.isNaN(only("clip,wind_ms\na.mp4,NWI\n").windMs()));
    }

    @Test
    void keepsQuotedSeparatorsAndQuotes() throws Exception {
        assertEquals(
                "Vask, \"C\"", only("clip,athlete\na.mp4,\"Vask, \"\"C\"\"\"\n").athlete());
    }

    @Test
    void countsLinesOverEmptyOnes() throws Exception {
        assertEquals(4, read("clip\na.mp4\n\nb.mp4\n").get(1).line());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "clip,officialm~a.mp4,1 | attempts.csv, line 1: unknown column 'officialm'; did you mean 'official_m'?",
                "clip,shoes~a.mp4,1 | attempts.csv, line 1: unknown column 'shoes'; the first line names columns among clip, bib, athlete, event, attempt, result, official_m, wind_ms, takeoff_foot, camera, capture_fps, pattern, consent",
                "clip,bib,bib~a.mp4,1,2 | attempts.csv, line 1, column bib: this column is there twice",
                "bib,attempt~214,1 | attempts.csv, line 1: the column 'clip' is missing",
                "clip,bib~,214 | attempts.csv, line 2, column clip: must not be empty",
                "clip~day1/a.mp4 | attempts.csv, line 2, column clip: must be a file name without a folder, was 'day1/a.mp4'",
                "clip~a.mp4~b.mp4~A.MP4 | attempts.csv, line 4, column clip: 'A.MP4' already has a row, on line 2",
                "clip,bib~a.mp4,1,2 | attempts.csv, line 2: cell 3 ('2') has no column; put text that holds the separator in quotes",
                "clip,result~a.mp4,ok | attempts.csv, line 2, column result: must be one of o, x, -, r, was 'ok'",
                "clip,attempt~a.mp4,0 | attempts.csv, line 2, column attempt: must be from 1 to 99, was 0",
                "clip,attempt~a.mp4,1.5 | attempts.csv, line 2, column attempt: must be a whole number such as 3, was 1.5",
                "clip,attempt~a.mp4,first | attempts.csv, line 2, column attempt: must be a number such as 3, was 'first'",
                "clip,official_m~a.mp4,14.88 m | attempts.csv, line 2, column official_m: must be a number such as 14.88, was '14.88 m'",
                "clip,official_m~a.mp4,1488 | attempts.csv, line 2, column official_m: must be from 0.01 to 40, was 1488",
                "clip,official_m~a.mp4,0 | attempts.csv, line 2, column official_m: must be from 0.01 to 40, was 0",
                "clip,official_m~a.mp4,NaN | attempts.csv, line 2, column official_m: must be a number such as 14.88, was 'NaN'",
                "clip;official_m~a.mp4;1.234,5 | attempts.csv, line 2, column official_m: must be a number such as 14.88, was '1.234,5'",
                "clip,wind_ms~a.mp4,80 | attempts.csv, line 2, column wind_ms: must be from -25 to 25, was 80",
                "clip,takeoff_foot~a.mp4,left | attempts.csv, line 2, column takeoff_foot: must be one of L, R, was 'left'",
                "clip,capture_fps~a.mp4,0 | attempts.csv, line 2, column capture_fps: must be from 1 to 2000, was 0",
                "clip,pattern~a.mp4,=1+1 | attempts.csv, line 2, column pattern: must be words such as hop-hop-hop or step-step-jump, skip, or feet such as R R L L, was '=1+1', in which '=1+1' is unknown",
                "clip,pattern~a.mp4,hop-hopp | attempts.csv, line 2, column pattern: must be words such as hop-hop-hop or step-step-jump, skip, or feet such as R R L L, was 'hop-hopp', in which 'hopp' is unknown",
                "clip,takeoff_foot,pattern~a.mp4,L,R R L | attempts.csv, line 2, column takeoff_foot: must be the first foot of the pattern 'R R L' or empty, was L",
                "clip,consent~a.mp4,maybe | attempts.csv, line 2, column consent: must be one of yes, no, was 'maybe'",
                "clip,athlete~a.mp4,\"Vask~b.mp4,Halloran | attempts.csv, line 2: the quotes in this row do not match; write a quote within a cell twice",
                "clip,athlete~a.mp4,\"two~lines\" | attempts.csv, line 2, column athlete: the cell must stay on one line and hold no control characters",
                "a.mp4,214~b.mp4,131 | attempts.csv, line 1: unknown column 'a.mp4'; the first line names columns among clip, bib, athlete, event, attempt, result, official_m, wind_ms, takeoff_foot, camera, capture_fps, pattern, consent",
            })
    void saysWhatIsWrongAndWhere(String text, String message) {
        assertEquals(message, messageOf(text.replace('~', '\n')));
    }

    @Test
    void countsTheLinesOfTheFileAndNotTheRows() {
        assertEquals(
                "attempts.csv, line 5, column attempt: must be from 1 to 99, was 0",
                messageOf("clip,attempt\r\n\r\na.mp4,1\r\n,\r\nb.mp4,0\r\n"));
    }

    @Test
    void anEmptyFileIsToldWhatItsFirstLineIs() {
        assertTrue(
                messageOf(" \n").startsWith("attempts.csv: the file is empty; its first line must name the columns"));
    }

    @Test
    void aLongCellIsCutInTheMessage() {
        assertEquals(
                "attempts.csv, line 2, column result: must be one of o, x, -, r, was '" + "y".repeat(60) + "...'",
                messageOf("clip,result\na.mp4," + "y".repeat(150) + "\n"));
    }
}
