package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.TensorEngine;
import org.boardtopit.run.ClipsNotComparedException;
import org.boardtopit.run.ComparisonMaker;
import org.boardtopit.run.ComparisonMaker.Wish;
import org.boardtopit.run.RunComparisons.PairMaker;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;

/**
 * Makes comparisons of clips in one folder of results, each unless it is there already.
 *
 * @param out the folder, whose lock somebody up the line holds
 */
record ComparisonOfRun(Path out, TensorEngine engine) implements PairMaker {

    @Override
    public void make(String a, String b) throws ClipsNotComparedException, IOException {
        try {
            MeasuredClip first = MeasuredClip.find(a, Optional.of(out), engine);
            MeasuredClip second = MeasuredClip.find(b, Optional.of(out), engine);
            MeetSheet meet = first.kept().meet();
            Wish wish = new Wish(out, false, CompareCommand.SLOW, meet.language(), meet.tables());
            maker(first).makeIfChanged(first.kept(), second.kept(), wish);
        } catch (InputException | NetworkUnfitException e) {
            // Read well when the run began: somebody has changed a file since.
            throw new ClipsNotComparedException(e.getMessage(), e);
        }
    }

    static ComparisonMaker maker(MeasuredClip clip) {
        int threads = Runtime.getRuntime().availableProcessors();
        return new ComparisonMaker(
                new FfmpegClipOpener(threads),
                () -> clip.networks().openDetector(NetworkStore.DEFAULT_DETECTOR),
                threads);
    }
}
