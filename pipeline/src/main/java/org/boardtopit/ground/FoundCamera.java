package org.boardtopit.ground;

import java.util.List;
import org.boardtopit.signal.Point2;

/**
 * A camera that was found without marks, and how surely.
 *
 * @param camera along counts from an arbitrary place
 * @param doubts the camera moved by one standard deviation along each of the independent directions in which it may be wrong
 * @param misfit how far the traces lie from what this camera says of them: 1 is as expected, 2 twice that
 */
public record FoundCamera(RunwayCamera camera, List<RunwayCamera> doubts, double misfit) {

    public FoundCamera {
        doubts = List.copyOf(doubts);
        if (doubts.isEmpty()) {
            throw new IllegalArgumentException("a camera that was found without marks is not sure in every respect");
        }
    }

    /** All lengths times a factor, and along counted from another place. */
    public FoundCamera scaled(double factor, double alongM) {
        return new FoundCamera(
                camera.scaled(factor, alongM),
                doubts.stream().map(c -> c.scaled(factor, alongM)).toList(),
                misfit);
    }

    /**
     * Where each of the doubtful cameras puts what this one sees at some places on the ground: a row per doubt, along.
     * Differences between places count; all places of a row may be off alike.
     */
    public double[][] doubtfulAlongM(double... alongM) {
        double[][] rows = new double[doubts.size()][alongM.length];
        for (int i = 0; i < rows.length; i++) {
            for (int k = 0; k < alongM.length; k++) {
                Point2 px = camera.project(alongM[k], 0, 0);
                rows[i][k] = px.isKnown() ? doubts.get(i).onUpright(px, 0).x() : Double.NaN;
            }
        }
        return rows;
    }
}
