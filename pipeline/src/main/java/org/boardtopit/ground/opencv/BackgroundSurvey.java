package org.boardtopit.ground.opencv;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.ground.BackgroundChain;
import org.boardtopit.ground.BackgroundChain.FrameTie;
import org.boardtopit.ground.PointPairs;
import org.boardtopit.ground.Survey;
import org.boardtopit.signal.Homography;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Size;

/**
 * The first look through a clip: follows the background from frame to frame and notes where things move against it.
 *
 * <p>Every frame is matched to a key frame; a new key frame is taken when less than half of the old one's corners are found.
 * With a reference picture, each key frame is matched to it directly, so that a long pan does not drift; a key frame that
 * does not match hangs on its neighbour. Without one, the middle key frame is the fixed picture. Memory: a handful of
 * pictures and a few hundred bytes a frame, whatever the length of the clip.
 */
public final class BackgroundSurvey {
    private static final int WORKING_WIDTH_PX = 600;
    private static final int SMALL_WIDTH_PX = 480;
    /** Below this share of corners found the next frame starts a new key frame (a first guess, not tuned). */
    private static final double NEW_KEY_SHARE = 0.5;

    /** Key frames are matched to the reference anew when the view has moved by this share of its width. */
    private static final double REFERENCE_STEP_SHARE = 0.35;

    /** A match by one edge of the view says little of the other. */
    private static final double LEAST_SPREAD_SHARE = 0.5;

    private static final int MAX_KEY_FRAMES = 200;

    static {
        // Clips are measured side by side; the library's own threads would wait for work in circles, at the others'
        // expense.
        opencv_core.setNumThreads(1);
    }

    private final Optional<ReferencePicture> reference;

    public BackgroundSurvey(Optional<ReferencePicture> reference) {
        this.reference = reference;
    }

    /** Reads the clip to its end. Does not close the reader. */
    public Survey survey(FrameReader reader) throws VideoException {
        try (Run run = new Run(reader.info())) {
            for (Optional<VideoFrame> frame = reader.next(); frame.isPresent(); frame = reader.next()) {
                run.add(frame.get());
            }
            return run.finish(reader);
        }
    }

    private final class Run implements AutoCloseable {
        private static final PointPairs NONE = new PointPairs(new float[0], new float[0]);

        private final VideoInfo info;
        private final double scale;
        private final List<Long> timestampsUs = new ArrayList<>();
        private final BackgroundChain chain;
        private final MovementDetector detector;
        private KeyFrame key;
        private Homography keyToLast = Homography.IDENTITY; // working pixels

        Run(VideoInfo info) {
            this.info = info;
            // Whole steps: a mean over squares of pixels is many times faster than one over parts of them.
            int step = Math.max(1, Math.max(info.widthPx(), info.heightPx()) / WORKING_WIDTH_PX);
            this.scale = 1.0 / step;
            this.chain = new BackgroundChain(info.widthPx(), info.heightPx());
            double small = Math.min(1, SMALL_WIDTH_PX / (double) info.widthPx());
            this.detector = new MovementDetector(
                    (int) Math.round(info.widthPx() * small),
                    (int) Math.round(info.heightPx() * small),
                    info.widthPx());
        }

        void add(VideoFrame frame) {
            try (FrameGrey full = FrameGrey.of(frame);
                    Mat grey = full.reduced((int) Math.round(1 / scale));
                    Mat small = new Mat();
                    Size smallSize = smallSize(frame)) {
                opencv_imgproc.resize(grey, small, smallSize, 0, 0, opencv_imgproc.INTER_AREA);
                timestampsUs.add(frame.timestampUs());
                register(grey, full);
                detector.add(frame.timestampUs(), small, chain.frameToFirst(chain.frameCount() - 1));
            }
        }

        private Size smallSize(VideoFrame frame) {
            double small = Math.min(1, SMALL_WIDTH_PX / (double) frame.widthPx());
            return new Size((int) Math.round(frame.widthPx() * small), (int) Math.round(frame.heightPx() * small));
        }

        private void register(Mat grey, FrameGrey full) {
            if (key == null) {
                chain.addFirstKey();
                newKey(grey, full);
                chain.addFrame(new FrameTie(0, Homography.IDENTITY, true, NONE, key.cornerCount(), 0));
                return;
            }
            Optional<KeyFrame.Match> match = key.match(grey, keyToLast);
            if (match.isEmpty()) {
                match = key.match(grey, Homography.IDENTITY);
            }
            if (match.isEmpty()) {
                match = key.matchFar(grey, keyToLast);
            }
            if (match.isEmpty()) {
                FrameTie last = chain.lastFrame();
                chain.addFrame(new FrameTie(last.key(), last.keyToFrame(), false, NONE, 0, Double.NaN));
                return;
            }
            follow(match.get(), grey, full);
        }

        private void follow(KeyFrame.Match found, Mat grey, FrameGrey full) {
            BackgroundChain.Match match = inFramePixels(found);
            boolean fresh = found.share() < NEW_KEY_SHARE && chain.keyCount() < MAX_KEY_FRAMES;
            if (fresh) {
                chain.addKey(match);
                newKey(grey, full);
            }
            keyToLast = fresh ? Homography.IDENTITY : found.toPicture();
            chain.addFrame(new FrameTie(
                    chain.keyCount() - 1,
                    fresh ? Homography.IDENTITY : match.map(),
                    true,
                    fresh ? NONE : match.pairs(),
                    found.inliers(),
                    match.residualPx()));
        }

        private BackgroundChain.Match inFramePixels(KeyFrame.Match found) {
            Homography unscale = new Homography(1 / scale, 0, 0, 0, 1 / scale, 0, 0, 0, 1);
            return new BackgroundChain.Match(
                    unscale.after(found.toPicture().after(unscale.inverse())),
                    found.agreeing().scaled(1 / scale, 1 / scale),
                    found.residualPx() / scale);
        }

        private void newKey(Mat grey, FrameGrey full) {
            if (key != null) {
                key.close();
            }
            key = new KeyFrame(grey);
            // Features are matched to the reference only where the view has moved on: it takes a third of a second.
            if (reference.isPresent() && chain.movedSinceReferencePx() > REFERENCE_STEP_SHARE * info.widthPx()) {
                ReferencePicture picture = reference.get();
                picture.locate(full.whole())
                        .ifPresent(fit -> chain.foundInReference(
                                new BackgroundChain.Match(fit.homography(), fit.agreeing(), fit.residualPx()),
                                fit.spreadXPx() > LEAST_SPREAD_SHARE * info.widthPx(),
                                picture.widthPx(),
                                picture.heightPx()));
            }
        }

        Survey finish(FrameReader reader) {
            return new Survey(info, timestampsUs, reader.undecodableFrames(), chain.finish(), detector.finish());
        }

        @Override
        public void close() {
            detector.close();
            if (key != null) {
                key.close();
            }
        }
    }
}
