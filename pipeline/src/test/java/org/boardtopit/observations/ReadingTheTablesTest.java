package org.boardtopit.observations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Athlete.Sex;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.measures.Evidence;
import org.boardtopit.measures.EvidenceTable;
import org.boardtopit.measures.PhaseDistances;
import org.boardtopit.measures.Projectile;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.Reading;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.wording.Language;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * The page that shows how to read the tables: its numbers are those of the worked attempts (SYN, exact) and of the rules of the
 * program, and change with them.
 */
class ReadingTheTablesTest {
    private static final Path PAGE = Path.of("..", "docs", "reading-the-tables.md");
    private static final double BOARD_S = 1.5;

    /** Three of the worked attempts; postures are invented. */
    private static final class Attempt {
        private final String name;
        private final PhaseDistances marks;
        private final double[][] flights;
        private final double[] supportsS;
        private final double[] placeSdsM;
        private final AthleteLevel level;
        private final Sex sex;
        private final Quality quality;

        Attempt(
                String name,
                PhaseDistances marks,
                double[][] flights,
                double[] supportsS,
                double[] placeSdsM,
                AthleteLevel level,
                Sex sex,
                Quality quality) {
            this.name = name;
            this.marks = marks;
            this.flights = flights;
            this.supportsS = supportsS;
            this.placeSdsM = placeSdsM;
            this.level = level;
            this.sex = sex;
            this.quality = quality;
        }

        static Attempt of(String name) {
            return switch (name) {
                case "W1" ->
                    new Attempt(
                            name,
                            new PhaseDistances(-0.06, 5.91, 10.64, 16.49),
                            new double[][] {{9.55, 2.30, .12}, {8.55, 1.90, .07}, {7.30, 2.55, .42}},
                            new double[] {.118, .150, .172},
                            new double[] {0.02, 0.02, 0.02, 0.03},
                            AthleteLevel.SENIOR,
                            Sex.MALE,
                            Quality.GOOD);
                case "W3" ->
                    new Attempt(
                            name,
                            new PhaseDistances(-0.12, 3.51, 6.04, 9.66),
                            new double[][] {{7.05, 1.75, .08}, {6.30, 1.10, .05}, {5.55, 1.85, .34}},
                            new double[] {.132, .160, .178},
                            new double[] {0.02, 0.02, 0.02, 0.03},
                            AthleteLevel.JUNIOR,
                            Sex.FEMALE,
                            Quality.GOOD);
                case "W4" ->
                    new Attempt(
                            name,
                            new PhaseDistances(-0.15, 3.36, 5.94, 9.27),
                            new double[][] {{6.90, 1.70, .08}, {6.15, 1.20, .05}, {5.30, 1.60, .36}},
                            new double[] {.135, .168, .190},
                            new double[] {0.03, 0.03, 0.03, 0.04},
                            AthleteLevel.MASTERS,
                            Sex.MALE,
                            Quality.USABLE);
                default -> throw new IllegalArgumentException(name);
            };
        }

        Projectile flight(int phase) {
            return new Projectile(flights[phase][0], flights[phase][1], flights[phase][2]);
        }

        double intervalS(int phase) {
            return supportsS[phase] + flight(phase).flightTimeS();
        }

        /** From the first frame to the touchdown with which a phase begins. */
        double touchdownS(int phase) {
            double at = BOARD_S;
            for (int i = 0; i < phase; i++) {
                at += intervalS(i);
            }
            return at;
        }
    }

    private final List<Evidence> evidence = new ArrayList<>();

    private void with(String part, String measure, double value, double sd, double atS) {
        evidence.add(new Evidence(part, measure, new Reading(value, sd), atS));
    }

    private List<Observation> observations(Attempt a) {
        String[] phases = {"hop", "step", "jump"};
        double[] shareSds = a.marks.shareSdsPct(a.placeSdsM[0], a.placeSdsM[1], a.placeSdsM[2], a.placeSdsM[3]);
        double[] shares = {a.marks.hopPct(), a.marks.stepPct(), a.marks.jumpPct()};
        for (int i = 0; i < phases.length; i++) {
            double toeOff = a.touchdownS(i) + a.supportsS[i];
            double middle = (toeOff + a.touchdownS(i + 1)) / 2;
            with(phases[i], "share_pct", shares[i], shareSds[i], middle);
            with(phases[i], "takeoff_angle_deg", a.flight(i).takeoffAngleDeg(), 0.4, toeOff);
            if (i > 0) {
                with(phases[i], "speed_change_ms", a.flights[i][0] - a.flights[i - 1][0], 0.07, toeOff);
            }
        }
        with("attempt", "rhythm_evenness_pct", 100 * a.intervalS(1) / a.intervalS(0), 1.8, BOARD_S);
        postures(a);
        Map<ContactKind, Double> contacts = Map.of(
                ContactKind.BOARD,
                1.0,
                ContactKind.HOP_LANDING,
                1.0,
                ContactKind.STEP_LANDING,
                1.0,
                ContactKind.PIT,
                1.0);
        Map<PhaseName, ArmAction> arms = a.name.equals("W1")
                ? Map.of(
                        PhaseName.HOP,
                        ArmAction.SINGLE,
                        PhaseName.STEP,
                        ArmAction.DOUBLE,
                        PhaseName.JUMP,
                        ArmAction.DOUBLE)
                : Map.of();
        return new Observer(RuleSetReader.builtIn(Language.ENGLISH))
                .observe(new ObservedAttempt(
                        new EvidenceTable(evidence), a.quality, contacts, arms, a.level, Optional.of(a.sex)));
    }

    private void postures(Attempt a) {
        double stepEndS = a.touchdownS(2);
        double pitS = a.touchdownS(3);
        switch (a.name) {
            case "W1" -> {
                with("board", "trunk_toe_off_deg", 4, 2.5, BOARD_S + a.supportsS[0]);
                with("step", "trunk_change_deg", 3, 4, stepEndS);
                with("step", "free_thigh_hold_pct", 58, 4, stepEndS - 0.2);
                with("hop_landing", "foot_speed_relative_touchdown_ms", -4.6, 0.8, a.touchdownS(1));
                with("jump", "thigh_drop_before_s", 0.21, 0.012, pitS - 0.21);
                with("pit", "heel_ahead_touchdown_m", 0.34, 0.05, pitS);
            }
            case "W3" -> {
                with("hop", "trunk_change_deg", 21, 4, a.touchdownS(1));
                with("step", "trunk_change_deg", 25, 4, stepEndS);
                with("step", "free_thigh_hold_pct", 20, 4, stepEndS - 0.1);
                with("board", "free_thigh_toe_off_deg", 84, 5, BOARD_S + a.supportsS[0]);
            }
            default -> {
                with("hop_landing", "foot_speed_relative_touchdown_ms", -0.4, 0.8, a.touchdownS(1));
                with("step", "knee_min_deg", 104, 5.5, a.touchdownS(1) + 0.06);
                with("hop", "swing_left_deg", 13, 1.5, a.touchdownS(1) - 0.1);
                with("step", "swing_right_deg", 14, 1.5, stepEndS - 0.1);
                with("step", "trunk_change_deg", 1, 4, stepEndS);
            }
        }
    }

    /** A row as the page shows it. */
    private static String row(Observation o) {
        String value = o.evidence()
                .map(m -> m.unit().number(m.value()) + " ("
                        + m.unit().number(m.interval().low()) + " to "
                        + m.unit().number(m.interval().high()) + ") " + m.unit().label())
                .orElse("");
        String guide = o.evidence().map(m -> guide(m)).orElse("");
        return "| %s | %s | %s | %s | %s | %s | %s |"
                .formatted(
                        o.kind().label(),
                        o.phase(),
                        o.finding(),
                        value.strip(),
                        guide,
                        o.confidence().label(),
                        o.causedBy());
    }

    private static String guide(Observation.Measured m) {
        String low =
                Double.isNaN(m.guide().low()) ? "" : m.unit().number(m.guide().low());
        String high =
                Double.isNaN(m.guide().high()) ? "" : m.unit().number(m.guide().high());
        return low + " .. " + high;
    }

    private static String phaseRow(Attempt a, int i, String name, double distance, double share, double shareSd) {
        return String.format(
                Locale.ROOT,
                "| %s | %.3f | %.3f | %.2f | %.1f +- %.1f | %.2f | %.1f | %s |",
                name,
                a.supportsS[i],
                a.flight(i).flightTimeS(),
                distance,
                share,
                2 * shareSd,
                a.flights[i][0],
                a.flight(i).takeoffAngleDeg(),
                i == 0 ? "" : String.format(Locale.ROOT, "%.2f", a.flights[i][0] - a.flights[i - 1][0]));
    }

    @ParameterizedTest
    @ValueSource(strings = {"W1", "W3", "W4"})
    void thePageShowsWhatTheRulesSayOfTheWorkedAttempts(String name) throws IOException {
        Attempt a = Attempt.of(name);
        String page = Files.readString(PAGE, StandardCharsets.UTF_8);
        List<String> wanted = new ArrayList<>(
                observations(a).stream().map(ReadingTheTablesTest::row).toList());
        PhaseDistances d = a.marks;
        double[] sds = d.shareSdsPct(a.placeSdsM[0], a.placeSdsM[1], a.placeSdsM[2], a.placeSdsM[3]);
        wanted.add(phaseRow(a, 0, "hop", d.hopM(), d.hopPct(), sds[0]));
        wanted.add(phaseRow(a, 1, "step", d.stepM(), d.stepPct(), sds[1]));
        wanted.add(phaseRow(a, 2, "jump", d.jumpM(), d.jumpPct(), sds[2]));
        double leadSd = d.leadSdPct(a.placeSdsM[0], a.placeSdsM[1], a.placeSdsM[2], a.placeSdsM[3]);
        wanted.add(String.format(
                Locale.ROOT,
                "| effective %.2f m | official %.2f m | toe to board %.2f m | lead %.2f +- %.2f points | %s |",
                d.effectiveM(),
                d.officialM(false),
                d.toeToBoardM(),
                d.effort().leadPct(),
                2 * leadSd,
                d.effort().kind().label()));
        List<String> missing =
                wanted.stream().filter(line -> !page.contains(line)).toList();
        assertEquals("", String.join("\n", missing), "lines that docs/reading-the-tables.md lacks");
        assertTrue(page.contains("Brackenfold Field & Track"));
    }
}
