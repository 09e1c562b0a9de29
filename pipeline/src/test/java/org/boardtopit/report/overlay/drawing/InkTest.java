package org.boardtopit.report.overlay.drawing;

import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class InkTest {

    /**
     * Near and far, and the two attempts of a comparison, stay clearly apart in full colour blindness of each kind. Matrices for severity 1.0 from Machado,
     * Oliveira and Fernandes 2009 (MEM-H), on linear RGB; colour distance CIE 1976 L*a*b* (MEM-H), where about 2 is just
     * noticeable and 40 was our choice for thin lines.
     */
    @ParameterizedTest
    @CsvSource({
        "full colour, 1, 0, 0, 0, 1, 0, 0, 0, 1",
        "protanopia, 0.152286, 1.052583, -0.204868, 0.114503, 0.786281, 0.099216, -0.003882, -0.048116, 1.051998",
        "deuteranopia, 0.367322, 0.860646, -0.227968, 0.280085, 0.672501, 0.047413, -0.011820, 0.042940, 0.968881",
        "tritanopia, 1.255528, -0.076749, -0.178779, -0.078411, 0.930809, 0.147602, 0.004733, 0.691367, 0.303900"
    })
    void nearAndFarAreToldApartBy(
            String eyes, double a, double b, double c, double d, double e, double f, double g, double h, double i) {
        double[] eye = {a, b, c, d, e, f, g, h, i};
        double distance = distance(lab(seen(Ink.NEAR, eye)), lab(seen(Ink.FAR, eye)));
        assertTrue(distance > 40, eyes + ": " + distance);
        double attempts = distance(lab(seen(Ink.ATTEMPT_A, eye)), lab(seen(Ink.ATTEMPT_B, eye)));
        assertTrue(attempts > 40, eyes + ": " + attempts);
    }

    /** Contrast at least 4.5 : 1, the bar of WCAG 2.1 success criterion 1.4.3 (MEM-H). */
    @Test
    void textStandsOutFromItsOutlineAndFromThePhases() {
        for (Ink ground : new Ink[] {Ink.OUTLINE, Ink.APPROACH, Ink.HOP, Ink.STEP, Ink.JUMP, Ink.LANDING}) {
            assertTrue(contrast(Ink.TEXT, ground) >= 4.5, ground + ": " + contrast(Ink.TEXT, ground));
        }
        assertTrue(contrast(Ink.QUIET_TEXT, Ink.OUTLINE) >= 4.5);
        assertTrue(contrast(Ink.WARNING, Ink.OUTLINE) >= 4.5);
    }

    private static double contrast(Ink light, Ink dark) {
        return (luminance(linear(light)) + 0.05) / (luminance(linear(dark)) + 0.05);
    }

    private static double luminance(double[] rgb) {
        return 0.2126 * rgb[0] + 0.7152 * rgb[1] + 0.0722 * rgb[2];
    }

    private static double[] linear(Ink ink) {
        double[] rgb = new double[3];
        for (int k = 0; k < 3; k++) {
            double v = ((ink.rgb() >> (16 - 8 * k)) & 0xff) / 255.0;
            rgb[k] = v <= 0.04045 ? v / 12.92 : Math.pow((v + 0.055) / 1.055, 2.4);
        }
        return rgb;
    }

    private static double[] seen(Ink ink, double[] eye) {
        double[] rgb = linear(ink);
        double[] seen = new double[3];
        for (int k = 0; k < 3; k++) {
            double v = eye[3 * k] * rgb[0] + eye[3 * k + 1] * rgb[1] + eye[3 * k + 2] * rgb[2];
            seen[k] = Math.max(0, Math.min(1, v));
        }
        return seen;
    }

    private static double[] lab(double[] rgb) {
        double x = root((0.4124 * rgb[0] + 0.3576 * rgb[1] + 0.1805 * rgb[2]) / 0.9505);
        double y = root(luminance(rgb));
        double z = root((0.0193 * rgb[0] + 0.1192 * rgb[1] + 0.9505 * rgb[2]) / 1.089);
        return new double[] {116 * y - 16, 500 * (x - y), 200 * (y - z)};
    }

    private static double root(double t) {
        return t > 216.0 / 24389 ? Math.cbrt(t) : (24389.0 / 27 * t + 16) / 116;
    }

    private static double distance(double[] p, double[] q) {
        return Math.sqrt(Math.pow(p[0] - q[0], 2) + Math.pow(p[1] - q[1], 2) + Math.pow(p[2] - q[2], 2));
    }
}
