package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.Survey;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.signal.LocalRegression;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/**
 * Follows the athlete: the path of the running movement says where to look, the person detector says who and how large, and
 * both are smoothed forwards and backwards in time, so that the landmark network later sees the athlete steadily.
 *
 * <p>The detector looks at a crop around the path about {@value #LOOKS_PER_S} times a second. Of the persons in it the one
 * nearest to the path counts. Places are smoothed in the fixed picture, where a jumper's path is smooth even when the camera
 * is jerked.
 */
public final class AthleteTracker {
    private static final double LOOKS_PER_S = 15;
    /** Side of the crop for the detector, in heights of the movement; wide enough for a path that is half a body off. */
    private static final double LOOK_HEIGHTS = 2.6;

    private static final double LEAST_SCORE = 0.5;
    /** A run of less than this share of the picture width is no attempt. */
    private static final double LEAST_RUN_WIDTHS = 0.25;

    private static final double LEAST_FOUND_SHARE = 0.3;
    /**
     * Side of the square over the detector's circle around the body. With the circle about 1.2 standing heights wide, the
     * square is the one for which the networks were tuned.
     */
    private static final double SQUARE_OVER_CIRCLE = 1.25;

    private final PersonDetector detector;

    public AthleteTracker(PersonDetector detector) {
        this.detector = detector;
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
        List<Look> looks = look(reader, path);
        long found = looks.stream().filter(l -> l.person().isPresent()).count();
        if (found < Math.max(4, LEAST_FOUND_SHARE * looks.size())) {
            throw new NoAthleteException(String.format(
                    Locale.ROOT, "what runs is not a person: seen in %d of %d pictures", found, looks.size()));
        }
        return smoothed(survey, path, looks);
    }

    /** One use of the detector; the person's hips and size in pixels of the frame. */
    private record Look(int frame, Optional<Square> person) {}

    private List<Look> look(FrameReader reader, RoughPath path) throws VideoException {
        List<Look> looks = new ArrayList<>();
        SquareCrop crop = new SquareCrop(detector.inputSizePx());
        ByteBuffer rgb = crop.newBuffer();
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
            looks.add(new Look(i, person(frame, path, crop, rgb)));
        }
        return looks;
    }

    private Optional<Square> person(VideoFrame frame, RoughPath path, SquareCrop crop, ByteBuffer rgb) {
        double x = path.xPx(frame.index());
        double y = path.yPx(frame.index());
        double side = LOOK_HEIGHTS * path.heightPx();
        crop.cut(frame, x, y, side, rgb);
        double scale = side / detector.inputSizePx();
        Optional<Square> best = Optional.empty();
        double bestDistance = 0.7 * path.heightPx();
        for (DetectedPerson p : detector.find(rgb)) {
            double px = x - side / 2 + p.hipXPx() * scale;
            double py = y - side / 2 + p.hipYPx() * scale;
            double distance = Math.hypot(px - x, py - y);
            if (p.score() >= LEAST_SCORE && p.sizePx() > 0 && distance < bestDistance) {
                bestDistance = distance;
                best = Optional.of(new Square(px, py, p.sizePx() * scale));
            }
        }
        return best;
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
            squares.add(inView(px, SQUARE_OVER_CIRCLE * smoothSize.at(at), survey));
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
