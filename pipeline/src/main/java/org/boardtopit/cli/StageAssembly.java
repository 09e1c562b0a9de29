package org.boardtopit.cli;

import java.util.function.Supplier;
import java.util.function.UnaryOperator;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.Look;
import org.boardtopit.run.ClipDigests;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.ClipProcessor;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.StageListener;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;

/** The composition root: opens and tests the networks, and puts the stages of a run together on them. */
final class StageAssembly implements MeasurerFactory {

    @Override
    public OpenMeasurer open(Setup setup) throws NetworkUnfitException {
        Parts parts = parts(setup);
        return new Assembled(parts.processor(setup.views(), UnaryOperator.identity()), parts);
    }

    /**
     * All stages of one clip that need no network, on what is kept in the output folder. Use each from one thread.
     *
     * @throws NetworkUnfitException when the card of the network cannot be read; no network is opened
     */
    static Supplier<ClipMeasurer> onKept(Setup setup, ClipDigests digests) throws NetworkUnfitException {
        int threads = setup.settings().threads();
        ClipProcessor.KeptTools tools = new ClipProcessor.KeptTools(
                new FfmpegClipOpener(threads),
                setup.networks().card(setup.settings().network()),
                Look.of(setup.settings().effort()),
                digests,
                threads,
                setup.rules(),
                setup.overlay());
        return () -> new ClipProcessor(setup.meet(), setup.views(), setup.out(), tools);
    }

    /** Opens and tests the networks. */
    static Parts parts(Setup setup) throws NetworkUnfitException {
        LandmarkPool landmarks = setup.networks()
                .openLandmarks(setup.settings().network(), setup.settings().threads());
        try {
            return new Parts(setup, landmarks, setup.networks().openDetector(NetworkStore.DEFAULT_DETECTOR));
        } catch (NetworkUnfitException | RuntimeException e) {
            landmarks.close();
            throw e;
        }
    }

    /** Open networks; whoever asked for them closes them. */
    record Parts(Setup setup, LandmarkPool landmarks, PersonDetector detector) implements AutoCloseable {

        /**
         * All stages of one clip.
         *
         * @param views which clips show the same attempt
         * @param watch puts something around the opener of clips
         */
        ClipProcessor processor(AttemptViews views, UnaryOperator<ClipOpener> watch) {
            int threads = setup.settings().threads();
            ClipProcessor.Tools tools = new ClipProcessor.Tools(
                    watch.apply(new FfmpegClipOpener(threads)),
                    detector,
                    landmarks,
                    Look.of(setup.settings().effort()),
                    threads,
                    setup.rules(),
                    setup.overlay());
            return new ClipProcessor(setup.meet(), views, setup.out(), tools);
        }

        @Override
        public void close() {
            detector.close();
            landmarks.close();
        }
    }

    private record Assembled(ClipProcessor clips, Parts parts) implements OpenMeasurer {
        @Override
        public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
            return clips.measure(clip, listener);
        }

        @Override
        public ClipLandmarks landmarks(Clip clip, StageListener listener) throws ClipNotMeasuredException {
            return clips.landmarks(clip, listener);
        }

        @Override
        public void close() {
            parts.close();
        }
    }
}
