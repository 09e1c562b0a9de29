package org.boardtopit.body;

/** Which of the two published sets of segment parameters to use. */
public enum Sex {
    FEMALE,
    MALE,
    /** Not known, or not told: the mean of both sets is used. */
    UNSTATED
}
