package org.boardtopit.measures;

import java.util.Optional;
import org.boardtopit.ground.FoundCamera;

/** What the metres of an attempt rest on, and how sure they are. */
final class MetreScale {
    /** Marks give lengths to 0.2 % (13 m to a centimetre, clicks to 2 px: computed, docs/measures.md). */
    private static final double MARKS_SD = 0.002;
    /** A standing height gives lengths in a flat picture to 4 or 5 % (common practice, docs/measures.md). */
    private static final double STATURE_SD = 0.045;
    /**
     * Without marks perspective stays in the places: a camera that looks 5 degrees past square, or pans, moves shares by 2 to
     * 5 points (measured on our footage with the marks taken away), which is this standard deviation of a place.
     */
    private static final double FLAT_SD_STATURE = 0.15;

    private static final double TOE_TO_BOARD_SD_M = 0.06;

    private final ScaleSource source;
    private final boolean cameraFound;
    private final double statureM;
    private final CameraDoubt doubts;

    /**
     * Of an attempt.
     *
     * @param found the camera, when it was found from the run and not from marks
     * @param statureM standing height in the unit of the motion
     */
    MetreScale(ScaleSource source, Optional<FoundCamera> found, double statureM) {
        this.source = source;
        this.cameraFound = found.isPresent();
        this.statureM = statureM;
        this.doubts = new CameraDoubt(found, source == ScaleSource.OFFICIAL ? TOE_TO_BOARD_SD_M : Double.NaN);
    }

    ScaleSource source() {
        return source;
    }

    /** False when lengths are in a unit of their own. */
    boolean inMetres() {
        return source != ScaleSource.NONE;
    }

    /** True when marks tell places. */
    boolean isCalibrated() {
        return source == ScaleSource.MARKS;
    }

    /** Heights count from the ground when the camera is known, from marks or from the run. */
    boolean isGrounded() {
        return isCalibrated() || (inMetres() && cameraFound);
    }

    ClipFacts.View view() {
        if (isCalibrated()) {
            return ClipFacts.View.MARKS;
        }
        return cameraFound ? ClipFacts.View.RUN : ClipFacts.View.FLAT;
    }

    /** Standard deviation of a place along the runway of which one part is known. */
    double placeSd(double ownSdM) {
        return isCalibrated() || cameraFound ? ownSdM : Math.hypot(ownSdM, FLAT_SD_STATURE * statureM);
    }

    /** What an unknown camera leaves open of phases and shares. */
    CameraDoubt doubts() {
        return doubts;
    }

    /** Standard deviation of the scale over itself. */
    double relativeSd(Optional<PhaseDistances> distances) {
        if (isCalibrated()) {
            return MARKS_SD;
        }
        return cameraFound && distances.isPresent() ? doubts.scaleSd(distances.get()) : STATURE_SD;
    }
}
