package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.lang.reflect.RecordComponent;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.Label;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.measures.AttemptQuantity;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.EffortClass;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.phases.PhaseName;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

class TableWriterTest {
    @TempDir
    Path folder;

    private <R> String written(TableFormat format, Table<R> table, R row) throws IOException {
        return text(format, table, List.of(row));
    }

    private <R> String text(TableFormat format, Table<R> table, List<R> rows) throws IOException {
        StringBuilder text = new StringBuilder();
        new TableWriter(folder, format).append(table, rows, text);
        return text.toString();
    }

    /** A row of clips.csv with nothing known but a text and two numbers. */
    private static ClipRow clip(String name, String reason, Double fps, Integer frames) {
        return new ClipRow(
                name, Outcome.NOT_MEASURED, null, reason, frames, fps, null, null, null, null, null, null, null, null);
    }

    private String cellOf(Double fps) throws IOException {
        String row = written(TableFormat.DEFAULT, ClipRow.TABLE, clip("a.mp4", "", fps, null))
                .lines()
                .skip(1)
                .findFirst()
                .orElseThrow();
        return row.split(",", -1)[5];
    }

    /**
     * Attempt W2 of the worked attempts (SYN, exact): phases 4.89, 3.65 and 4.76 m of 13.30 m, official 13.21 m, toe 0.09 m
     * behind the line. The shares are worked out by hand: 36.77, 27.44 and 35.79 %.
     */
    private static AttemptRow workedAttempt() {
        return new AttemptRow(
                "w2.mp4",
                "Open, Meeting",
                "Triple Jump",
                "131",
                "Imre-Lise Halloran",
                2,
                AttemptResult.VALID,
                13.21,
                -0.3,
                Foot.RIGHT,
                Direction.RIGHT_TO_LEFT,
                59.94005994,
                13.30,
                0.09,
                4.89,
                3.65,
                4.76,
                100 * 4.89 / 13.30,
                100 * 3.65 / 13.30,
                100 * 4.76 / 13.30,
                100 * (4.89 - 4.76) / 13.30,
                null,
                EffortClass.BALANCED,
                Double.NaN,
                ScaleSource.MARKS,
                1.0,
                Double.POSITIVE_INFINITY,
                Quality.USABLE,
                List.of("The hop leads by less than its interval.", "Hazy."),
                Map.of(AttemptQuantity.LAST_STRIDE_RATIO, 0.9456));
    }

    @Test
    void writesAnAttemptWithTheColumnsOfTheFormat() throws Exception {
        assertEquals(
                "clip,competition,event,bib,athlete,attempt,result,official_m,wind_ms,takeoff_foot,direction,fps,"
                        + "effective_m,toe_to_board_m,hop_m,step_m,jump_m,hop_pct,step_pct,jump_pct,lead_pct,lead_pct_pm,"
                        + "effort_class,approach_speed_ms,scale_source,closure_ratio,gravity_ratio,quality,warnings,approach_speed_change_ms,penultimate_stride_m,last_stride_m,last_stride_ratio,"
                        + "rhythm_evenness_pct,sit_back_m\r\n"
                        + "w2.mp4,\"Open, Meeting\",Triple Jump,131,Imre-Lise Halloran,2,o,13.21,-0.3,R,right_to_left,"
                        + "59.940,13.30,0.090,4.89,3.65,4.76,36.77,27.44,35.79,0.98,,balanced,,marks,1.000,,usable,"
                        + "The hop leads by less than its interval.; Hazy.,,,,0.946,,\r\n",
                written(TableFormat.DEFAULT, AttemptRow.TABLE, workedAttempt()));
    }

    @Test
    void writesAPhase() throws Exception {
        PhaseRow row = new PhaseRow(
                "a.mp4",
                PhaseName.HOP,
                1.0,
                1.63425,
                0.118,
                0.51625,
                5.97,
                0.05,
                36.07,
                9.55,
                2.3,
                13.54,
                -0.41,
                1.12,
                1.39,
                141.26,
                84.0,
                62.5,
                -3.04,
                ArmAction.SINGLE,
                Map.of(PhaseQuantity.PULL_BACK, 12.34));
        assertEquals(
                "clip,phase,start_s,end_s,support_time_s,flight_time_s,distance_m,distance_pm_m,share_pct,vx_takeoff_ms,"
                        + "vy_takeoff_ms,takeoff_angle_deg,speed_change_ms,com_height_takeoff_m,com_peak_m,knee_min_deg,"
                        + "free_thigh_max_deg,free_thigh_hold_pct,trunk_change_deg,arm_action,knee_yield_deg,before_mid_support_pct,"
                        + "free_thigh_min_deg,free_knee_min_deg,free_lever_min_pct,thigh_separation_max_deg,reach_shank_max_deg,"
                        + "pull_back_deg,trunk_max_deg,head_change_deg,thigh_drop_before_s,interval_s,support_share_pct,"
                        + "swing_left_deg,swing_right_deg\r\n"
                        + "a.mp4,hop,1.0000,1.6343,0.1180,0.5163,5.970,0.050,36.07,9.55,2.30,13.5,-0.41,1.120,1.390,141.3,"
                        + "84.0,62.5,-3.0,single,,,,,,,,12.3,,,,,,,\r\n",
                written(TableFormat.DEFAULT, PhaseRow.TABLE, row));
    }

    @Test
    void writesAContactWithItsTwoPostures() throws Exception {
        InstantAngles touchdown =
                new InstantAngles(1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 0.5, 11.0, 12.0, 13.0, 14.0);
        ContactRow row = new ContactRow(
                "a.mp4",
                3,
                ContactKind.HOP_LANDING,
                Foot.LEFT,
                1.5,
                0.004,
                1.65,
                null,
                0.15,
                0.006,
                90,
                99,
                5.912,
                0.02,
                0.97,
                false,
                touchdown,
                InstantAngles.NONE,
                Map.of(ContactQuantity.FOOT_SPEED_TOUCHDOWN, 1.234));
        assertEquals(
                "clip,contact,kind,foot,touchdown_s,touchdown_pm_s,toe_off_s,toe_off_pm_s,support_time_s,"
                        + "support_time_pm_s,touchdown_frame,toe_off_frame,toe_along_m,toe_along_pm_m,confidence,corrected,"
                        + "knee_touchdown_deg,hip_touchdown_deg,ankle_touchdown_deg,trunk_touchdown_deg,"
                        + "shank_touchdown_deg,thigh_touchdown_deg,free_knee_touchdown_deg,free_thigh_touchdown_deg,"
                        + "leg_plant_touchdown_deg,foot_ahead_touchdown_m,shoulder_tilt_touchdown_deg,head_touchdown_deg,"
                        + "elbow_l_touchdown_deg,elbow_r_touchdown_deg,"
                        + "knee_toe_off_deg,hip_toe_off_deg,ankle_toe_off_deg,trunk_toe_off_deg,shank_toe_off_deg,"
                        + "thigh_toe_off_deg,free_knee_toe_off_deg,free_thigh_toe_off_deg,leg_plant_toe_off_deg,"
                        + "foot_ahead_toe_off_m,shoulder_tilt_toe_off_deg,head_toe_off_deg,elbow_l_toe_off_deg,"
                        + "elbow_r_toe_off_deg,foot_speed_touchdown_ms,foot_speed_relative_touchdown_ms,arm_l_touchdown_deg,"
                        + "arm_r_touchdown_deg,arm_l_toe_off_deg,arm_r_toe_off_deg,heel_ahead_touchdown_m,"
                        + "wrists_behind_touchdown_m,hip_tilt_touchdown_deg,hip_tilt_toe_off_deg,side_lean_touchdown_deg,"
                        + "side_lean_toe_off_deg,foot_across_m\r\n"
                        + "a.mp4,3,hop_landing,L,1.5000,0.0040,1.6500,,0.1500,0.0060,90,99,5.912,0.020,0.970,no,"
                        + "1.0,2.0,3.0,4.0,5.0,6.0,7.0,8.0,9.0,0.500,11.0,12.0,13.0,14.0,,,,,,,,,,,,,,,1.23,,,,,,,,,,,,\r\n",
                written(TableFormat.DEFAULT, ContactRow.TABLE, row));
    }

    @Test
    void writesAClipThatCouldNotBeMeasured() throws Exception {
        assertEquals(
                "clip,outcome,stage,reason,frames,fps,duration_s,width_px,height_px,seconds,network,subject_seen_pct,"
                        + "registered_pct,mean_confidence\r\n"
                        + "a.mp4,not_measured,subject,\"no athlete, only officials\",,,,,,,,,,\r\n",
                written(
                        TableFormat.DEFAULT,
                        ClipRow.TABLE,
                        new ClipRow(
                                "a.mp4",
                                Outcome.NOT_MEASURED,
                                "subject",
                                "no athlete, only officials",
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null,
                                null)));
    }

    static Stream<Class<?>> rows() {
        return Stream.of(AttemptRow.class, PhaseRow.class, ContactRow.class, ClipRow.class);
    }

    /** Quantities that came later stand behind the fixed columns, so that these keep their places. */
    @ParameterizedTest
    @MethodSource("rows")
    void aRowsFieldsAreNamedAndOrderedLikeTheColumns(Class<?> row) throws Exception {
        Table<?> table = (Table<?>) row.getField("TABLE").get(null);
        List<String> fields = new ArrayList<>();
        for (RecordComponent component : row.getRecordComponents()) {
            if (component.getType() == InstantAngles.class) {
                String instant = snake(component.getName());
                for (RecordComponent angle : InstantAngles.class.getRecordComponents()) {
                    fields.add(snake(angle.getName()).replaceFirst("_(deg|m)$", "_" + instant + "_$1"));
                }
            } else if (component.getType() != Map.class) {
                fields.add(snake(component.getName()));
            }
        }
        assertEquals(fields, table.header().subList(0, fields.size()));
    }

    private static String snake(String camel) {
        return camel.replaceAll("([A-Z])", "_$1").toLowerCase(Locale.ROOT);
    }

    @ParameterizedTest
    @MethodSource("labels")
    void everyLabelIsAWordThatNoSpreadsheetTakesForAFormula(Label label) {
        assertTrue(label.label().matches("[a-z_]+|[LR]"), label.label());
    }

    static Stream<Label> labels() {
        return Stream.of(
                        Outcome.values(),
                        EffortClass.values(),
                        ScaleSource.values(),
                        Quality.values(),
                        PhaseName.values(),
                        ContactKind.values(),
                        Foot.values(),
                        Direction.values())
                .flatMap(Arrays::stream);
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({
        "0, 0.000",
        "-0.0, 0.000",
        "-0.0004, 0.000",
        "-0.0005, -0.001",
        "2.5005, 2.501",
        "1e-300, 0.000",
        "123456789.125, 123456789.125",
        "NaN, ''",
        "Infinity, ''",
        "-Infinity, ''"
    })
    void roundsHalfUpAndLeavesUnknownNumbersOut(double number, String cell) throws Exception {
        assertEquals(cell, cellOf(number));
    }

    @Test
    void anUnknownNumberIsAnEmptyCell() throws Exception {
        assertEquals("", cellOf(null));
    }

    @ParameterizedTest(name = "{0} is {1}")
    @CsvSource({"14.88, 14.88", "14.889, 14.88", "16.49, 16.49", "9.999, 9.99"})
    void anOfficialDistanceIsNeverRoundedUp(double official, String cell) {
        // Recorded to the nearest 0.01 m below: rules of the event, section 1 of the domain notes (MEM-H).
        Column<Double> column = Column.truncated("official_m", 2, value -> value);
        assertEquals(cell, column.cell().text(official, TableFormat.DEFAULT));
    }

    @Test
    void aPassKeepsItsDash() {
        Column<AttemptResult> column = Column.label("result", "o|x|-|r", result -> result::symbol);
        assertEquals("-", column.cell().text(AttemptResult.PASSED, TableFormat.DEFAULT));
    }

    @Test
    void writesDecimalCommasBetweenSemicolons() throws Exception {
        String text = written(new TableFormat(';', ','), ClipRow.TABLE, clip("a;b.mp4", "5,0 m", 59.94, 240));
        assertEquals(
                "\"a;b.mp4\";not_measured;;5,0 m;240;59,940;;;;;;;;",
                text.lines().skip(1).findFirst().orElseThrow());
    }

    @Test
    void numbersWithDecimalCommasAreReadBackAsTheyWere() throws Exception {
        TableFormat format = new TableFormat(';', ',');
        for (int seed = 0; seed < 200; seed++) {
            double fps = Math.round(new Random(seed).nextDouble(1, 1000) * 1000) / 1000.0;
            String text = written(format, ClipRow.TABLE, clip("a.mp4", "", fps, null));
            String cell = readBack(text, ';').get(1).get(5);
            assertEquals(fps, Double.parseDouble(cell.replace(',', '.')), "seed " + seed);
        }
    }

    @Test
    void writesUtf8WithoutAByteOrderMark() throws Exception {
        Path file = new TableWriter(folder, TableFormat.DEFAULT)
                .write(ClipRow.TABLE, List.of(clip("Bl\u00FCte \uD83D\uDE00.mp4", "", null, null)));
        byte[] bytes = Files.readAllBytes(file);
        assertEquals('c', bytes[0]);
        assertTrue(new String(bytes, StandardCharsets.UTF_8).contains("\r\nBl\u00FCte \uD83D\uDE00.mp4,"));
    }

    @Test
    void beginsWithAByteOrderMarkWhereOneIsAskedFor() throws Exception {
        Path file = new TableWriter(folder, new TableFormat(',', '.', true, false))
                .write(ClipRow.TABLE, List.of(clip("a.mp4", "", null, null)));
        // EF BB BF, the Unicode Standard, table 2-4
        assertEquals("efbbbf636c6970", HexFormat.of().formatHex(Files.readAllBytes(file), 0, 7));
    }

    /** The beginnings that OWASP's page "CSV Injection" lists, and the disguises of blanks and full-width signs. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "=1+1",
                "+1",
                "-1",
                "@SUM(A1)",
                "\t=1",
                "\rx",
                "\nx",
                " =1",
                "\u00A0=1",
                "\uFEFF=1",
                "\uFF1D1",
                "\uFF0B1",
                "\uFF0D1",
                "\uFF201",
                "=cmd|' /C calc'!A0",
                "-"
            })
    void textThatBeginsLikeAFormulaGetsAnApostrophe(String text) throws Exception {
        String back = readBack(written(TableFormat.DEFAULT, ClipRow.TABLE, clip(text, text, null, null)), ',')
                .get(1)
                .get(3);
        assertEquals("'" + text, back);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " ", "a=1", "'=1", "Vask", "3+4", "a-b", "x@y", "\u00FC"})
    void otherTextStaysAsItIs(String text) {
        assertEquals(text, FormulaGuard.guard(text));
    }

    private static List<List<String>> readBack(String text, char separator) throws IOException {
        CSVFormat format = CSVFormat.RFC4180.builder().setDelimiter(separator).get();
        List<List<String>> rows = new ArrayList<>();
        try (CSVParser parser = CSVParser.parse(text, format)) {
            parser.forEach(record -> rows.add(record.toList()));
        }
        return rows;
    }

    /** Every text comes back as it was, or with the one apostrophe; read by the library and by the rules of RFC 4180. */
    @ParameterizedTest
    @ValueSource(chars = {',', ';', '\t'})
    void anyTextIsReadBackAsItWasOnTwoHundredSeeds(char separator) throws Exception {
        TableFormat format = new TableFormat(separator, '.');
        for (int seed = 0; seed < 200; seed++) {
            Random random = new Random(seed);
            List<ClipRow> rows = new ArrayList<>();
            for (int i = 0; i < 5; i++) {
                rows.add(clip(randomText(random), randomText(random), null, null));
            }
            String text = text(format, ClipRow.TABLE, rows);
            List<List<String>> back = readBack(text, separator);
            assertEquals(back, Rfc4180.read(text, separator), "seed " + seed);
            assertEquals(6, back.size(), "seed " + seed);
            for (int i = 0; i < 5; i++) {
                assertHarmlessAndSame(rows.get(i).clip(), back.get(i + 1).get(0), seed);
                assertHarmlessAndSame(rows.get(i).reason(), back.get(i + 1).get(3), seed);
                assertEquals(14, back.get(i + 1).size(), "seed " + seed);
            }
        }
    }

    private static void assertHarmlessAndSame(String text, String back, int seed) {
        assertTrue(back.equals(text) || back.equals("'" + text), () -> "seed " + seed + ": " + text);
        assertFalse(!back.isEmpty() && "=+-@\t\r\n".indexOf(back.charAt(0)) >= 0, () -> "seed " + seed + ": " + back);
    }

    /** Up to a dozen characters, most of them awkward ones. */
    private static String randomText(Random random) {
        String awkward = ",;\t\"'\r\n=+-@ \u00A0\uFEFFa1\u00FC\u6F22";
        StringBuilder text = new StringBuilder();
        int length = random.nextInt(13);
        for (int i = 0; i < length; i++) {
            if (random.nextInt(8) == 0) {
                text.appendCodePoint(0x1F600 + random.nextInt(64));
            } else {
                text.append(awkward.charAt(random.nextInt(awkward.length())));
            }
        }
        return text.toString();
    }

    @Test
    void replacesAnEarlierTableAndLeavesNothingElseBehind() throws Exception {
        TableWriter writer = new TableWriter(folder, TableFormat.DEFAULT);
        writer.write(ClipRow.TABLE, List.of(clip("old.mp4", "", null, null), clip("old2.mp4", "", null, null)));
        Path file = writer.write(ClipRow.TABLE, List.of(clip("new.mp4", "", null, null)));
        assertEquals(2, Files.readAllLines(file, StandardCharsets.UTF_8).size());
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
    }

    @Test
    void anEarlierTableSurvivesWhenTheWritingFails() throws Exception {
        Path file = Files.writeString(folder.resolve("clips.csv"), "as it was");
        IOException e = assertThrows(
                IOException.class,
                () -> WholeFile.write(file, out -> {
                    out.append("half");
                    throw new IOException("disk full");
                }));
        assertEquals("disk full", e.getMessage());
        assertEquals("as it was", Files.readString(file));
        try (Stream<Path> files = Files.list(folder)) {
            assertEquals(List.of(file), files.toList());
        }
    }

    @Test
    void aTableWithoutRowsHasItsHeader() throws Exception {
        Path file = new TableWriter(folder, TableFormat.DEFAULT).write(PhaseRow.TABLE, List.of());
        assertEquals(1, Files.readAllLines(file, StandardCharsets.UTF_8).size());
    }
}
