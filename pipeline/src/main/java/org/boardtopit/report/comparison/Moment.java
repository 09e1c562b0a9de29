package org.boardtopit.report.comparison;

/**
 * One picture of a comparison: what is shown of the two attempts at once.
 *
 * @param aS time in the first clip, seconds from its first frame
 * @param bS time in the second
 */
public record Moment(double aS, double bS) {}
