package org.boardtopit.accuracy;

/**
 * How often the legs carry each other's names.
 *
 * @param frames frames in which the legs are apart, so that it matters
 * @param exchanged of these, frames in which the exchanged legs fit the truth clearly better
 */
record LegExchanges(int frames, int exchanged) {
    static final LegExchanges NONE = new LegExchanges(0, 0);

    LegExchanges plus(LegExchanges other) {
        return new LegExchanges(frames + other.frames, exchanged + other.exchanged);
    }

    double sharePct() {
        return frames == 0 ? Double.NaN : 100.0 * exchanged / frames;
    }
}
