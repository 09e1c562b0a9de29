package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipPictures;
import org.boardtopit.run.StoredResult;
import org.boardtopit.run.StoredResults;
import org.boardtopit.run.workers.WorkerJob;

/** What earlier starts of a run have done that still holds. */
final class EarlierResults {
    private EarlierResults() {}

    /**
     * By the names of the clips.
     *
     * @param pictures true when a clip whose overlay or stills are missing is not done
     */
    static Map<String, StoredResult> of(ClipList list, ClipFingerprints fingerprints, Path out, boolean pictures) {
        StoredResults results = new StoredResults(out);
        AttemptViews views = list.views();
        Map<String, StoredResult> kept = new HashMap<>();
        for (Clip clip : list.clips()) {
            if (results.hasAny(clip)) {
                find(results, clip, views, fingerprints)
                        .filter(result -> !pictures || ClipPictures.arePresent(clip, result, out))
                        .ifPresent(result -> kept.put(clip.name(), result));
            }
        }
        return kept;
    }

    private static Optional<StoredResult> find(
            StoredResults results, Clip clip, AttemptViews views, ClipFingerprints fingerprints) {
        try {
            return results.find(clip, fingerprints.of(clip, WorkerJob.joined(views, clip)));
        } catch (IOException e) {
            return Optional.empty(); // whoever measures it will say what is wrong
        }
    }
}
