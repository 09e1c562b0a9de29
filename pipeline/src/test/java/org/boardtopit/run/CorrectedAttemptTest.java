package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Correction.Field;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.djl.TorchEngine;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.season.AthleteRegister;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Corrections of the first sample clip, all tables compared cell by cell. Its contacts: 0 and 1 approach, 2 board, 3 hop landing, 4
 * step landing, 5 pit.
 */
class CorrectedAttemptTest {
    private static final List<String> TABLES =
            List.of("attempts.csv", "phases.csv", "contacts.csv", "intervals.csv", "observations.csv", "clips.csv");

    /** What is said of the attempt as a whole and follows from its supports and flights. */
    private static final Set<String> OF_ALL =
            Set.of("gravity_ratio", "quality", "warnings", "rhythm_evenness_pct", "sit_back_m");

    /** What is said of the end of the approach, which the board's touchdown ends. */
    private static final Set<String> OF_APPROACH = Set.of("approach_speed_ms", "approach_speed_change_ms");

    @TempDir
    private static Path folder;

    private static Clip clip;
    private static ClipMeasurer measurer;
    private static Map<String, Map<String, Map<String, String>>> before;

    @BeforeAll
    static void measureAsFound() throws Exception {
        clip = KeptSample.clip();
        MeetSheet meet = MeetSheetReader.read(KeptSample.COMPETITION.resolve("meet.yaml"));
        NetworkCard network = new NetworkStore(new TorchEngine()).card(NetworkStore.DEFAULT_LANDMARKS);
        KeptSample.keep(clip, network, Effort.NORMAL, folder);
        measurer = KeptSample.measurers(meet, network, Effort.NORMAL, folder).get();
        before = tables();
    }

    @AfterAll
    static void forget() {
        before = null;
        measurer = null;
    }

    /** Cells by table, by the row's key, by column. */
    private static Map<String, Map<String, Map<String, String>>> tables(Correction... corrections) throws Exception {
        ClipResult result = measurer.measure(clip.with(List.of(corrections)), (stage, share) -> {});
        RunTables tables =
                new RunTables(new TableWriter(folder, TableFormat.DEFAULT), 1, List.of(), AthleteRegister.NONE);
        tables.put(0, result);
        tables.write();
        Map<String, Map<String, Map<String, String>>> all = new TreeMap<>();
        for (String table : TABLES) {
            all.put(table, rows(folder.resolve(table)));
        }
        return all;
    }

    private static Map<String, Map<String, String>> rows(Path file) throws Exception {
        Map<String, Map<String, String>> rows = new LinkedHashMap<>();
        CSVFormat format = CSVFormat.RFC4180.builder().setHeader().get();
        try (Reader text = Files.newBufferedReader(file);
                CSVParser parser = format.parse(text)) {
            parser.forEach(row -> rows.put(key(file.getFileName().toString(), row.toMap()), row.toMap()));
        }
        return rows;
    }

    private static String key(String table, Map<String, String> row) {
        return switch (table) {
            case "phases.csv" -> row.get("phase");
            case "contacts.csv" -> row.get("contact");
            case "intervals.csv" -> row.get("of") + " " + row.get("part") + " " + row.get("measure");
            case "observations.csv" -> row.get("phase") + " " + row.get("topic") + " " + row.get("finding");
            default -> row.get("clip");
        };
    }

    private static Correction instant(int contact, Field field, double frame) {
        return new Correction(
                2, Integer.toString(contact), field, "", "", frame, Double.NaN, true, "" + frame, "Mara", "shadow");
    }

    /** The rows in which anything differs, and in which columns. */
    private static Map<String, Set<String>> differences(
            String table, Map<String, Map<String, Map<String, String>>> now) {
        Map<String, Set<String>> differences = new TreeMap<>();
        Set<String> keys = new TreeSet<>(before.get(table).keySet());
        keys.addAll(now.get(table).keySet());
        for (String key : keys) {
            Map<String, String> then = before.get(table).getOrDefault(key, Map.of());
            Map<String, String> row = now.get(table).getOrDefault(key, Map.of());
            Set<String> columns = new TreeSet<>(then.keySet());
            columns.addAll(row.keySet());
            columns.removeIf(c -> then.getOrDefault(c, "-").equals(row.getOrDefault(c, "-")));
            if (!columns.isEmpty()) {
                differences.put(key, columns);
            }
        }
        return differences;
    }

    @ParameterizedTest(name = "touchdown of contact {0} at frame {1}")
    @CsvSource({
        "1,77,''",
        "2,90,approach hop",
        "3,130,hop step",
        "3,134.5,hop step",
        "4,162,step jump",
        "5,209,jump landing",
    })
    void aTouchdownChangesItsContactTheTwoPhasesBesideItAndNothingElse(int contact, double frame, String beside)
            throws Exception {
        var now = tables(instant(contact, Field.TOUCHDOWN_FRAME, frame));
        Set<String> phases = beside.isEmpty() ? Set.of() : Set.of(beside.split(" ", -1));

        assertEquals(Set.of("" + contact), differences("contacts.csv", now).keySet());
        assertEquals(phases, differences("phases.csv", now).keySet());
        requireRest(now, Set.of("" + contact), phases, contact == 2);
        Map<String, String> row = now.get("contacts.csv").get("" + contact);
        assertEquals("yes", row.get("corrected"));
        assertNotEquals(before.get("contacts.csv").get("" + contact).get("touchdown_s"), row.get("touchdown_s"));
        // Frames of a clip of 60 a second; half a frame, as two standard deviations of an even distribution.
        assertEquals(frame / 60, Double.parseDouble(row.get("touchdown_s")), 1e-4);
        assertEquals(2 / 60.0 / Math.sqrt(12), Double.parseDouble(row.get("touchdown_pm_s")), 1e-4);
    }

    private static void requireRest(
            Map<String, Map<String, Map<String, String>>> now,
            Set<String> contacts,
            Set<String> phases,
            boolean board) {
        Set<String> ofAttempt = new HashSet<>(OF_ALL);
        ofAttempt.addAll(board ? OF_APPROACH : Set.of());
        for (Set<String> columns : differences("attempts.csv", now).values()) {
            assertTrue(ofAttempt.containsAll(columns), "of the attempt: " + columns);
        }
        for (String interval : differences("intervals.csv", now).keySet()) {
            String[] words = interval.split(" ", -1);
            Set<String> allowed = words[0].equals("contact") ? contacts : words[0].equals("phase") ? phases : Set.of();
            boolean ofAll = words[0].equals("attempt") && ofAttempt.contains(words[words.length - 1]);
            assertTrue(ofAll || allowed.contains(words[1]), "an interval elsewhere: " + interval);
        }
        Set<String> parts = new HashSet<>(phases);
        parts.add(""); // of the attempt
        differences("observations.csv", now).forEach((observation, columns) -> {
            boolean beside = parts.contains(observation.split(" ", -1)[0]);
            // Only the foremost are told: one that comes to the fore may push another off the list, but changes none.
            boolean inBoth = before.get("observations.csv").containsKey(observation)
                    && now.get("observations.csv").containsKey(observation);
            assertTrue(
                    beside || !inBoth || columns.equals(Set.of("rank")), "elsewhere: " + observation + " " + columns);
        });
        for (Set<String> columns : differences("clips.csv", now).values()) {
            assertEquals(Set.of("reason"), columns);
        }
    }

    @Test
    void aToeOffChangesItsContactThePhaseThatItDividesAndTheSpeedThatTheNextOneLoses() throws Exception {
        var now = tables(instant(3, Field.TOE_OFF_FRAME, 135));
        assertEquals(Set.of("3"), differences("contacts.csv", now).keySet());
        Map<String, Set<String>> phases = new TreeMap<>(differences("phases.csv", now));
        assertTrue(phases.remove("step").containsAll(List.of("support_time_s", "flight_time_s")));
        phases.forEach(
                (phase, columns) -> assertEquals("jump speed_change_ms", phase + " " + String.join(" ", columns)));
        requireRest(now, Set.of("3"), Set.of("step", "jump"), false);
    }

    @Test
    void aToeOffOfTheApproachChangesItsContactOnly() throws Exception {
        var now = tables(instant(1, Field.TOE_OFF_FRAME, 87));
        assertEquals(Set.of("1"), differences("contacts.csv", now).keySet());
        assertEquals(Map.of(), differences("phases.csv", now));
    }

    /**
     * Outside check: the truth of the rendered clip (SYN), which has the hop landing one frame before the program. Whoever reads
     * that frame off the picture gets a better knee, though the picture was not read again.
     */
    @Test
    void theTrueInstantBringsTheKneeNearerToTheTruth() throws Exception {
        JsonNode truth = truthOf("hop_landing");
        double kneeDeg = truth.at("/at_touchdown/knee_deg").asDouble();
        var now = tables(
                instant(3, Field.TOUCHDOWN_FRAME, 60 * truth.get("touchdown_s").asDouble()));

        double then = number(before, "3", "knee_touchdown_deg");
        double after = number(now, "3", "knee_touchdown_deg");
        assertTrue(Math.abs(after - kneeDeg) < Math.abs(then - kneeDeg), then + " -> " + after + ", true " + kneeDeg);
        assertEquals(kneeDeg, after, 8);
        assertEquals(truth.at("/at_touchdown/trunk_lean_deg").asDouble(), number(now, "3", "trunk_touchdown_deg"), 5);
        assertEquals(
                truth.get("support_s").asDouble(),
                number(now, "3", "support_time_s"),
                Math.abs(truth.get("support_s").asDouble() - number(before, "3", "support_time_s")));
    }

    private static JsonNode truthOf(String kind) throws Exception {
        try (InputStream in = CorrectedAttemptTest.class.getResourceAsStream(
                "/org/boardtopit/sample/" + KeptSample.CLIP + ".truth.json")) {
            for (JsonNode contact : new ObjectMapper().readTree(in).get("contacts")) {
                if (contact.get("kind").asText().equals(kind)) {
                    return contact;
                }
            }
        }
        throw new IllegalStateException("no " + kind + " in the truth");
    }

    private static double number(Map<String, Map<String, Map<String, String>>> of, String contact, String column) {
        return Double.parseDouble(of.get("contacts.csv").get(contact).get(column));
    }

    @Test
    void aRemovedStrideLeavesTheJumpAsItIs() throws Exception {
        Correction none = new Correction(
                2, "0", Field.REMOVE, "", "", Double.NaN, Double.NaN, false, "yes", "Mara", "no contact there");
        var now = tables(none);
        List<String> kinds = new ArrayList<>();
        now.get("contacts.csv").values().forEach(row -> kinds.add(row.get("kind")));
        assertEquals(List.of("approach", "board", "hop_landing", "step_landing", "pit"), kinds);
    }

    @Test
    void aStrideThatWasRemovedAndSeenAgainStandsWhereItStood() throws Exception {
        Correction none = new Correction(2, "1", Field.REMOVE, "", "", Double.NaN, Double.NaN, false, "yes", "", "");
        Correction again = new Correction(3, "", Field.ADD, "approach", "R", 79, 85, true, "approach R 79 85", "", "");
        Map<String, String> row = tables(none, again).get("contacts.csv").get("1");
        Map<String, String> then = before.get("contacts.csv").get("1");
        assertEquals("yes", row.get("corrected"));
        assertEquals(Double.parseDouble(then.get("toe_along_m")), Double.parseDouble(row.get("toe_along_m")), 0.05);
        assertEquals(
                Double.parseDouble(then.get("knee_touchdown_deg")),
                Double.parseDouble(row.get("knee_touchdown_deg")),
                4);
    }

    @Test
    void onTheOtherFootTheSidesOfTheBodyChangePlaces() throws Exception {
        var now = tables(foot("board", "R"), foot("hop_landing", "R"), foot("step_landing", "L"));
        double exchanged = 0;
        double kept = 0;
        for (String contact : List.of("2", "3", "4")) {
            Map<String, String> then = before.get("contacts.csv").get(contact);
            Map<String, String> row = now.get("contacts.csv").get(contact);
            assertNotEquals(then.get("foot"), row.get("foot"));
            for (String leg : List.of("knee_touchdown_deg", "free_knee_touchdown_deg")) {
                // Some degrees, for the leg hangs on the other side of the hips now.
                assertEquals(number(before, contact, leg), number(now, contact, leg), 12, contact + " " + leg);
            }
            double left = number(before, contact, "elbow_l_touchdown_deg");
            exchanged += Math.abs(left - number(now, contact, "elbow_r_touchdown_deg"));
            kept += Math.abs(left - number(now, contact, "elbow_l_touchdown_deg"));
        }
        assertTrue(exchanged < kept / 2, "the arms change sides: " + exchanged + " against " + kept);
        assertNotEquals(
                before.get("attempts.csv").get(clip.fileName()).get("takeoff_foot"),
                now.get("attempts.csv").get(clip.fileName()).get("takeoff_foot"));
    }

    private static Correction foot(String contact, String foot) {
        return new Correction(2, contact, Field.FOOT, "", foot, Double.NaN, Double.NaN, false, foot, "", "");
    }

    @Test
    void framesOfSomebodyElseLeaveTheRestMeasured() throws Exception {
        Correction span = new Correction(2, "", Field.NOT_THE_ATHLETE, "", "", 0, 40, true, "0-40", "", "");
        var now = tables(span);
        Map<String, String> then = before.get("contacts.csv").get("3");
        int lost = before.get("contacts.csv").size() - now.get("contacts.csv").size();
        assertEquals(0, lost, "no contact lies in these frames");
        Map<String, String> row = now.get("contacts.csv").get("3");
        assertEquals(Double.parseDouble(then.get("touchdown_s")), Double.parseDouble(row.get("touchdown_s")), 0.005);
        assertEquals("no", row.get("corrected"));
    }

    @Test
    void aRejectedClipIsNotMeasuredAndSaysWhoRejectedIt() {
        Correction reject = new Correction(
                2, "", Field.REJECT, "", "", Double.NaN, Double.NaN, false, "another athlete", "Mara", "");
        ClipNotMeasuredException e = assertThrows(ClipNotMeasuredException.class, () -> tables(reject));
        assertEquals("corrections", e.stage());
        assertEquals("rejected by Mara: another athlete", e.getMessage());
    }

    @Test
    void aCorrectionThatCannotBeTrueNamesItsLine() {
        RefusedHereException e =
                assertThrows(RefusedHereException.class, () -> tables(instant(3, Field.TOUCHDOWN_FRAME, 150)));
        assertEquals(2, e.line());
        assertEquals("value", e.column());
        assertTrue(e.problem().contains("would not be before the toe-off at frame 138"), e.problem());
    }
}
