package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.Survey;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.LandmarkReading;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.signal.LocalRegression;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/**
 * Follows the athlete: the path of the running movement says where to look, the person detector says who, the landmark
 * network where the hips are and how tall the athlete is; all is smoothed forwards and backwards in time, so that the network
 * sees the athlete steadily in the main pass.
 *
 * <p>Looks about {@value #LOOKS_PER_S} times a second. Once three looks have found the athlete, the next place is predicted
 * from them and the landmark network looks there first: a runner's prediction leads past officials and bystanders, among whom
 * a detector would have to choose. Where that fails, the detector looks around the path. Places are smoothed in the fixed
 * picture, where a jumper's path is smooth even when the camera is jerked.
 */
public final class AthleteTracker {
    private static final double LOOKS_PER_S = 15;
    /** Side of the crop for the detector, in heights of the movement; wide enough for a path that is half a body off. */
    private static final double LOOK_HEIGHTS = 2.6;

    private static final double LEAST_SCORE = 0.5;
    /** A run of less than this share of the picture width is no attempt. */
    private static final double LEAST_RUN_WIDTHS = 0.25;

    private static final double LEAST_FOUND_SHARE = 0.3;
    /** The landmark networks were tuned for squares of 1.25 to 1.4 standing heights (measured: errors rise beyond 1.6). */
    private static final double SQUARE_STATURES = 1.3;
    /** The detector's circle around the body is about this many standing heights wide (measured: 1.0 to 1.1). */
    private static final double CIRCLE_STATURES = 1.05;
    /** Trunk, thigh and shank together, in standing heights (Winter after Drillis and Contini, from memory). */
    private static final double CHAIN_STATURES = 0.779;
    /** The network is at a loss when the middle one of its leg points is less sure than this share of the square. */
    private static final double LARGEST_SD_SHARE = 0.04;
    /** Hips further than this from where they were predicted belong to somebody else. */
    private static final double LARGEST_MISS_SHARE = 0.3;

    private final PersonDetector detector;
    private final LandmarkNetwork network;

    /** With a detector and a network of which nobody else makes use meanwhile. */
    public AthleteTracker(PersonDetector detector, LandmarkNetwork network) {
        this.detector = detector;
        this.network = network;
    }

    /**
     * Reads the clip a second time and follows the athlete through it.
     *
     * @throws NoAthleteException when nothing runs, or what runs is no person
     */
    public SubjectTrack track(Survey survey, FrameReader reader) throws VideoException, NoAthleteException {
        RoughPath path = new RunnerSearch(survey)
                .find()
                .filter(p -> p.score() >= LEAST_RUN_WIDTHS)
                .orElseThrow(() -> new NoAthleteException(
                        "nobody runs through the picture; the camera should look from the side of the runway"));
        List<Look> looks = look(survey, reader, path);
        long found = looks.stream().filter(l -> l.person().isPresent()).count();
        if (found < Math.max(4, LEAST_FOUND_SHARE * looks.size())) {
            throw new NoAthleteException(String.format(
                    Locale.ROOT, "what runs is not a person: seen in %d of %d pictures", found, looks.size()));
        }
        return smoothed(survey, path, looks);
    }

    /** One look; the person's hips in pixels of the frame, and the standing height as the side. */
    private record Look(int frame, Optional<Square> person) {}

    private List<Look> look(Survey survey, FrameReader reader, RoughPath path) throws VideoException {
        List<Look> looks = new ArrayList<>();
        Looker looker = new Looker(survey, path);
        long nextUs = 0;
        for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
            VideoFrame frame = next.get();
            int i = frame.index();
            if (i > path.lastFrame()) {
                break;
            }
            if (i < path.firstFrame() || frame.timestampUs() < nextUs) {
                continue;
            }
            nextUs = frame.timestampUs() + Math.round(1e6 / LOOKS_PER_S) - 1000;
            looks.add(new Look(i, looker.person(frame)));
        }
        return looks;
    }

    /** Looks at one frame after the other and remembers where the athlete was last. */
    private final class Looker {
        private final Survey survey;
        private final RoughPath path;
        private final SquareCrop detectorCrop = new SquareCrop(detector.inputSizePx());
        private final ByteBuffer detectorRgb = detectorCrop.newBuffer();
        private final SquareCrop networkCrop = new SquareCrop(network.inputSizePx());
        private final ByteBuffer networkRgb = networkCrop.newBuffer();
        private final List<Seen> last = new ArrayList<>();

        private record Seen(double timeS, Point2 fixed, double staturePx) {}

        Looker(Survey survey, RoughPath path) {
            this.survey = survey;
            this.path = path;
        }

        Optional<Square> person(VideoFrame frame) {
            Optional<Square> found = predicted(frame).flatMap(square -> read(frame, square));
            if (found.isEmpty()) {
                found = detected(frame).map(square -> read(frame, square).orElse(square));
            }
            found.ifPresent(square -> remember(frame, square));
            return found;
        }

        private void remember(VideoFrame frame, Square square) {
            Point2 hips = new Point2(square.centreXPx(), square.centreYPx());
            last.add(new Seen(
                    frame.timestampUs() / 1e6, survey.background().toFixed(frame.index(), hips), square.sidePx()));
            if (last.size() > 3) {
                last.remove(0);
            }
        }

        /** Straight on in the fixed picture from the last three looks, if these are fresh. */
        private Optional<Square> predicted(VideoFrame frame) {
            double now = frame.timestampUs() / 1e6;
            if (last.size() < 3 || now - last.get(2).timeS() > 2.5 / LOOKS_PER_S) {
                return Optional.empty();
            }
            Seen a = last.get(0);
            Seen c = last.get(2);
            double ahead = (now - c.timeS()) / (c.timeS() - a.timeS());
            Point2 fixed = c.fixed().plus(c.fixed().minus(a.fixed()).times(ahead));
            Point2 px = survey.background().fromFixed(frame.index()).apply(fixed);
            return px.isKnown() ? Optional.of(new Square(px.x(), px.y(), c.staturePx())) : Optional.empty();
        }

        /** What the landmark network says of the person at a place; empty when it is not sure of one. */
        private Optional<Square> read(VideoFrame frame, Square at) {
            double side = SQUARE_STATURES * at.sidePx();
            networkCrop.cut(frame, at.centreXPx(), at.centreYPx(), side, networkRgb);
            LandmarkReading reading = network.read(networkRgb);
            double scale = side / network.inputSizePx();
            Point2 hips = middle(reading, BodyPoint.LEFT_HIP).times(scale);
            double chain = (chain(reading, true) + chain(reading, false)) / 2 * scale;
            boolean sure = medianLegSd(reading) < LARGEST_SD_SHARE * network.inputSizePx();
            Point2 miss = hips.minus(new Point2(side / 2, side / 2));
            if (!sure || miss.length() > LARGEST_MISS_SHARE * side || !(chain > 0)) {
                return Optional.empty();
            }
            return Optional.of(
                    new Square(at.centreXPx() + miss.x(), at.centreYPx() + miss.y(), chain / CHAIN_STATURES));
        }

        private Optional<Square> detected(VideoFrame frame) {
            double x = path.xPx(frame.index());
            double y = path.yPx(frame.index());
            double side = LOOK_HEIGHTS * path.heightPx();
            detectorCrop.cut(frame, x, y, side, detectorRgb);
            double scale = side / detector.inputSizePx();
            Optional<Square> best = Optional.empty();
            double bestDistance = 0.7 * path.heightPx();
            for (DetectedPerson p : detector.find(detectorRgb)) {
                double px = x - side / 2 + p.hipXPx() * scale;
                double py = y - side / 2 + p.hipYPx() * scale;
                double distance = Math.hypot(px - x, py - y);
                if (p.score() >= LEAST_SCORE && p.sizePx() > 0 && distance < bestDistance) {
                    bestDistance = distance;
                    best = Optional.of(new Square(px, py, p.sizePx() * scale / CIRCLE_STATURES));
                }
            }
            return best;
        }
    }

    private static Point2 place(LandmarkReading reading, BodyPoint point) {
        return new Point2(reading.xPx(point, 0), reading.yPx(point, 0));
    }

    private static Point2 middle(LandmarkReading reading, BodyPoint left) {
        return place(reading, left).plus(place(reading, left.otherSide())).times(0.5);
    }

    /** Length of shoulder, hip, knee, ankle of one side. */
    private static double chain(LandmarkReading reading, boolean left) {
        BodyPoint[] points = {BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE, BodyPoint.LEFT_ANKLE};
        double length = 0;
        for (int i = 1; i < points.length; i++) {
            BodyPoint a = left ? points[i - 1] : points[i - 1].otherSide();
            BodyPoint b = left ? points[i] : points[i].otherSide();
            length += place(reading, a).distanceTo(place(reading, b));
        }
        return length;
    }

    private static double medianLegSd(LandmarkReading reading) {
        double[] sds = new double[BodyPoint.COUNT - BodyPoint.LEFT_HIP.index()];
        for (int i = 0; i < sds.length; i++) {
            sds[i] = reading.sdPx(BodyPoint.at(BodyPoint.LEFT_HIP.index() + i), 0);
        }
        return OrderStatistics.median(sds);
    }

    private static SubjectTrack smoothed(Survey survey, RoughPath path, List<Look> looks) {
        BackgroundMotion background = survey.background();
        int n = looks.size();
        double[] t = new double[n];
        double[] x = new double[n];
        double[] y = new double[n];
        double[] size = new double[n];
        for (int i = 0; i < n; i++) {
            Look look = looks.get(i);
            t[i] = survey.timestampsUs().get(look.frame()) / 1e6;
            Point2 fixed = look.person()
                    .map(p -> background.toFixed(look.frame(), new Point2(p.centreXPx(), p.centreYPx())))
                    .orElse(Point2.UNKNOWN);
            x[i] = fixed.x();
            y[i] = fixed.y();
            size[i] = look.person().map(Square::sidePx).orElse(Double.NaN);
        }
        LocalRegression smoothX = new LocalRegression(t, x, 0.25, 2);
        LocalRegression smoothY = new LocalRegression(t, y, 0.2, 2);
        LocalRegression smoothSize = new LocalRegression(t, size, 0.6, 1);
        List<Optional<Square>> squares = new ArrayList<>();
        for (int f = 0; f < survey.frameCount(); f++) {
            double at = survey.timestampsUs().get(f) / 1e6;
            if (f < path.firstFrame() || f > path.lastFrame()) {
                squares.add(Optional.empty());
                continue;
            }
            Point2 px = background.fromFixed(f).apply(smoothX.at(at), smoothY.at(at));
            squares.add(inView(px, SQUARE_STATURES * smoothSize.at(at), survey));
        }
        return new SubjectTrack(squares, path.direction());
    }

    /** Nothing when not even the hips are inside the picture. */
    private static Optional<Square> inView(Point2 centre, double sidePx, Survey survey) {
        boolean inside = centre.isKnown()
                && centre.x() > 0
                && centre.y() > 0
                && centre.x() < survey.video().widthPx()
                && centre.y() < survey.video().heightPx();
        return inside ? Optional.of(new Square(centre.x(), centre.y(), sidePx)) : Optional.empty();
    }
}
