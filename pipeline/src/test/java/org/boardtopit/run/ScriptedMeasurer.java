package org.boardtopit.run;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.clips.Clip;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.observations.AthleteLevel;
import org.boardtopit.observations.Confidence;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.InstantAngles;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.report.tables.Outcome;
import org.boardtopit.report.tables.PhaseRow;

/** Measures nothing: does with each clip what the script says, and by default gives one row for every table. */
public final class ScriptedMeasurer implements ClipMeasurer {

    /** What happens with one clip. */
    public interface Act {
        ClipResult play(Clip clip, StageListener listener) throws ClipNotMeasuredException;
    }

    private final Map<String, Act> script = new HashMap<>();
    private final List<String> opened = new ArrayList<>();

    public ScriptedMeasurer on(String fileName, Act act) {
        script.put(fileName, act);
        return this;
    }

    /** File names of the clips it was given, in order. */
    public List<String> opened() {
        return opened;
    }

    @Override
    public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        opened.add(clip.fileName());
        return script.getOrDefault(clip.fileName(), ScriptedMeasurer::good).play(clip, listener);
    }

    public static ClipResult good(Clip clip, StageListener listener) {
        listener.at("survey", 0);
        listener.at("landmarks", 0.5);
        return result(clip, List.of());
    }

    public static ClipResult result(Clip clip, List<String> warnings) {
        String name = clip.fileName();
        return new ClipResult(
                attempt(name, warnings),
                List.of(phase(name)),
                List.of(contact(name, 0), contact(name, 1)),
                List.of(interval(name)),
                List.of(observation(name)),
                row(name),
                record(name));
    }

    private static ClipRecord record(String clip) {
        return new ClipRecord(
                clip,
                new ClipRecord.Registration("still", false, Double.NaN, 0.2, 150, Double.NaN, Double.NaN),
                new ClipRecord.Scale("none", "flat", Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN),
                new ClipRecord.Measuring(2, 180));
    }

    private static IntervalRow interval(String clip) {
        return new IntervalRow(clip, "contact", "0", "touchdown_s", 1.0, 0.99, 1.01, "");
    }

    private static ObservationRow observation(String clip) {
        return new ObservationRow(
                clip,
                PhaseName.STEP,
                1.2,
                72,
                "trunk",
                "trunk tips forward in the step",
                22.0,
                "deg",
                null,
                10.0,
                "common practice",
                Confidence.MEDIUM,
                "The trunk tipped forward.",
                "",
                1,
                Kind.PRIORITY,
                1,
                "",
                AthleteLevel.SENIOR,
                "step",
                "trunk_change_deg",
                18.0,
                26.0,
                1.3,
                "trunk tips forward in the step");
    }

    private static AttemptRow attempt(String clip, List<String> warnings) {
        return new AttemptRow(
                clip, null, null, null, null, null, null, null, null, null, null, null, null, null, null, null, null,
                null, null, null, null, null, null, null, null, null, null, null, warnings, Map.of());
    }

    private static PhaseRow phase(String clip) {
        return new PhaseRow(
                clip,
                PhaseName.HOP,
                1.0,
                1.5,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                Map.of());
    }

    private static ContactRow contact(String clip, int number) {
        InstantAngles unknown =
                new InstantAngles(null, null, null, null, null, null, null, null, null, null, null, null, null, null);
        return new ContactRow(
                clip,
                number,
                ContactKind.BOARD,
                Foot.LEFT,
                1.0,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                unknown,
                unknown,
                Map.of());
    }

    private static ClipRow row(String clip) {
        return new ClipRow(
                clip, Outcome.MEASURED, null, null, 210, 60.0, 3.5, 1280, 720, null, "full", null, null, null);
    }
}
