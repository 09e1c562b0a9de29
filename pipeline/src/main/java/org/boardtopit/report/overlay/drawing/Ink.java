package org.boardtopit.report.overlay.drawing;

/**
 * The colours, chosen by us and never the only carrier of a meaning: near and far side also differ in line style, touchdown
 * and toe-off in shape, phases by name. Near and far lie on either side of the blue-yellow axis, which the common forms
 * of colour blindness keep, and so do the two attempts of a comparison.
 */
enum Ink {
    NEAR(0xFFC23D),
    FAR(0x8FA8FF),
    ATTEMPT_A(0xFFB000),
    ATTEMPT_B(0x7CC4FF),
    BODY(0xF4F1E8),
    OUTLINE(0x15181E),
    PANEL(0x15181E),
    TEXT(0xF4F1E8),
    QUIET_TEXT(0xB9BDC6),
    ANGLE(0x7FF0D2),
    MARK(0xF4F1E8),
    PLAYHEAD(0xFFFFFF),
    WARNING(0xFFC23D),
    TRACK(0x3A404B),
    APPROACH(0x59616F),
    HOP(0x8A4F7D),
    STEP(0x23696F),
    JUMP(0x84591F),
    LANDING(0x59616F);

    private final int rgb;

    Ink(int rgb) {
        this.rgb = rgb;
    }

    /** Red, green, blue, one byte each. */
    int rgb() {
        return rgb;
    }
}
