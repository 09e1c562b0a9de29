package org.boardtopit.report.plot;

import java.util.ArrayList;
import java.util.List;
import java.util.function.DoubleFunction;

/**
 * Numbers with their intervals under one another, in groups: as bars from nought, or as marks on a scale that begins where the
 * numbers do.
 */
public final class IntervalPlot {
    private static final int WIDTH = 340;
    private static final int LEFT = 40;
    private static final int RIGHT = 248;
    private static final int GROUP_PX = 22;
    private static final int ROW_PX = 18;
    private static final int AXIS_PX = 22;

    private final String label;
    private final List<Group> groups = new ArrayList<>();

    /** What a row shows. */
    public enum Shape {
        BAR,
        DOT,
        TRIANGLE
    }

    /**
     * One number.
     *
     * @param name at its left; empty for a second number under the same name
     * @param text at its right, the number in words
     * @param style class of the page's style sheet
     */
    public record Row(String name, double value, double low, double high, String text, Shape shape, String style) {}

    /** Rows under one title. */
    public record Group(String title, List<Row> rows) {
        public Group {
            rows = List.copyOf(rows);
        }
    }

    public IntervalPlot(String label) {
        this.label = label;
    }

    /** Adds a group under the others; one without rows is left out. */
    public IntervalPlot add(Group group) {
        if (!group.rows().isEmpty()) {
            groups.add(group);
        }
        return this;
    }

    public boolean isEmpty() {
        return groups.isEmpty();
    }

    /**
     * The drawing.
     *
     * @param tick writes a number of the axis, given with the decimals that it needs
     */
    public String markup(TickText tick) {
        int rows = groups.stream().mapToInt(group -> group.rows().size()).sum();
        int bottom = groups.size() * GROUP_PX + rows * ROW_PX;
        Svg svg = new Svg(WIDTH, bottom + AXIS_PX, label);
        Scale scale = scale();
        axis(svg, scale, bottom, value -> tick.of(value, scale.decimals()));
        double y = 0;
        for (Group group : groups) {
            svg.text(0, y + 15, group.title(), "pt");
            y += GROUP_PX;
            for (Row row : group.rows()) {
                draw(svg, scale, row, y + ROW_PX / 2.0);
                y += ROW_PX;
            }
        }
        return svg.markup();
    }

    /** Writes the number of a tick. */
    @FunctionalInterface
    public interface TickText {
        String of(double value, int decimals);
    }

    private Scale scale() {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.NEGATIVE_INFINITY;
        for (Group group : groups) {
            for (Row row : group.rows()) {
                boolean fromNought = row.shape() == Shape.BAR;
                low = Math.min(low, fromNought ? Math.min(0, row.low()) : row.low());
                high = Math.max(high, fromNought ? Math.max(0, row.high()) : row.high());
            }
        }
        double room = high > low ? 0.04 * (high - low) : 1;
        return new Scale(low == 0 ? 0 : low - room, high + room, LEFT, RIGHT);
    }

    private static void axis(Svg svg, Scale scale, int bottom, DoubleFunction<String> text) {
        for (double value : scale.ticks()) {
            double x = scale.at(value);
            svg.line(x, GROUP_PX - 4, x, bottom + 4, value == 0 ? "p0" : "pg");
            svg.text(x, bottom + 17, text.apply(value), "pa");
        }
    }

    private static void draw(Svg svg, Scale scale, Row row, double y) {
        svg.text(LEFT - 8, y + 4, row.name(), "pn");
        double x = scale.at(row.value());
        if (row.shape() == Shape.BAR) {
            double zero = scale.at(0);
            svg.rect(Math.min(zero, x), y - 6, Math.abs(x - zero), 12, row.style());
        }
        whisker(svg, scale.at(row.low()), scale.at(row.high()), y);
        if (row.shape() == Shape.DOT) {
            svg.circle(x, y, 4, row.style());
        } else if (row.shape() == Shape.TRIANGLE) {
            svg.triangle(x, y, 4, row.style());
        }
        svg.text(WIDTH, y + 4, row.text(), "pv");
    }

    /** With an edge of the background's colour, so that it is seen on a bar too. */
    private static void whisker(Svg svg, double low, double high, double y) {
        svg.interval(low, high, y, 3.5, "ph").interval(low, high, y, 3.5, "pw");
    }
}
