package org.boardtopit.cli;

import org.boardtopit.clips.Clip;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.Look;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.ClipProcessor;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.StageListener;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;

/** The composition root: opens and tests the networks, and puts the stages of a run together on them. */
final class StageAssembly implements MeasurerFactory {

    @Override
    public OpenMeasurer open(Setup setup) throws NetworkUnfitException {
        RunSettings settings = setup.settings();
        LandmarkPool landmarks = setup.networks().openLandmarks(settings.network(), settings.threads());
        try {
            PersonDetector detector = setup.networks().openDetector(NetworkStore.DEFAULT_DETECTOR);
            return new Assembled(processor(setup, landmarks, detector), landmarks, detector);
        } catch (NetworkUnfitException | RuntimeException e) {
            landmarks.close();
            throw e;
        }
    }

    private static ClipProcessor processor(Setup setup, LandmarkPool landmarks, PersonDetector detector) {
        int threads = setup.settings().threads();
        ClipProcessor.Tools tools = new ClipProcessor.Tools(
                new FfmpegClipOpener(threads),
                detector,
                landmarks,
                Look.of(setup.settings().effort()),
                threads,
                setup.rules(),
                setup.overlay());
        return new ClipProcessor(setup.meet(), setup.views(), setup.out(), tools);
    }

    private record Assembled(ClipProcessor clips, LandmarkPool landmarks, PersonDetector detector)
            implements OpenMeasurer {
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
            detector.close();
            landmarks.close();
        }
    }
}
