package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * From matches between pictures to a map of every frame into the fixed picture.
 *
 * <p>Frames hang on key frames, each key frame on the one before it, and some key frames on the camera's reference picture.
 * Two models are tried. A camera on a tripod only turns and zooms: {@link TurningViews} finds one focal length and direction
 * for each key frame from all matches together, then for each frame from its own, four numbers instead of eight; beyond the
 * edge of the reference picture, where free maps drift, it goes on. Where that leaves the matches worse explained than free
 * maps do, the camera was carried, and each map stays free: a key frame follows the nearest one that was found in the
 * reference picture. Places are in pixels of whole frames throughout. Use from one thread.
 */
public final class BackgroundChain {
    /** A camera stands still when no corner of the picture wanders more than this share of its width: noise of a map. */
    private static final double STILL_SHARE = 0.00025;

    /** The same for free maps, which have more noise at the corners. */
    private static final double FREE_STILL_SHARE = 0.0008;

    /** A tie keeps the turning model when its points are no farther off than with a free map by this factor... */
    private static final double WORSE_FACTOR = 1.5;

    /** ... and this share of the width; both from panned, zoomed and carried drawn clips. */
    private static final double WORSE_SHARE = 0.0001;

    /** Of the ties between key frames so many must keep it; one may have caught a passing van. */
    private static final double LEAST_KEEPING_SHARE = 0.75;

    /** No match is better than this, whatever its own points say. */
    private static final double LEAST_SD_PX = 0.05;

    /** The median of the distance of two normal errors of sd 1 (Rayleigh: sqrt(2 ln 2)). */
    private static final double RAYLEIGH_MEDIAN = 1.1774;

    /** All points of so many frames are kept, more than a minute at 60 a second... */
    private static final int FRAMES_IN_FULL = 5000;

    /** ... and of each frame beyond so many, spread over them: of hours of recording memory would not hold all. */
    private static final int LATER_POINTS = 48;

    private final int widthPx;
    private final int heightPx;
    private final List<Key> keys = new ArrayList<>();
    private final List<FrameTie> frames = new ArrayList<>();
    private int referenceWidthPx;
    private int referenceHeightPx;

    /**
     * How a frame hangs on a key frame.
     *
     * @param key number of the key frame
     * @param keyToFrame free map between the two
     * @param registered false when the frame was not recognised; the map then repeats an earlier one
     * @param pairs points of the key frame in the frame that agree with it; none for the key frame itself
     * @param points background points that were recognised
     * @param residualPx median distance of them from the free map
     */
    public record FrameTie(
            int key, Homography keyToFrame, boolean registered, PointPairs pairs, int points, double residualPx) {

        FrameTie withPoints(int most) {
            return new FrameTie(key, keyToFrame, registered, pairs.thinned(most), points, residualPx);
        }
    }

    /** A match of two pictures: the free map from one to the other and the points that agree with it. */
    public record Match(Homography map, PointPairs pairs, double residualPx) {
        double sdPx() {
            return Math.max(LEAST_SD_PX, residualPx / RAYLEIGH_MEDIAN);
        }
    }

    private static final class Key {
        final Homography toFirst;
        final Optional<Match> fromBefore;
        Optional<Match> toReference = Optional.empty();
        boolean wide;

        Key(Homography toFirst, Optional<Match> fromBefore) {
            this.toFirst = toFirst;
            this.fromBefore = fromBefore;
        }
    }

    /** The maps that a model gives. */
    private interface Model {
        Homography keyToFixed(int key);

        /** To the first key frame, by the matches within the clip alone where the model can tell. */
        Homography keyToFirst(int key);

        Homography keyToFrame(FrameTie tie);
    }

    public BackgroundChain(int widthPx, int heightPx) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
    }

    /** The first key frame. */
    public void addFirstKey() {
        keys.add(new Key(Homography.IDENTITY, Optional.empty()));
    }

    /** A further key frame and its match with the one before it (from that one to this). */
    public void addKey(Match fromBefore) {
        Homography toFirst =
                keys.get(keys.size() - 1).toFirst.after(fromBefore.map().inverse());
        keys.add(new Key(toFirst, Optional.of(fromBefore)));
    }

    /**
     * The last key frame was found in the reference picture.
     *
     * @param wide true when the agreeing points span enough of the view to tell a free map of all of it
     */
    public void foundInReference(Match match, boolean wide, int pictureWidthPx, int pictureHeightPx) {
        Key key = keys.get(keys.size() - 1);
        key.toReference = Optional.of(match);
        key.wide = wide;
        referenceWidthPx = pictureWidthPx;
        referenceHeightPx = pictureHeightPx;
    }

    public void addFrame(FrameTie tie) {
        frames.add(frames.size() < FRAMES_IN_FULL ? tie : tie.withPoints(LATER_POINTS));
    }

    public int keyCount() {
        return keys.size();
    }

    public int frameCount() {
        return frames.size();
    }

    public FrameTie lastFrame() {
        return frames.get(frames.size() - 1);
    }

    /** How far the last key frame's view has moved since one was found in the reference picture; infinite when none was. */
    public double movedSinceReferencePx() {
        Point2 middle = new Point2(widthPx / 2.0, heightPx / 2.0);
        Homography toFirst = keys.get(keys.size() - 1).toFirst;
        for (int k = keys.size() - 1; k >= 0; k--) {
            if (keys.get(k).wide) {
                Point2 there = keys.get(k).toFirst.inverse().after(toFirst).apply(middle);
                return there.distanceTo(middle);
            }
        }
        return Double.POSITIVE_INFINITY;
    }

    /** Free map of a frame to the first key frame; good enough to see what moves against the background. */
    public Homography frameToFirst(int frame) {
        FrameTie tie = frames.get(frame);
        return keys.get(tie.key()).toFirst.after(tie.keyToFrame().inverse());
    }

    /** The maps of all frames. */
    public BackgroundMotion finish() {
        boolean matched = keys.stream().anyMatch(k -> k.wide);
        Optional<Turning> turning = turning(matched);
        Model model = turning.isPresent() ? turning.get() : free(matched);
        boolean still = isStill(model, turning.isPresent() ? STILL_SHARE : FREE_STILL_SHARE);
        List<FrameRegistration> out = new ArrayList<>(frames.size());
        for (FrameTie tie : frames) {
            Homography keyToFrame = still ? Homography.IDENTITY : model.keyToFrame(tie);
            int key = still ? 0 : tie.key();
            double residual =
                    tie.pairs().count() == 0 ? tie.residualPx() : tie.pairs().medianDistancePx(keyToFrame);
            out.add(new FrameRegistration(
                    model.keyToFixed(key).after(keyToFrame.inverse()), tie.registered(), tie.points(), residual));
        }
        CameraModel kind = still ? CameraModel.STILL : turning.isPresent() ? CameraModel.TURNING : CameraModel.FREE;
        return new BackgroundMotion(out, matched, facts(kind, out, drift(model), turning));
    }

    private RegistrationFacts facts(
            CameraModel kind, List<FrameRegistration> out, double drift, Optional<Turning> turning) {
        double[] residuals = out.stream()
                .filter(FrameRegistration::registered)
                .mapToDouble(FrameRegistration::residualPx)
                .toArray();
        double[] inliers = out.stream()
                .filter(FrameRegistration::registered)
                .mapToDouble(FrameRegistration::inliers)
                .toArray();
        return new RegistrationFacts(
                kind,
                residuals.length == 0 ? Double.NaN : OrderStatistics.median(residuals),
                inliers.length == 0 ? Double.NaN : OrderStatistics.median(inliers),
                drift,
                turning.map(t -> t.views.focalPx(t.fixed)).orElse(Double.NaN),
                turning.map(t -> t.views.logFocalSd(t.fixed)).orElse(Double.NaN),
                keys.stream()
                        .filter(key -> key.wide)
                        .mapToDouble(
                                key -> key.toReference.orElseThrow().pairs().count())
                        .max()
                        .orElse(Double.NaN));
    }

    private boolean isStill(Model model, double share) {
        for (FrameTie tie : frames) {
            if (tie.registered()) {
                Homography h =
                        model.keyToFirst(tie.key()).after(model.keyToFrame(tie).inverse());
                if (largestMove(h) > share * widthPx) {
                    return false;
                }
            }
        }
        return true;
    }

    private double largestMove(Homography h) {
        double largest = 0;
        for (double x : new double[] {0.1, 0.9}) {
            for (double y : new double[] {0.2, 0.8}) {
                Point2 p = new Point2(x * widthPx, y * heightPx);
                largest = Math.max(largest, h.apply(p).distanceTo(p));
            }
        }
        return largest;
    }

    /** From one key frame that was found in the reference picture to the next: the way between against the second match. */
    private double drift(Model model) {
        double largest = Double.NaN;
        int before = -1;
        for (int k = 0; k < keys.size(); k++) {
            if (keys.get(k).wide) {
                if (before >= 0) {
                    double here = drift(model, before, k);
                    largest = Double.isNaN(largest) ? here : Math.max(largest, here);
                }
                before = k;
            }
        }
        return largest;
    }

    private double drift(Model model, int before, int now) {
        Homography direct = keys.get(now).toReference.orElseThrow().map();
        Homography along = keys.get(before)
                .toReference
                .orElseThrow()
                .map()
                .after(model.keyToFirst(before).inverse().after(model.keyToFirst(now)));
        Point2 middle = new Point2(widthPx / 2.0, heightPx / 2.0);
        return along.apply(middle).distanceTo(direct.apply(middle));
    }

    private Model free(boolean matched) {
        List<Homography> toFixed = matched ? throughReference() : aroundMiddle();
        return new Model() {
            @Override
            public Homography keyToFixed(int key) {
                return toFixed.get(key);
            }

            @Override
            public Homography keyToFirst(int key) {
                return keys.get(key).toFirst;
            }

            @Override
            public Homography keyToFrame(FrameTie tie) {
                return tie.keyToFrame();
            }
        };
    }

    private List<Homography> aroundMiddle() {
        Homography middle = keys.get(keys.size() / 2).toFirst.inverse();
        return keys.stream().map(k -> middle.after(k.toFirst)).toList();
    }

    /** Each key frame to the reference picture; one that was not found there follows the nearest that was. */
    private List<Homography> throughReference() {
        List<Homography> out = new ArrayList<>();
        for (int k = 0; k < keys.size(); k++) {
            int nearest = -1;
            for (int j = 0; j < keys.size(); j++) {
                boolean closer = nearest < 0 || Math.abs(j - k) < Math.abs(nearest - k);
                nearest = keys.get(j).wide && closer ? j : nearest;
            }
            Homography chain = keys.get(nearest).toFirst.inverse().after(keys.get(k).toFirst);
            out.add(keys.get(nearest).toReference.orElseThrow().map().after(chain));
        }
        return out;
    }

    /** The turning model, when it explains the matches. */
    private Optional<Turning> turning(boolean matched) {
        Turning turning = new Turning(matched);
        return turning.holds() ? Optional.of(turning) : Optional.empty();
    }

    private final class Turning implements Model {
        final TurningViews views = new TurningViews();
        final int fixed;
        private final IdentityHashMap<FrameTie, Homography> frameMaps = new IdentityHashMap<>();
        private final List<Integer> keyTies = new ArrayList<>();
        private final List<Match> keyMatches = new ArrayList<>();
        private final List<Integer> referenceTies = new ArrayList<>();
        private final List<Match> referenceMatches = new ArrayList<>();

        Turning(boolean matched) {
            for (int k = 0; k < keys.size(); k++) {
                views.add(widthPx, heightPx);
            }
            fixed = matched ? views.add(referenceWidthPx, referenceHeightPx) : keys.size() / 2;
            for (int k = 0; k < keys.size(); k++) {
                int key = k;
                keys.get(k).fromBefore.ifPresent(m -> tie(key - 1, key, m, keyTies, keyMatches));
                if (matched) {
                    keys.get(k).toReference.ifPresent(m -> tie(key, fixed, m, referenceTies, referenceMatches));
                }
            }
            views.solve(fixed);
        }

        private void tie(int from, int to, Match match, List<Integer> numbers, List<Match> matches) {
            numbers.add(views.tie(from, to, match.pairs(), match.map(), match.sdPx()));
            matches.add(match);
        }

        boolean holds() {
            return keep(keyTies, keyMatches) && keep(referenceTies, referenceMatches) && keepFrames();
        }

        private boolean keep(List<Integer> ties, List<Match> matches) {
            int kept = 0;
            for (int i = 0; i < ties.size(); i++) {
                kept += isKept(views.residualPx(ties.get(i)), matches.get(i).residualPx()) ? 1 : 0;
            }
            return kept >= LEAST_KEEPING_SHARE * ties.size();
        }

        private boolean keepFrames() {
            int kept = 0;
            int all = 0;
            for (FrameTie tie : frames) {
                if (tie.pairs().count() > 0) {
                    all++;
                    kept += isKept(tie.pairs().medianDistancePx(keyToFrame(tie)), tie.residualPx()) ? 1 : 0;
                }
            }
            return kept >= LEAST_KEEPING_SHARE * all;
        }

        private boolean isKept(double turningPx, double freePx) {
            return turningPx <= WORSE_FACTOR * freePx + WORSE_SHARE * widthPx;
        }

        @Override
        public Homography keyToFixed(int key) {
            return views.map(key, fixed);
        }

        @Override
        public Homography keyToFirst(int key) {
            return views.map(key, 0);
        }

        @Override
        public Homography keyToFrame(FrameTie tie) {
            return frameMaps.computeIfAbsent(tie, this::fitted);
        }

        private Homography fitted(FrameTie tie) {
            if (tie.pairs().count() == 0) {
                return tie.keyToFrame();
            }
            TurningViews pair = new TurningViews();
            int key = pair.addKnown(widthPx, heightPx, views.focalPx(tie.key()));
            int frame = pair.add(widthPx, heightPx);
            double sd = Math.max(LEAST_SD_PX, tie.residualPx() / RAYLEIGH_MEDIAN);
            pair.tie(key, frame, tie.pairs(), tie.keyToFrame(), sd);
            pair.solveAround(key);
            return pair.map(key, frame);
        }
    }
}
