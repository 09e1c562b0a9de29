package org.boardtopit.ground;

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
 * @param referencePoints points of the reference picture that were found in the clip and agree, in the view that has most;
 *     NaN when it was not matched
 */
public record RegistrationFacts(
        CameraModel model,
        double residualPx,
        double inliers,
        double driftPx,
        double focalPx,
        double logFocalSd,
        double referencePoints) {

    /** Of log focal length; the weak prior alone gives 0.47. */
    private static final double TELLING_SD = 0.05;

    /** On drawn panned clips the error was up to four times the sd that the noise of the matches implies. */
    private static final double HONEST_FACTOR = 4;

    private static final double LEAST_HONEST_SD = 0.003;

    /** Nothing is known beyond the maps themselves. */
    public static RegistrationFacts unknown(CameraModel model) {
        return new RegistrationFacts(model, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }

    /** True when the turns of the clip determine the focal length of the fixed picture. */
    public boolean tellsFocalLength() {
        return focalPx > 0 && logFocalSd < TELLING_SD;
    }

    /** Standard deviation of log focal length, widened to what was seen against the truth. */
    public double honestLogFocalSd() {
        return Math.max(LEAST_HONEST_SD, HONEST_FACTOR * logFocalSd);
    }
}
