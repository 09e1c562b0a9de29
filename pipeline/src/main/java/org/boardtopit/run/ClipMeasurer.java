package org.boardtopit.run;

import org.boardtopit.clips.Clip;

/** Measures one clip: the seam between the run over all clips and the work on one. */
@FunctionalInterface
public interface ClipMeasurer {
    /**
     * Measures the clip and writes its overlay video and stills.
     *
     * @throws ClipNotMeasuredException when this clip cannot be measured; anything else that is thrown is a bug
     */
    ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException;
}
