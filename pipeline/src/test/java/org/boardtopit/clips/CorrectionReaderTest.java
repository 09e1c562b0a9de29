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
import org.boardtopit.clips.Correction.Field;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CorrectionReaderTest {
    private static final String HEADER = "clip,contact,field,value,by,note\n";

    @TempDir
    private Path folder;

    private CorrectionSheet read(String text) throws IOException, InputException {
        return CorrectionReader.read(
                Files.writeString(folder.resolve("corrections.csv"), text, StandardCharsets.UTF_8));
    }

    private Correction only(String row) throws IOException, InputException {
        List<CorrectionSheet.Row> rows = read(HEADER + row + "\n").rows();
        assertEquals(1, rows.size());
        return rows.get(0).correction();
    }

    private String refusal(String text) {
        InputException e = assertThrows(InputException.class, () -> read(text));
        assertEquals(1, e.getMessage().lines().count(), "one line: " + e.getMessage());
        return e.getMessage().replace(folder + "/", "");
    }

    @Test
    void keepsLineAuthorAndNote() throws Exception {
        assertEquals(
                new Correction(
                        3,
                        "3",
                        Field.TOUCHDOWN_FRAME,
                        "",
                        "",
                        131,
                        Double.NaN,
                        true,
                        "131",
                        "Mara",
                        "toe first, seen in the shadow"),
                read(HEADER + "\na.mp4,3,touchdown_frame,131,Mara,\"toe first, seen in the shadow\"\n")
                        .rows()
                        .get(0)
                        .correction());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "a.mp4,3,touchdown_frame,131,,|131|NaN|true",
                "a.mp4,3,touchdown_frame,131.5,,|131.5|NaN|true",
                "a.mp4,3,touchdown_frame,\"131,5\",,|131.5|NaN|true",
                "a.mp4,hop_landing,toe_off_s,2.3,,|2.3|NaN|false",
                "a.mp4,hop_landing,toe_off_s,2.3s,,|2.3|NaN|false",
                "a.mp4,,not_the_athlete,40-62,,|40|62|true",
                "a.mp4,,not_the_athlete,0.667s-1.033s,,|0.667|1.033|false",
                "a.mp4,,not_the_athlete,\"0,667 s - 1,033 s\",,|0.667|1.033|false",
                "a.mp4,,add,step_landing R 131 139,,|131|139|true",
                "a.mp4,,add,step_landing R 2.18s 2.31s,,|2.18|2.31|false",
                "a.mp4,,add,pit both 180,,|180|NaN|true",
            })
    void readsInstantsAndSpans(String row, double from, double to, boolean frames) throws Exception {
        Correction read = only(row);
        assertEquals(from, read.from());
        assertEquals(to, read.to());
        assertEquals(frames, read.inFrames());
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            value = {
                "a.mp4,3,touch_down,131,,|column field: must be one of touchdown_frame, touchdown_s",
                "a.mp4,3,,131,,|column field: must not be empty",
                "a.mp4,3,touchdown_frame,,,|column value: must not be empty",
                "a.mp4,3,touchdown_frame,soon,,|column value: must be a frame such as 131",
                "a.mp4,3,touchdown_frame,-1,,|column value: must be a frame such as 131",
                "a.mp4,3,touchdown_frame,2.183s,,|for seconds write the field touchdown_s",
                "a.mp4,3,toe_off_frame,99999999999,,|column value: is no instant of a clip",
                "a.mp4,,touchdown_frame,131,,|column contact: touchdown_frame is about one contact",
                "a.mp4,approach,foot,L,,|column contact: foot is about one contact",
                "a.mp4,the board,foot,L,,|column contact: foot is about one contact",
                "a.mp4,3,foot,left,,|column value: must be one of L, R, both",
                "a.mp4,3,kind,landing,,|column value: must be one of approach, board",
                "a.mp4,3,remove,no,,|column value: must be one of yes",
                "a.mp4,,not_the_athlete,40,,|must be two frames such as 40-62",
                "a.mp4,,not_the_athlete,62-40,,|must end after it begins",
                "a.mp4,,not_the_athlete,40-1.2s,,|must be two frames or two times, not one of each",
                "a.mp4,,add,step_landing 131 139,,|must be a kind, a foot, the touchdown and the toe-off",
                "a.mp4,,add,step_landing R 131,,|a toe-off is missing",
                "a.mp4,,add,step_landing both 131 139,,|must be a kind, a foot",
                "a.mp4,,add,pit both 131 139,,|has no toe-off",
                "a.mp4,,reject,,,|column value: must not be empty",
                ",3,touchdown_frame,131,,|column clip: must not be empty",
            })
    void refusesWhatCannotBeMeantWithItsPlace(String row, String expected) {
        String refusal = refusal(HEADER + row + "\n");
        assertTrue(refusal.startsWith("corrections.csv, line 2, column "), refusal);
        assertTrue(refusal.contains(expected), refusal);
    }

    @Test
    void refusesAnUnknownColumn() {
        assertTrue(refusal("clip,contact,field,value,who\n").contains("unknown column 'who'"));
    }

    @Test
    void ofAWorksheetOnlyTheRowsWithAValueCount() throws Exception {
        String worksheet = """
                doubt;clip;contact;kind;foot;event;frame;s;pm_s;confidence;corrected;why;field;value;by;note
                0,41;a.mp4;3;hop_landing;L;touchdown;132;2,1923;0,0094;1,000;no;timed loosely;touchdown_frame;131,5;Mara;
                0,20;a.mp4;3;hop_landing;L;toe-off;138;2,3025;0,0187;1,000;no;nothing in particular;toe_off_frame;;;
                """;
        List<CorrectionSheet.Row> rows = read(worksheet).rows();
        assertEquals(1, rows.size());
        assertEquals(131.5, rows.get(0).correction().from());
        assertEquals("3", rows.get(0).correction().contact());
    }

    @Test
    void takesAwayTheApostropheThatGuardsAgainstFormulas() throws Exception {
        CorrectionSheet sheet = read(HEADER + "'=1.mp4,3,touchdown_frame,131,'@Mara,'=note\n");
        assertEquals("=1.mp4", sheet.rows().get(0).clip());
        assertEquals("@Mara", sheet.rows().get(0).correction().by());
        assertEquals("=note", sheet.rows().get(0).correction().note());
    }

    @ParameterizedTest
    @CsvSource({"a.mp4", "A.MP4", "a"})
    void findsTheClipByItsNameWithOrWithoutEnding(String named) throws Exception {
        ClipList joined = read(HEADER + named + ",3,touchdown_frame,131,,\n").joined(list("a.mp4", "b.mp4"));
        assertEquals(1, joined.clips().get(0).corrections().size());
        assertEquals(List.of(), joined.clips().get(1).corrections());
    }

    @Test
    void refusesAClipThatTheResultsHaveNot() throws Exception {
        CorrectionSheet sheet = read(HEADER + "A1_statik.mp4,3,touchdown_frame,131,,\n");
        InputException e = assertThrows(InputException.class, () -> sheet.joined(list("A1_static.mp4")));
        assertTrue(e.getMessage().contains("line 2, column clip: there is no clip 'A1_statik.mp4'"), e.getMessage());
        assertTrue(e.getMessage().contains("A1_static.mp4"), e.getMessage());
    }

    private static ClipList list(String... names) {
        List<Clip> clips = java.util.Arrays.stream(names)
                .map(name -> new Clip(
                        Path.of(name),
                        name.substring(0, name.indexOf('.')),
                        Optional.empty(),
                        Optional.empty(),
                        Optional.empty()))
                .toList();
        return new ClipList(clips, List.of());
    }
}
