package org.boardtopit.report.plot;

import java.util.ArrayList;
import java.util.List;

/** How a number went from attempt to attempt: a point each, joined by a line; a cross below where there is none. */
public final class SeriesPlot {
    private static final int WIDTH = 260;
    private static final int HEIGHT = 84;
    private static final int SIDE = 20;
    private static final double HIGHEST_Y = 24;
    private static final double LOWEST_Y = 56;
    private static final int MOST_WITH_TEXT = 6;

    private final String label;
    private final List<Point> points = new ArrayList<>();

    /**
     * One attempt.
     *
     * @param name below
     * @param value NaN when there is none
     * @param text above; for an attempt without a number what is said instead
     * @param style class of the page's style sheet
     */
    public record Point(String name, double value, String text, String style) {}

    public SeriesPlot(String label) {
        this.label = label;
    }

    /** Adds an attempt to the right of the others. */
    public SeriesPlot add(Point point) {
        points.add(point);
        return this;
    }

    /** The drawing; needs at least two numbers. */
    public String markup() {
        Svg svg = new Svg(WIDTH, HEIGHT, label);
        Scale heights = heights();
        double stepX = (WIDTH - 2.0 * SIDE) / Math.max(1, points.size() - 1);
        line(svg, heights, stepX);
        for (int i = 0; i < points.size(); i++) {
            Point point = points.get(i);
            double x = SIDE + i * stepX;
            boolean known = !Double.isNaN(point.value());
            double y = known ? heights.at(point.value()) : LOWEST_Y;
            if (points.size() <= MOST_WITH_TEXT || point.style().equals("pb")) {
                svg.text(x, known ? y - 9 : LOWEST_Y + 12, point.text(), "pm");
            }
            svg.text(x, HEIGHT - 4, point.name(), "pa");
            if (known) {
                svg.circle(x, y, 4, point.style());
            }
        }
        return svg.markup();
    }

    private void line(Svg svg, Scale heights, double stepX) {
        int last = -1;
        for (int i = 0; i < points.size(); i++) {
            if (Double.isNaN(points.get(i).value())) {
                continue;
            }
            if (last >= 0) {
                svg.line(
                        SIDE + last * stepX,
                        heights.at(points.get(last).value()),
                        SIDE + i * stepX,
                        heights.at(points.get(i).value()),
                        "pl");
            }
            last = i;
        }
    }

    private Scale heights() {
        double low = points.stream()
                .mapToDouble(Point::value)
                .filter(value -> !Double.isNaN(value))
                .min()
                .orElseThrow();
        double high = points.stream()
                .mapToDouble(Point::value)
                .filter(value -> !Double.isNaN(value))
                .max()
                .orElseThrow();
        return high > low
                ? new Scale(low, high, LOWEST_Y, HIGHEST_Y)
                : new Scale(low - 1, low + 1, LOWEST_Y, HIGHEST_Y);
    }
}
