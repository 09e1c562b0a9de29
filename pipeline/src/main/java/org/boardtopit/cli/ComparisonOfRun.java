package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.BiConsumer;
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
 * Makes comparisons of clips in one folder of results, as a run asks for them.
 *
 * @param out the folder, whose lock somebody up the line holds
 */
record ComparisonOfRun(Path out, TensorEngine engine) implements PairMaker {

    @Override
    public void make(String a, String b) throws ClipsNotComparedException, IOException {
        Two two = find(a, b);
        maker(two.first()).makeOfResults(two.first().kept(), two.second().kept(), two.wish());
    }

    /** True when it is there and still holds. */
    boolean isThere(String a, String b) throws ClipsNotComparedException {
        Two two = find(a, b);
        return ComparisonMaker.isThere(two.first().kept(), two.second().kept(), two.wish());
    }

    private record Two(MeasuredClip first, MeasuredClip second, Wish wish) {}

    private Two find(String a, String b) throws ClipsNotComparedException {
        try {
            MeasuredClip first = MeasuredClip.find(a, Optional.of(out), engine);
            MeasuredClip second = MeasuredClip.find(b, Optional.of(out), engine);
            MeetSheet meet = first.kept().meet();
            return new Two(first, second, new Wish(out, false, CompareCommand.SLOW, meet.language(), meet.tables()));
        } catch (InputException | NetworkUnfitException e) {
            // Read well when the run began: somebody has changed a file since.
            throw new ClipsNotComparedException(e.getMessage(), e);
        }
    }

    /**
     * Makes those that are not there, each in a process of its own where there are such.
     *
     * @param news is told of each that is made
     */
    static PairMaker whatIsMissing(Surroundings surroundings, Path out, BiConsumer<String, String> news) {
        ComparisonOfRun here = new ComparisonOfRun(out, surroundings.engine());
        PairMaker maker = surroundings.workers().isPresent() ? new ChildComparison(out) : here;
        return (a, b) -> {
            if (!here.isThere(a, b)) {
                news.accept(a, b);
                maker.make(a, b);
            }
        };
    }

    static ComparisonMaker maker(MeasuredClip clip) {
        int threads = Runtime.getRuntime().availableProcessors();
        return new ComparisonMaker(
                new FfmpegClipOpener(threads),
                () -> clip.networks().openDetector(NetworkStore.DEFAULT_DETECTOR),
                threads);
    }
}
