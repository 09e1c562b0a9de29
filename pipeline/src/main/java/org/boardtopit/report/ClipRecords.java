package org.boardtopit.report;

import java.util.Locale;
import java.util.Optional;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.report.tables.ClipRecord;

/** Says what the numbers of a clip rest on. */
public final class ClipRecords {
    private ClipRecords() {}

    /** Of the view of a clip through which it was measured. */
    public static ClipRecord.Registration registration(RunwayView view) {
        BackgroundMotion background = view.background();
        RegistrationFacts facts = background.facts();
        return new ClipRecord.Registration(
                facts.model().name().toLowerCase(Locale.ROOT),
                background.referenceMatched(),
                facts.referencePoints(),
                facts.residualPx(),
                facts.inliers(),
                facts.driftPx(),
                facts.tellsFocalLength() ? facts.focalPx() : Double.NaN);
    }

    /**
     * Of the metres.
     *
     * @param found the camera, when it was found from the run
     */
    public static ClipRecord.Scale scale(ScaleSource source, RunwayView view, Optional<FoundCamera> found) {
        Optional<RunwayCamera> camera = view.camera();
        boolean metres = source != ScaleSource.NONE;
        String from = view.isCalibrated() ? "marks" : camera.isPresent() ? "run" : "flat";
        return new ClipRecord.Scale(
                source.label(),
                from,
                camera.map(RunwayCamera::focalPx).orElse(Double.NaN),
                camera.filter(c -> metres).map(RunwayCamera::heightM).orElse(Double.NaN),
                camera.filter(c -> metres).map(c -> Math.abs(c.acrossM())).orElse(Double.NaN),
                camera.map(RunwayCamera::residualPx).orElse(Double.NaN),
                found.map(FoundCamera::misfit).orElse(Double.NaN));
    }

    /** Of the fit and the network's looks. */
    public static ClipRecord.Measuring measuring(int looksPerFrame, FittedMotion fitted) {
        return new ClipRecord.Measuring(looksPerFrame, fitted.fittedFrames());
    }
}
