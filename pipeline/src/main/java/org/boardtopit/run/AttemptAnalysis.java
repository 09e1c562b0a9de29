package org.boardtopit.run;

import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.motion.MotionTrack;

/** What the cheap half of the pipeline yields for one clip: where the camera looks, the repaired motion, the measures. */
public record AttemptAnalysis(RunwayView view, MotionTrack motion, FittedMotion fitted, AttemptMeasures measures) {}
