package org.boardtopit.run;

import java.util.Optional;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;

/**
 * What the cheap half of the pipeline yields for one clip: where the camera looks, the motion (repaired and
 * fitted), the measures.
 *
 * @param found the camera of the view, when it was found from the run
 */
public record AttemptAnalysis(
        RunwayView view, Optional<FoundCamera> found, FittedMotion fitted, AttemptMeasures measures) {}
