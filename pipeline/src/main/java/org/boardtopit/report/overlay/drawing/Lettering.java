package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_imgproc.FONT_HERSHEY_SIMPLEX;
import static org.bytedeco.opencv.global.opencv_imgproc.getTextSize;

import org.bytedeco.opencv.opencv_core.Size;

/** The measures of OpenCV's stroke letters (Hershey simplex), in px at scale 1. */
final class Lettering {
    static final char DEGREE = '\u00b0';
    static final char PLUS_MINUS = '\u00b1';
    /** Height of capitals and digits at scale 1 (OpenCV: "cap line" of the font). */
    static final double CAP_HEIGHT = 21;

    static final double DEGREE_RADIUS = 3.4;
    /** Umlauts, and the letters below their dots. */
    private static final String UMLAUTS = "\u00c4\u00d6\u00dc\u00e4\u00f6\u00fc";

    private static final String BELOW_DOTS = "AOUaou";
    /** Height of the dots' centres above the baseline, over the capitals and over the small letters. */
    static final double DOTS_ABOVE_CAPITAL = 26;

    static final double DOTS_ABOVE_SMALL = 20.5;
    private static final double DEGREE_ADVANCE = 13;
    private static final int FIRST = ' ';
    private static final int COUNT = 0x7f - FIRST;

    private final double[] advances = new double[COUNT];

    Lettering() {
        for (int i = 0; i < COUNT; i++) {
            String one = Character.toString(FIRST + i);
            advances[i] = (width(one + one) - width(one)) / 16.0;
        }
    }

    private static int width(String text) {
        // Whole pixels come back: measure large, so that rounding does not matter.
        try (Size size = getTextSize(text, FONT_HERSHEY_SIMPLEX, 16, 1, new int[1])) {
            return size.width();
        }
    }

    static boolean isUmlaut(char c) {
        return UMLAUTS.indexOf(c) >= 0;
    }

    /** The letter without its dots. */
    static char withoutDots(char c) {
        return isUmlaut(c) ? BELOW_DOTS.charAt(UMLAUTS.indexOf(c)) : c;
    }

    double scaleFor(double capPx) {
        return capPx / CAP_HEIGHT;
    }

    /** Width of part of a text at scale 1. */
    double advance(String text, int start, int end) {
        double sum = 0;
        for (int i = start; i < end; i++) {
            char c = withoutDots(text.charAt(i));
            sum += c == DEGREE ? DEGREE_ADVANCE : advanceOf(c == PLUS_MINUS ? '+' : c);
        }
        return sum;
    }

    private double advanceOf(char c) {
        return advances[Math.min(COUNT - 1, Math.max(0, c - FIRST))];
    }

    /** Width of a text whose capitals are capPx high, outline included. */
    double widthPx(String text, double capPx) {
        return advance(text, 0, text.length()) * scaleFor(capPx) + 2;
    }

    /** Height that a line of text takes, outline and descenders included. */
    double heightPx(double capPx) {
        return capPx * 1.5 + 2;
    }

    /** Where the base line lies below the top of that height. */
    double baselinePx(double capPx) {
        return capPx * 1.12 + 1;
    }
}
