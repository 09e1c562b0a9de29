package org.boardtopit.report.plot;

import java.util.Locale;

/**
 * A drawing that is written down as SVG 1.1 inside an HTML page. Colours and line widths are those of the classes in the page's style sheet.
 *
 * <p>Units are those of the drawing, x to the right and y down from its upper left corner; the page scales it as a whole.
 */
public final class Svg {
    private final StringBuilder body = new StringBuilder();
    private final int width;
    private final int height;
    private final String label;

    /**
     * Empty.
     *
     * @param label what somebody hears who does not see the drawing
     */
    public Svg(int width, int height, String label) {
        this.width = width;
        this.height = height;
        this.label = label;
    }

    /** Of no width or height where these are not positive. */
    public Svg rect(double x, double y, double w, double h, String style) {
        body.append("<rect x=\"").append(number(x)).append("\" y=\"").append(number(y));
        body.append("\" width=\"").append(number(Math.max(0, w)));
        body.append("\" height=\"").append(number(Math.max(0, h)));
        return end(style);
    }

    public Svg line(double x1, double y1, double x2, double y2, String style) {
        String path = "M" + number(x1) + " " + number(y1) + "L" + number(x2) + " " + number(y2);
        return path(path, style);
    }

    /** A level line from low to high with a short upright at each end. */
    public Svg interval(double low, double high, double y, double end, String style) {
        String upright = " " + number(y - end) + "V" + number(y + end);
        return path(
                "M" + number(low) + upright + "M" + number(low) + " " + number(y) + "H" + number(high) + "M"
                        + number(high) + upright,
                style);
    }

    /** An arc that rises from a base line: a parabola from (x1, y) over the middle to (x2, y). */
    public Svg arc(double x1, double x2, double y, double rise, String style) {
        // The control point of a quadratic curve lies twice as high as its vertex.
        String path = "M" + number(x1) + " " + number(y) + "Q" + number((x1 + x2) / 2) + " " + number(y - 2 * rise)
                + " " + number(x2) + " " + number(y);
        return path(path, style);
    }

    public Svg circle(double x, double y, double r, String style) {
        body.append("<circle cx=\"").append(number(x)).append("\" cy=\"").append(number(y));
        body.append("\" r=\"").append(number(r));
        return end(style);
    }

    /** A triangle that points to the right, centred on a point. */
    public Svg triangle(double x, double y, double r, String style) {
        String path = "M" + number(x - r) + " " + number(y - r) + "L" + number(x + r) + " " + number(y) + "L"
                + number(x - r) + " " + number(y + r) + "Z";
        return path(path, style);
    }

    /** Words on a base line; the style says on which side of x they stand. */
    public Svg text(double x, double y, String words, String style) {
        body.append("<text x=\"").append(number(x)).append("\" y=\"").append(number(y));
        body.append("\" class=\"").append(escaped(style)).append("\">");
        body.append(escaped(words)).append("</text>");
        return this;
    }

    private Svg path(String path, String style) {
        body.append("<path d=\"").append(path);
        return end(style);
    }

    private Svg end(String style) {
        body.append("\" class=\"").append(escaped(style)).append("\"/>");
        return this;
    }

    /** Safe to stand in HTML as it is. */
    public String markup() {
        return "<svg viewBox=\"0 0 " + width + " " + height + "\" role=\"img\" aria-label=\"" + escaped(label) + "\">"
                + body + "</svg>";
    }

    /** To a tenth, without what says nothing. */
    private static String number(double value) {
        String text = String.format(Locale.ROOT, "%.1f", value);
        String shorter = text.endsWith(".0") ? text.substring(0, text.length() - 2) : text;
        return shorter.equals("-0") ? "0" : shorter;
    }

    private static String escaped(String text) {
        return text.replace("&", "&amp;")
                .replace("<", "&lt;")
                .replace(">", "&gt;")
                .replace("\"", "&quot;")
                .replace("'", "&#39;");
    }
}
