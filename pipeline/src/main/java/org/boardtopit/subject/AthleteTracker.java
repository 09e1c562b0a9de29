package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.Survey;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.signal.LocalRegression;
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
    static final double LOOKS_PER_S = 15;
    /** Side of the crop for the detector, in heights of the movement; wide enough for a path that is half a body off. */
    static final double LOOK_HEIGHTS = 2.6;

    static final double LEAST_SCORE = 0.5;
    /** A run of less than this share of the picture width is no attempt. */
    private static final double LEAST_RUN_WIDTHS = 0.25;

    private static final double LEAST_FOUND_SHARE = 0.3;
    /** The detector's circle around the body is about this many standing heights wide (measured: 1.0 to 1.1). */
    static final double CIRCLE_STATURES = 1.05;

    /** The athlete is still there for a while when the detector has lost sight. */
    private static final double AFTER_SIGHT_S = 0.2;

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
        return smoothed(survey, new Span(path.firstFrame(), path.lastFrame(), path.direction()), looks);
    }

    /**
     * The same for a camera that looks along the runway: follows the one who comes towards it (from in front) or goes away
     * from it (from behind), from small to large or from large to small.
     *
     * @param camera of the fixed picture, from marks; without one the detector looks at whatever moves
     * @throws NoAthleteException when nobody does
     */
    public SubjectTrack track(Survey survey, FrameReader reader, Camera.View view, Optional<RunwayCamera> camera)
            throws VideoException, NoAthleteException {
        if (view == Camera.View.SIDE) {
            return track(survey, reader);
        }
        PersonSearch search = new PersonSearch(survey, detector, network, camera);
        List<SightedPerson> people = new ArrayList<>();
        long nextUs = 0;
        for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
            VideoFrame frame = next.get();
            if (frame.timestampUs() >= nextUs) {
                nextUs = frame.timestampUs() + Math.round(1e6 / LOOKS_PER_S) - 1000;
                people.addAll(search.people(frame));
            }
        }
        List<SightedPerson> athlete = new OncomingChoice(people, view == Camera.View.FRONT ? 1 : -1).chosen();
        if (athlete.isEmpty()) {
            throw new NoAthleteException(
                    view == Camera.View.FRONT
                            ? "nobody comes towards the camera, which is in front according to the meet sheet"
                            : "nobody runs away from the camera, which is behind according to the meet sheet");
        }
        return smoothed(survey, span(survey, athlete), looks(athlete));
    }

    /** A little longer than the athlete was sighted: between two looks, and until the athlete sits in the sand. */
    private static Span span(Survey survey, List<SightedPerson> athlete) {
        int first = athlete.get(0).frame();
        int last = athlete.get(athlete.size() - 1).frame();
        double until = survey.timestampsUs().get(last) + 1e6 * AFTER_SIGHT_S;
        double from = survey.timestampsUs().get(first) - 1e6 / LOOKS_PER_S;
        while (first > 0 && survey.timestampsUs().get(first - 1) > from) {
            first--;
        }
        while (last + 1 < survey.frameCount() && survey.timestampsUs().get(last + 1) <= until) {
            last++;
        }
        return new Span(first, last, 1);
    }

    private static List<Look> looks(List<SightedPerson> athlete) {
        return athlete.stream()
                .map(p -> new Look(p.frame(), Optional.of(p.body())))
                .toList();
    }

    /** The frames in which the athlete is followed. */
    record Span(int firstFrame, int lastFrame, int direction) {}

    /** One look; the person's hips in pixels of the frame, and the standing height as the side. */
    record Look(int frame, Optional<Square> person) {}

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
        private final BodyReader body = new BodyReader(network, false);
        private final List<Seen> last = new ArrayList<>();

        private record Seen(double timeS, Point2 fixed, double staturePx) {}

        Looker(Survey survey, RoughPath path) {
            this.survey = survey;
            this.path = path;
        }

        Optional<Square> person(VideoFrame frame) {
            Optional<Square> found = predicted(frame).flatMap(square -> body.read(frame, square));
            if (found.isEmpty()) {
                found = detected(frame).map(square -> body.read(frame, square).orElse(square));
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

    private static SubjectTrack smoothed(Survey survey, Span span, List<Look> looks) {
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
            if (f < span.firstFrame() || f > span.lastFrame()) {
                squares.add(Optional.empty());
                continue;
            }
            Point2 px = background.fromFixed(f).apply(smoothX.at(at), smoothY.at(at));
            squares.add(inView(px, BodyReader.SQUARE_STATURES * smoothSize.at(at), survey));
        }
        return new SubjectTrack(squares, span.direction());
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
