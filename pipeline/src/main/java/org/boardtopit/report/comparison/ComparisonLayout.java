package org.boardtopit.report.comparison;

import org.boardtopit.report.overlay.Box;
import org.boardtopit.signal.Homography;

/**
 * Where everything is in the pictures of a comparison: the athletes close by, side by side, and both
 * of them over each other between them; the whole runway with both below; a strip with
 * time and phases.
 *
 * @param toRunway from px of A's fixed picture to px of the whole picture
 */
public record ComparisonLayout(Box closeA, Box both, Box closeB, Box runway, Box strip, Homography toRunway) {
    static final int WIDTH_PX = 1280;
    static final int CLOSE_HEIGHT_PX = 400;
    private static final int STRIP_HEIGHT_PX = 60;
    private static final double LEAST_RUNWAY_PX = 170;
    private static final double MOST_RUNWAY_PX = 300;

    /** Below the runway, for the places of the contacts of both. */
    public static final double ROWS_PX = 52;

    /** Around the athletes, in shares of the height that they take. */
    private static final double MARGIN_SHARE = 0.12;

    /** For athletes who keep inside a box of A's fixed picture. */
    static ComparisonLayout around(Box athletes) {
        Box roomy = athletes.grown(MARGIN_SHARE * Math.max(1, athletes.height()));
        double wanted = WIDTH_PX * roomy.height() / roomy.width() + ROWS_PX;
        double height = even(Math.min(MOST_RUNWAY_PX, Math.max(LEAST_RUNWAY_PX, wanted)));
        Box runway = Box.at(0, CLOSE_HEIGHT_PX, WIDTH_PX, height);
        double scale = Math.min(runway.width() / roomy.width(), (height - ROWS_PX) / roomy.height());
        double middle = runway.top() + (height - ROWS_PX) / 2;
        Homography toRunway = new Homography(
                scale,
                0,
                runway.centreX() - scale * roomy.centreX(),
                0,
                scale,
                middle - scale * roomy.centreY(),
                0,
                0,
                1);
        double side = even(WIDTH_PX / 3.0);
        return new ComparisonLayout(
                Box.at(0, 0, side, CLOSE_HEIGHT_PX),
                new Box(side, 0, WIDTH_PX - side, CLOSE_HEIGHT_PX),
                Box.at(WIDTH_PX - side, 0, side, CLOSE_HEIGHT_PX),
                runway,
                Box.at(0, runway.bottom(), WIDTH_PX, STRIP_HEIGHT_PX),
                toRunway);
    }

    private static double even(double px) {
        return 2 * Math.ceil(px / 2);
    }

    public int widthPx() {
        return WIDTH_PX;
    }

    public int heightPx() {
        return (int) strip.bottom();
    }
}
