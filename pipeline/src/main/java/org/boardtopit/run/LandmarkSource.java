package org.boardtopit.run;

import org.boardtopit.clips.Clip;
import org.boardtopit.pose.ClipLandmarks;

/** Gives the expensive half of a clip's work: for those who go on from the landmarks by themselves. */
@FunctionalInterface
public interface LandmarkSource {
    /**
     * The landmarks kept from an earlier run when they were made from the same things, else new ones, which are kept.
     *
     * @throws ClipNotMeasuredException when there are none to be had of this clip
     */
    ClipLandmarks landmarks(Clip clip, StageListener listener) throws ClipNotMeasuredException;
}
