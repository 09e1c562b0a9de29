package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * How well the frames of a clip were put into the fixed picture.
 *
 * @param model what the camera did
 * @param residualPx median over the frames of the median distance of their background points, in pixels of the frame; NaN
 *     when none was followed
 * @param inliers median over the frames of the number of background points that agree
 * @param driftPx largest difference, over the places where the view was found in the reference picture itself, between that
 *     and the way there from the place before; pixels of the reference picture, NaN with fewer than two such places
 * @param focalPx focal length of the fixed picture, NaN when no model tells it
 * @param logFocalSd standard deviation of its logarithm, NaN as above
 */
public record RegistrationFacts(
        CameraModel model, double residualPx, double inliers, double driftPx, double focalPx, double logFocalSd) {

    /** More than this in the reference picture moves places by some centimetres; a first guess, not tuned. */
    private static final double MOST_DRIFT_PX = 3;

    private static final double MOST_RESIDUAL_PX = 1.5;
    private static final double FEWEST_INLIERS = 40;

    /** Of log focal length; the weak prior alone gives 0.47. */
    private static final double TELLING_SD = 0.05;

    /** On drawn panned clips the error was up to four times the sd that the noise of the matches implies. */
    private static final double HONEST_FACTOR = 4;

    private static final double LEAST_HONEST_SD = 0.003;

    /** Nothing is known beyond the maps themselves. */
    public static RegistrationFacts unknown(CameraModel model) {
        return new RegistrationFacts(model, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    /** True when the turns of the clip determine the focal length of the fixed picture. */
    public boolean tellsFocalLength() {
        return focalPx > 0 && logFocalSd < TELLING_SD;
    }

    /** Standard deviation of log focal length, widened to what was seen against the truth. */
    public double honestLogFocalSd() {
        return Math.max(LEAST_HONEST_SD, HONEST_FACTOR * logFocalSd);
    }

    /** What is bad enough to tell, each with what to do about it. */
    public List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        if (driftPx > MOST_DRIFT_PX) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "places along the pan disagree by %.1f px with the reference picture;"
                            + " take the picture from the tripod that films, and do not move it afterwards",
                    driftPx));
        }
        if (residualPx > MOST_RESIDUAL_PX) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "the background fits from frame to frame to %.1f px only; film from a tripod with a short shutter",
                    residualPx));
        }
        if (inliers < FEWEST_INLIERS) {
            remarks.add(String.format(
                    Locale.ROOT,
                    "only %.0f points of the background are recognised; let more of the fence or stand be in view",
                    inliers));
        }
        return remarks;
    }
}
