package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Random;
import org.boardtopit.clips.AttemptResult;
import org.boardtopit.clips.Correction;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.measures.EffortClass;
import org.boardtopit.measures.Quality;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.observations.AthleteLevel;
import org.boardtopit.observations.Confidence;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.page.PageRows.ClipFile;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.Direction;
import org.boardtopit.report.tables.InstantAngles;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.PhaseRow;

/** Rows of an invented competition, with numbers as a run gives them. Same seed, same rows. */
final class DrawnMeet {
    private static final PhaseName[] PHASES = {PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP};
    private static final ContactKind[] CONTACTS = {
        ContactKind.APPROACH, ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT
    };

    private static final Correction CORRECTION = new Correction(
            2,
            "hop_landing",
            Correction.Field.TOUCHDOWN_FRAME,
            "",
            "",
            131,
            Double.NaN,
            true,
            "131",
            "A. Keeper",
            "the shoe bears a frame earlier");

    private final Random random;
    private final List<ClipFile> files = new ArrayList<>();
    private final List<AttemptRow> attempts = new ArrayList<>();
    private final List<PhaseRow> phases = new ArrayList<>();
    private final List<ContactRow> contacts = new ArrayList<>();
    private final List<IntervalRow> intervals = new ArrayList<>();
    private final List<ObservationRow> observations = new ArrayList<>();
    private final List<ClipRow> clips = new ArrayList<>();

    DrawnMeet(long seed) {
        this.random = new Random(seed);
    }

    /** Athletes of six attempts each: fouls, a corrected touchdown in the third attempt, priorities in every second attempt. */
    static PageRows of(long seed, int athletes) {
        DrawnMeet meet = new DrawnMeet(seed);
        for (int i = 0; i < athletes; i++) {
            meet.series(Integer.toString(101 + i), "Runner " + (char) ('A' + i % 26));
        }
        return meet.withTroubles().rows();
    }

    DrawnMeet series(String bib, String athlete) {
        for (int number = 1; number <= 6; number++) {
            Double officialM = number % 4 == 0 ? null : 12 + 0.1 * number + random.nextInt(50) / 100.0;
            attempt(bib, athlete, number, officialM, number == 3);
        }
        return this;
    }

    /**
     * One attempt.
     *
     * @param officialM null for a foul
     * @param corrected a touchdown by hand
     */
    DrawnMeet attempt(String bib, String athlete, int number, Double officialM, boolean corrected) {
        String clip = clipName(bib, number) + ".mp4";
        files.add(new ClipFile(
                clip,
                clipName(bib, number),
                Optional.empty(),
                false,
                OptionalInt.empty(),
                corrected ? List.of(CORRECTION) : List.of()));
        double[] share = {36 + random.nextGaussian(), 29 + 0.5 * random.nextGaussian(), 0};
        share[2] = 100 - share[0] - share[1];
        attempts.add(attemptRow(clip, bib, athlete, number, officialM, share));
        double at = 1.5 + 0.01 * random.nextInt(5);
        for (int i = 0; i < CONTACTS.length; i++) {
            double touchdown = i == 0 ? at - 0.25 : at + (i - 1) * 0.62;
            contact(clip, i, touchdown, corrected && i == 2);
        }
        for (int i = 0; i < PHASES.length; i++) {
            phase(clip, PHASES[i], at + i * 0.62, share[i]);
        }
        interval(clip, "attempt", "", "approach_speed_ms", 9 + 0.2 * random.nextGaussian(), 0.06);
        interval(clip, "attempt", "", "last_stride_m", 2.1 + 0.05 * random.nextGaussian(), 0.06);
        observe(clip, number);
        clips.add(clip(clip, Outcome.MEASURED, ""));
        return this;
    }

    static String clipName(String bib, int number) {
        return bib + "-" + number;
    }

    /** One that could not be measured, one that is withheld, one that is no clip. */
    DrawnMeet withTroubles() {
        for (String name : List.of("dusk", "private")) {
            files.add(new ClipFile(name + ".mp4", name, Optional.empty(), false, OptionalInt.empty()));
        }
        clips.add(clip("dusk.mp4", Outcome.NOT_MEASURED, "nobody runs through the picture"));
        clips.add(clip("private.mp4", Outcome.WITHHELD, "the athlete did not agree"));
        clips.add(clip("notes.txt", Outcome.SKIPPED, "not a video by the ending of its name"));
        return this;
    }

    /** A clip from in front that shows an attempt of another clip. */
    DrawnMeet frontView(String name, String side) {
        files.add(new ClipFile(name + ".mp4", name, Optional.of(side), false, OptionalInt.empty()));
        clips.add(clip(name + ".mp4", Outcome.MEASURED, ""));
        return this;
    }

    /** The last attempt's file as that of an athlete born in a year, or in slow motion. */
    DrawnMeet lastFile(OptionalInt bornYear, boolean mayBeSlow) {
        ClipFile last = files.remove(files.size() - 1);
        files.add(new ClipFile(last.fileName(), last.name(), last.joinedTo(), mayBeSlow, bornYear));
        return this;
    }

    /** Another observation on an attempt. */
    DrawnMeet observe(String clip, Kind kind, String finding, String text, double severity, int rank) {
        observations.add(observation(clip, kind, "topic of " + finding, finding, text, severity, rank));
        return this;
    }

    PageRows rows() {
        return new PageRows(files, attempts, phases, contacts, intervals, observations, clips);
    }

    private AttemptRow attemptRow(
            String clip, String bib, String athlete, int number, Double officialM, double[] share) {
        double lead = Math.abs(share[0] - share[2]);
        EffortClass effort = lead < 2
                ? EffortClass.BALANCED
                : share[0] > share[2] ? EffortClass.HOP_DOMINATED : EffortClass.JUMP_DOMINATED;
        return new AttemptRow(
                clip,
                "Open Meeting",
                "Triple Jump",
                bib,
                athlete,
                number,
                officialM == null ? AttemptResult.FAILED : AttemptResult.VALID,
                officialM,
                0.1 * random.nextInt(20) - 0.5,
                Foot.LEFT,
                Direction.LEFT_TO_RIGHT,
                60.0,
                13.1,
                0.05,
                4.7,
                3.8,
                4.6,
                share[0],
                share[1],
                share[2],
                lead,
                0.6,
                effort,
                9.0,
                ScaleSource.MARKS,
                1.0,
                0.99,
                number == 5 ? Quality.USABLE : Quality.GOOD,
                number == 5 ? List.of("30 frames a second are few: film with 60 or more") : List.of(),
                Map.of());
    }

    private void contact(String clip, int number, double touchdownS, boolean corrected) {
        boolean pit = CONTACTS[number] == ContactKind.PIT;
        String part = Integer.toString(number);
        contacts.add(new ContactRow(
                clip,
                number,
                CONTACTS[number],
                pit ? Foot.BOTH : number == 3 ? Foot.RIGHT : Foot.LEFT,
                touchdownS,
                0.01,
                pit ? null : touchdownS + 0.13,
                pit ? null : 0.02,
                pit ? null : 0.13,
                pit ? null : 0.022,
                (int) Math.round(60 * touchdownS),
                pit ? null : (int) Math.round(60 * (touchdownS + 0.13)),
                4.7 * (number - 1),
                0.05,
                0.98,
                corrected,
                InstantAngles.NONE,
                InstantAngles.NONE,
                Map.of()));
        interval(clip, "contact", part, "knee_touchdown_deg", 155 + 4 * random.nextGaussian(), 8);
        interval(clip, "contact", part, "trunk_touchdown_deg", 8 + 4 * random.nextGaussian(), 6);
        interval(clip, "contact", part, "leg_plant_touchdown_deg", 68 + 2 * random.nextGaussian(), 3);
        if (!pit) {
            interval(clip, "contact", part, "support_time_s", 0.13 + 0.01 * random.nextGaussian(), 0.018);
            interval(clip, "contact", part, "knee_toe_off_deg", 160 + 4 * random.nextGaussian(), 9);
            interval(clip, "contact", part, "trunk_toe_off_deg", 9 + 4 * random.nextGaussian(), 4);
        }
    }

    private void phase(String clip, PhaseName name, double startS, double sharePct) {
        phases.add(new PhaseRow(
                clip,
                name,
                startS,
                startS + 0.62,
                0.13,
                0.49,
                4.4,
                0.06,
                sharePct,
                8.0,
                2.3,
                16.0,
                -0.8,
                1.0,
                1.3,
                130.0,
                80.0,
                50.0,
                2.0,
                ArmAction.SINGLE,
                Map.of()));
        String part = name.label();
        interval(clip, "phase", part, "distance_m", 13 * sharePct / 100, 0.06);
        interval(clip, "phase", part, "share_pct", sharePct, 0.35);
        interval(clip, "phase", part, "support_time_s", 0.13 + 0.01 * random.nextGaussian(), 0.018);
        interval(clip, "phase", part, "flight_time_s", 0.49 + 0.01 * random.nextGaussian(), 0.018);
        interval(clip, "phase", part, "vx_takeoff_ms", 8 + 0.2 * random.nextGaussian(), 0.05);
        interval(clip, "phase", part, "takeoff_angle_deg", 16 + random.nextGaussian(), 0.4);
        interval(clip, "phase", part, "speed_change_ms", -0.8 + 0.1 * random.nextGaussian(), 0.06);
    }

    private void interval(String clip, String of, String part, String measure, double value, double half) {
        intervals.add(new IntervalRow(clip, of, part, measure, value, value - half, value + half, ""));
    }

    private void observe(String clip, int number) {
        String text =
                "The trunk tipped forward. Measured 21.0 degrees (14.4 to 27.6 in 9 of 10 cases), guide 10.0 degrees or less.";
        if (number % 2 == 0) {
            observe(clip, Kind.PRIORITY, "trunk tips forward in the hop", text, 1 + 0.1 * number, 1);
        }
        observe(clip, Kind.STRENGTH, "full step", "The step had its full share of the distance.", 2, 2);
        observe(clip, Kind.REMARK, "single arms in the hop", "The action of the arms is described, not judged.", 0, 3);
        observe(clip, Kind.NOT_VISIBLE, "not visible", "Sideways roll is not visible from the side.", 0, 4);
    }

    private static ObservationRow observation(
            String clip, Kind kind, String topic, String finding, String text, double severity, int rank) {
        return new ObservationRow(
                clip,
                PhaseName.HOP,
                1.75,
                105,
                topic,
                finding,
                21.0,
                "deg",
                null,
                10.0,
                "common practice, no source",
                Confidence.MEDIUM,
                text,
                kind == Kind.PRIORITY ? "Short approach, tall over the board. Pain means stop." : "",
                1,
                kind,
                rank,
                "",
                AthleteLevel.SENIOR,
                "hop",
                "trunk_max_deg",
                14.4,
                27.6,
                severity,
                finding);
    }

    private static ClipRow clip(String name, Outcome outcome, String reason) {
        boolean measured = outcome == Outcome.MEASURED;
        return new ClipRow(
                name,
                outcome,
                measured ? "" : "subject",
                reason,
                measured ? 240 : null,
                measured ? 60.0 : null,
                measured ? 4.0 : null,
                measured ? 1280 : null,
                measured ? 720 : null,
                20.0,
                measured ? "full" : null,
                measured ? 99.0 : null,
                measured ? 100.0 : null,
                measured ? 0.99 : null);
    }
}
