package org.boardtopit.measures;

/** Level of an athlete, as far as it matters for what is plausible. */
public enum Level {
    /** Men of about 16.8 to 18 m. */
    ELITE_MAN,
    /** Women of about 14 to 15.2 m. */
    ELITE_WOMAN,
    /** Club athletes and juniors of about 10 to 14 m. */
    CLUB,
    /** Not told: anything that is plausible at one of the levels. */
    UNSTATED
}
