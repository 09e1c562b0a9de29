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
 */
public record RegistrationFacts(
        CameraModel model, double residualPx, double inliers, double driftPx, double focalPx, double logFocalSd) {

    /** Nothing is known beyond the maps themselves. */
    public static RegistrationFacts unknown(CameraModel model) {
        return new RegistrationFacts(model, Double.NaN, Double.NaN, Double.NaN, Double.NaN, Double.NaN);
    }
}
