package org.boardtopit.ground;

import org.boardtopit.signal.Homography;

/**
 * Where a frame lies in the reference picture of its camera.
 *
 * @param toPicture pixels of the frame to pixels of the picture
 * @param points that were found in both and agree
 * @param residualPx median distance of these, in pixels of the picture
 */
public record Placement(Homography toPicture, int points, double residualPx) {}
