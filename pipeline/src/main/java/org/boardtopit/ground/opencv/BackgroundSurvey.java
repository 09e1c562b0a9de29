package org.boardtopit.ground.opencv;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.ground.Movement;
import org.boardtopit.ground.Survey;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.opencv.global.opencv_core;
import org.bytedeco.opencv.global.opencv_imgproc;
import org.bytedeco.opencv.opencv_core.Mat;
import org.bytedeco.opencv.opencv_core.Rect;
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

    private static final int MAX_KEY_FRAMES = 200;
    /** A camera on a tripod stands still when no corner of the picture wanders more than this share of its width. */
    private static final double STILL_SHARE = 0.0008;

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

    /** How a frame hangs on a key frame: working pixels of the key frame to those of the frame. */
    private record Tie(int key, Homography keyToFrame, boolean registered, int inliers, double residualPx) {}

    private final class Run implements AutoCloseable {
        private final VideoInfo info;
        private final double scale;
        private final int workWidth;
        private final int workHeight;
        private final List<Tie> ties = new ArrayList<>();
        private final List<Long> timestampsUs = new ArrayList<>();
        private final List<Homography> keyToFirst = new ArrayList<>();
        private final List<Optional<Homography>> keyToReference = new ArrayList<>();
        private final MovementDetector detector;
        private KeyFrame key;

        Run(VideoInfo info) {
            this.info = info;
            // Whole steps: a mean over squares of pixels is many times faster than one over parts of them.
            int step = Math.max(1, Math.max(info.widthPx(), info.heightPx()) / WORKING_WIDTH_PX);
            this.scale = 1.0 / step;
            this.workWidth = info.widthPx() / step;
            this.workHeight = info.heightPx() / step;
            double small = Math.min(1, SMALL_WIDTH_PX / (double) info.widthPx());
            this.detector = new MovementDetector(
                    (int) Math.round(info.widthPx() * small),
                    (int) Math.round(info.heightPx() * small),
                    info.widthPx());
        }

        void add(VideoFrame frame) {
            try (BytePointer pixels = new BytePointer(frame.bgr());
                    Mat bgr = new Mat(frame.heightPx(), frame.widthPx(), opencv_core.CV_8UC3, pixels);
                    Mat full = new Mat();
                    Mat grey = new Mat();
                    Mat small = new Mat();
                    Size workSize = new Size(workWidth, workHeight);
                    Size smallSize = smallSize(frame)) {
                opencv_imgproc.cvtColor(bgr, full, opencv_imgproc.COLOR_BGR2GRAY);
                int step = (int) Math.round(1 / scale);
                try (Rect whole = new Rect(0, 0, workWidth * step, workHeight * step);
                        Mat even = new Mat(full, whole)) {
                    opencv_imgproc.resize(even, grey, workSize, 0, 0, opencv_imgproc.INTER_AREA);
                }
                opencv_imgproc.resize(grey, small, smallSize, 0, 0, opencv_imgproc.INTER_AREA);
                timestampsUs.add(frame.timestampUs());
                register(grey, full);
                detector.add(frame.timestampUs(), small, frameToFirst(ties.size() - 1));
            }
        }

        private Size smallSize(VideoFrame frame) {
            double small = Math.min(1, SMALL_WIDTH_PX / (double) frame.widthPx());
            return new Size((int) Math.round(frame.widthPx() * small), (int) Math.round(frame.heightPx() * small));
        }

        private void register(Mat grey, Mat full) {
            if (key == null) {
                newKey(grey, full, Homography.IDENTITY);
                ties.add(new Tie(0, Homography.IDENTITY, true, key.cornerCount(), 0));
                return;
            }
            Tie last = ties.get(ties.size() - 1);
            Optional<KeyFrame.Match> match = key.match(grey, last.keyToFrame());
            if (match.isEmpty()) {
                match = key.match(grey, Homography.IDENTITY);
            }
            if (match.isEmpty()) {
                match = key.matchFar(grey, last.keyToFrame());
            }
            if (match.isEmpty()) {
                ties.add(new Tie(last.key(), last.keyToFrame(), false, 0, Double.NaN));
                return;
            }
            KeyFrame.Match m = match.get();
            Tie tie = new Tie(keyToFirst.size() - 1, m.toPicture(), true, m.inliers(), m.residualPx() / scale);
            ties.add(tie);
            if (m.share() < NEW_KEY_SHARE && keyToFirst.size() < MAX_KEY_FRAMES) {
                newKey(
                        grey,
                        full,
                        keyToFirst.get(tie.key()).after(tie.keyToFrame().inverse()));
                ties.set(
                        ties.size() - 1,
                        new Tie(keyToFirst.size() - 1, Homography.IDENTITY, true, m.inliers(), tie.residualPx()));
            }
        }

        private void newKey(Mat grey, Mat full, Homography toFirst) {
            if (key != null) {
                key.close();
            }
            key = new KeyFrame(grey);
            keyToFirst.add(toFirst);
            keyToReference.add(isFarFromLastMatch(toFirst) ? located(full) : Optional.empty());
        }

        private Optional<Homography> located(Mat full) {
            return reference
                    .flatMap(r -> r.locate(full))
                    .map(fit -> fit.homography().after(unscale())); // from working pixels
        }

        /** Features are matched to the reference only where the view has moved on: it takes a third of a second. */
        private boolean isFarFromLastMatch(Homography toFirst) {
            Point2 middle = new Point2(workWidth / 2.0, workHeight / 2.0);
            for (int k = keyToReference.size() - 1; k >= 0; k--) {
                if (keyToReference.get(k).isPresent()) {
                    Point2 there = keyToFirst.get(k).inverse().after(toFirst).apply(middle);
                    return there.distanceTo(middle) > REFERENCE_STEP_SHARE * workWidth;
                }
            }
            return true;
        }

        /** Frame pixels to working pixels of the first key frame, scaled back to frame pixels. */
        private Homography frameToFirst(int frame) {
            Tie tie = ties.get(frame);
            Homography work = keyToFirst.get(tie.key()).after(tie.keyToFrame().inverse());
            return unscale().after(work.after(unscale().inverse()));
        }

        private Homography unscale() {
            return new Homography(1 / scale, 0, 0, 0, 1 / scale, 0, 0, 0, 1);
        }

        Survey finish(FrameReader reader) {
            boolean still = isStill();
            boolean matched = keyToReference.stream().anyMatch(Optional::isPresent);
            List<Homography> keyToFixed = matched ? throughReference() : aroundMiddle();
            List<FrameRegistration> frames = new ArrayList<>(ties.size());
            for (Tie tie : ties) {
                Homography keyToFrame = still ? Homography.IDENTITY : tie.keyToFrame();
                Homography work = keyToFixed.get(still ? 0 : tie.key()).after(keyToFrame.inverse());
                frames.add(new FrameRegistration(
                        work.after(unscale().inverse()), tie.registered(), tie.inliers(), tie.residualPx()));
            }
            Movement movement = detector.finish();
            return new Survey(
                    info,
                    timestampsUs,
                    reader.undecodableFrames(),
                    new BackgroundMotion(frames, matched, !still),
                    movement);
        }

        /** No corner of the picture wanders: the tripod stood still, and what is left is noise of the matching. */
        private boolean isStill() {
            double limit = STILL_SHARE * info.widthPx();
            for (int i = 0; i < ties.size(); i++) {
                if (!ties.get(i).registered()) {
                    continue;
                }
                Homography h = frameToFirst(i);
                for (double x : new double[] {0.1, 0.9}) {
                    for (double y : new double[] {0.2, 0.8}) {
                        Point2 p = new Point2(x * info.widthPx(), y * info.heightPx());
                        if (h.apply(p).distanceTo(p) > limit) {
                            return false;
                        }
                    }
                }
            }
            return true;
        }

        private List<Homography> aroundMiddle() {
            Homography middle = keyToFirst.get(keyToFirst.size() / 2).inverse();
            return keyToFirst.stream()
                    .map(h -> unscale().after(middle.after(h)))
                    .toList();
        }

        /** Working pixels of each key frame to the reference picture; a key frame without a match follows the nearest. */
        private List<Homography> throughReference() {
            List<Homography> out = new ArrayList<>();
            for (int k = 0; k < keyToFirst.size(); k++) {
                int nearest = -1;
                for (int j = 0; j < keyToReference.size(); j++) {
                    boolean closer = nearest < 0 || Math.abs(j - k) < Math.abs(nearest - k);
                    nearest = keyToReference.get(j).isPresent() && closer ? j : nearest;
                }
                Homography chain = keyToFirst.get(nearest).inverse().after(keyToFirst.get(k));
                out.add(keyToReference.get(nearest).orElseThrow().after(chain));
            }
            return out;
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
