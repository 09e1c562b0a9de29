package org.boardtopit.run;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.frontal.ClocksNotAlignedException;
import org.boardtopit.frontal.FrontalAnalyser;
import org.boardtopit.frontal.FrontalAttempt;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.Reading;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.AttemptTables;
import org.boardtopit.report.ClipRecords;
import org.boardtopit.report.tables.ClipRecord;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.Outcome;

/**
 * A clip from in front or behind, measured together with the one from the side.
 *
 * @param attempt what it tells
 * @param warnings one sentence each, of this clip alone
 */
record FrontalClip(
        Clip clip,
        ClipLandmarks landmarks,
        Optional<RunwayCamera> camera,
        AttemptAnalysis side,
        FrontalAttempt attempt,
        List<String> warnings) {

    FrontalClip {
        warnings = List.copyOf(warnings);
    }

    /** Measures the clip from its landmarks. */
    static FrontalClip of(Clip clip, ClipLandmarks landmarks, AttemptAnalysis side) throws ClocksNotAlignedException {
        List<String> warnings = new ArrayList<>();
        Optional<RunwayCamera> camera = MarkedCamera.find(clip, landmarks.background(), warnings);
        FrontalAttempt attempt = new FrontalAnalyser().analyse(landmarks, clip.view(), camera, side.sideMotion());
        return new FrontalClip(clip, landmarks, camera, side, attempt, warnings);
    }

    /** The rows: contacts in this clip's own time, and one in clips.csv that says what it is joined to. */
    ClipResult result(MeetSheet meet, Clip sideClip, String network, int looksPerFrame) {
        AttemptMeasures measures = measures();
        AttemptTables tables = new AttemptTables(clip, meet, measures, landmarks::nearestFrame);
        double fps = 1 / landmarks.frameStepS();
        return new ClipResult(
                tables.attempt(landmarks.subject().direction() > 0, fps),
                List.of(),
                tables.contacts(),
                tables.intervals(),
                List.of(),
                row(sideClip, measures, network, fps),
                record(looksPerFrame),
                Optional.of(sideClip.fileName()));
    }

    /** The contacts with what this view shows; distances, speeds and phases are the side clip's to tell. */
    private AttemptMeasures measures() {
        AttemptMeasures told = side.measures();
        return new AttemptMeasures(
                Optional.empty(),
                Double.NaN,
                Reading.UNKNOWN,
                told.scaleSource(),
                Double.NaN,
                Double.NaN,
                told.quality(),
                warnings,
                attempt.ownContacts(),
                List.of(),
                Map.of());
    }

    private ClipRow row(Clip sideClip, AttemptMeasures measures, String network, double fps) {
        List<String> reasons = new ArrayList<>();
        reasons.add(String.format(
                Locale.ROOT,
                "joined to %s: an instant of that clip is %.3f s %s in this one (+- %.3f s)",
                sideClip.fileName(),
                Math.abs(attempt.clock().seconds()),
                attempt.clock().seconds() < 0 ? "earlier" : "later",
                2 * attempt.clock().sdS()));
        reasons.addAll(warnings);
        return new ClipRow(
                clip.fileName(),
                Outcome.MEASURED,
                "",
                String.join("; ", reasons),
                landmarks.frameCount(),
                fps,
                landmarks.timeS(landmarks.frameCount() - 1) + landmarks.frameStepS(),
                landmarks.video().widthPx(),
                landmarks.video().heightPx(),
                null,
                network,
                100 * landmarks.subject().seenShare(),
                100 * landmarks.background().registeredShare(),
                ClipProcessor.meanConfidence(measures));
    }

    private ClipRecord record(int looksPerFrame) {
        RunwayView view = camera.map(c -> RunwayView.calibrated(landmarks.background(), c))
                .orElseGet(() -> RunwayView.flat(landmarks.background(), 1, 1));
        return new ClipRecord(
                clip.fileName(),
                ClipRecords.registration(view),
                ClipRecords.scale(side.measures().scaleSource(), view, Optional.empty()),
                ClipRecords.measuring(looksPerFrame, side.fitted()));
    }
}
