package org.boardtopit.measures;

/**
 * What was measured of a clip that tells how far its numbers can be trusted; NaN where it could not be measured.
 *
 * @param athletePx standing height of the athlete in pixels of the frame, median over the clip
 * @param framesPerS frames of capture a second
 * @param registeredShare share of the frames whose background was recognised, 0 to 1
 * @param registrationResidualPx median distance of the background points that agree, in pixels of the frame
 * @param backgroundPoints median number of these points
 * @param referencePoints points of the camera's reference picture that were found in the clip; NaN without one
 * @param driftPx largest disagreement with the reference picture along the pan, in its pixels
 * @param landmarkSdStature standard deviation of a leg point per axis over standing height, median over the clip
 * @param fastFootRatio that standard deviation of feet that swing faster than 10 m/s over that of feet slower than 2 m/s:
 *     motion blur makes it large
 * @param doubtfulShare share of the leg points that were dropped or taken from the network's second choice, 0 to 1
 * @param legsExchangedShare share of the frames in which the network had the legs' sides wrong, 0 to 1
 * @param complete true when board, both landings and the pit were found
 * @param sequenceConfidence how surely the contacts are those of the jump, 0 to 1
 * @param looselyTimed how many contacts of the jump have a touchdown or a toe-off whose standard deviation is above
 *     {@value #LOOSE_S} s
 * @param inOrder false when the places of the contacts do not follow one another along the runway
 * @param view what the places rest on
 * @param closureRatio official over measured distance
 * @param gravityRatio fall in flight over gravity
 */
public record ClipFacts(
        double athletePx,
        double framesPerS,
        double registeredShare,
        double registrationResidualPx,
        double backgroundPoints,
        double referencePoints,
        double driftPx,
        double landmarkSdStature,
        double fastFootRatio,
        double doubtfulShare,
        double legsExchangedShare,
        boolean complete,
        double sequenceConfidence,
        int looselyTimed,
        boolean inOrder,
        View view,
        double closureRatio,
        double gravityRatio) {

    /**
     * Two of these are 25 ms, one and a half frames at 60 a second. Measured: at most 24 ms on our six clips, 33 to 100 ms on
     * degraded ones where the model of a support failed.
     */
    static final double LOOSE_S = 0.0125;

    /** How the picture became metres. */
    public enum View {
        /** Through a camera found from marks. */
        MARKS,
        /** Through a camera found from the run. */
        RUN,
        /** The picture itself was taken for the plane of the run. */
        FLAT
    }
}
