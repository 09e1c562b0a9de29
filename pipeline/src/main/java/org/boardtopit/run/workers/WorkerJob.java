package org.boardtopit.run.workers;

import java.util.List;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;

/**
 * One clip for a worker.
 *
 * @param joined clips that show the same attempt
 * @param fingerprint of its result, as the supervisor has it: when the worker finds another, a file was changed on the way
 */
public record WorkerJob(Clip clip, List<Clip> joined, String fingerprint) {
    public WorkerJob {
        joined = List.copyOf(joined);
    }

    /** The clips that are joined to one, whichever its view. */
    public static List<Clip> joined(AttemptViews views, Clip clip) {
        return views.sideOf(clip).map(List::of).orElseGet(() -> views.joinedTo(clip));
    }
}
