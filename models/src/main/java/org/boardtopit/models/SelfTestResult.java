package org.boardtopit.models;

/**
 * A passed self-test.
 *
 * @param network name of the network
 * @param references how many references it was compared with; 0 means that nothing could be compared
 * @param largestRelativeDifference largest difference of a number, as a share of its tensor's largest value
 * @param largestPointDifferencePx largest difference of a point, px of the input picture
 */
public record SelfTestResult(
        String network, int references, double largestRelativeDifference, double largestPointDifferencePx) {

    /** The larger differences of both. */
    SelfTestResult worse(SelfTestResult other) {
        return new SelfTestResult(
                network,
                references,
                Math.max(largestRelativeDifference, other.largestRelativeDifference),
                Math.max(largestPointDifferencePx, other.largestPointDifferencePx));
    }
}
