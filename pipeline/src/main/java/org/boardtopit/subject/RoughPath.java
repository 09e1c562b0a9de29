package org.boardtopit.subject;

/**
 * Where the runner's movement lies in each frame between a first and a last one: centre and height in pixels of the frame.
 */
final class RoughPath {
    private final int firstFrame;
    private final double[] xPx;
    private final double[] yPx;
    private final double heightPx;
    private final int direction;
    private final double score;

    RoughPath(int firstFrame, double[] xPx, double[] yPx, double heightPx, int direction, double score) {
        this.firstFrame = firstFrame;
        this.xPx = xPx;
        this.yPx = yPx;
        this.heightPx = heightPx;
        this.direction = direction;
        this.score = score;
    }

    int firstFrame() {
        return firstFrame;
    }

    int lastFrame() {
        return firstFrame + xPx.length - 1;
    }

    double xPx(int frame) {
        return xPx[frame - firstFrame];
    }

    double yPx(int frame) {
        return yPx[frame - firstFrame];
    }

    double heightPx() {
        return heightPx;
    }

    int direction() {
        return direction;
    }

    /** Distance that was run with movement in view, in picture widths. */
    double score() {
        return score;
    }
}
