package org.boardtopit.clips;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.boardtopit.signal.Point2;

/**
 * The marks of one camera position, enough of them to turn pixels of its reference picture into metres.
 *
 * <p>A projective map of a plane needs four points no three of which are on one line. A set holds four such points
 * exactly when no line takes in all of them, or all but one; that is asked on the runway and in the picture.
 */
public record CameraMarks(List<Mark> marks) {
    public static final int FEWEST = 4;

    /** Half the width of the take-off board: marks nearer to one line than this do not say where across is. */
    private static final double LEAST_WIDTH_M = 0.10;

    /** Marks are clicked to about a pixel; a first guess, not tuned. */
    private static final double LEAST_WIDTH_PX = 2;

    public CameraMarks {
        marks = List.copyOf(marks);
        if (marks.size() < FEWEST) {
            throw new IllegalArgumentException("at least " + FEWEST + " marks are needed, there are " + marks.size());
        }
        refuseDuplicates(marks);
        if (!spansPlane(
                marks.stream().map(m -> new Point2(m.alongM(), m.acrossM())).toList(), LEAST_WIDTH_M)) {
            throw new IllegalArgumentException(
                    "all marks, or all but one, are on one line of the runway;" + " take marks on both sides of it");
        }
        if (!spansPlane(marks.stream().map(Mark::pixel).toList(), LEAST_WIDTH_PX)) {
            throw new IllegalArgumentException("all marks, or all but one, are on one line of the picture;"
                    + " film from higher up or further to the side, or check x_px and y_px");
        }
    }

    private static void refuseDuplicates(List<Mark> marks) {
        Set<String> names = new HashSet<>();
        for (Mark mark : marks) {
            if (!names.add(mark.name())) {
                throw new IllegalArgumentException("there are two marks named " + InputException.quoted(mark.name()));
            }
        }
    }

    private static boolean spansPlane(List<Point2> points, double leastWidth) {
        for (int left = 0; left < points.size(); left++) {
            List<Point2> others = new ArrayList<>(points);
            others.remove(left);
            if (halfWidth(others) < leastWidth / 2) {
                return false;
            }
        }
        return true;
    }

    /** Greatest distance of a point from the line that fits all of them best (least squares of the distances). */
    private static double halfWidth(List<Point2> points) {
        double meanX = points.stream().mapToDouble(Point2::x).average().orElseThrow();
        double meanY = points.stream().mapToDouble(Point2::y).average().orElseThrow();
        double sxx = 0;
        double sxy = 0;
        double syy = 0;
        for (Point2 p : points) {
            sxx += (p.x() - meanX) * (p.x() - meanX);
            sxy += (p.x() - meanX) * (p.y() - meanY);
            syy += (p.y() - meanY) * (p.y() - meanY);
        }
        double direction = 0.5 * Math.atan2(2 * sxy, sxx - syy);
        double normalX = -Math.sin(direction);
        double normalY = Math.cos(direction);
        return points.stream()
                .mapToDouble(p -> Math.abs((p.x() - meanX) * normalX + (p.y() - meanY) * normalY))
                .max()
                .orElseThrow();
    }
}
