package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.boardtopit.accuracy.PointError.Stage;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.Point2;

/** The points of the body against the truth, as the network gives them, after repair and after the fit; those outside the picture do not count. */
final class PointErrors {
    private static final List<BodyPoint> LEFT_LEG =
            List.of(BodyPoint.LEFT_KNEE, BodyPoint.LEFT_ANKLE, BodyPoint.LEFT_HEEL, BodyPoint.LEFT_TOE);
    /** Mean distance of the legs' points from one another, as a share of the standing height, from which on sides matter. */
    private static final double LEGS_APART = 0.10;
    /** The exchanged legs must fit that much better; between it and 1 neither fits well. A choice of this report. */
    private static final double CLEARLY_BETTER = 0.6;

    private final AttemptTruth truth;
    private final PoseTrack poses;
    private final RunwayView view;
    private final FittedMotion fitted;
    private final MotionTrack motion;

    PointErrors(AttemptTruth truth, PoseTrack poses, RunwayView view, FittedMotion fitted) {
        this.truth = truth;
        this.poses = poses;
        this.view = view;
        this.fitted = fitted;
        this.motion = fitted.repaired();
    }

    /** All points of all frames, before and after repair. */
    List<PointError> list() {
        List<PointError> errors = new ArrayList<>();
        for (int f = 0; f < truth.frames().size(); f++) {
            for (BodyPoint point : truth.frames().get(f).points().keySet()) {
                add(errors, f, point);
            }
        }
        return errors;
    }

    private void add(List<PointError> errors, int frame, BodyPoint point) {
        Point2 true2 = truth.frames().get(frame).points().get(point);
        if (!truth.inPicture(true2)) {
            return;
        }
        Optional<FramePose> pose = poses.at(frame);
        Point2 named = pose.map(p -> p.place(point, 0)).orElse(Point2.UNKNOWN);
        if (named.isKnown()) {
            errors.add(error(frame, point, Stage.SEEN, named, pose.orElseThrow().sdPx(point, 0)));
        }
        Point2 repaired = motion.px(frame, point);
        if (repaired.isKnown()) {
            double sdPx = motion.sd(frame, point) / view.metresPerPixel(frame, repaired);
            errors.add(error(frame, point, Stage.REPAIRED, repaired, sdPx));
        }
        if (repaired.isKnown() && fitted.isFitted(frame)) {
            Point2 px = view.inFrame(frame, fitted.place(frame, point), motion.acrossM(point));
            errors.add(error(frame, point, Stage.FITTED, px, Double.NaN));
        }
    }

    private PointError error(int frame, BodyPoint point, Stage stage, Point2 seen, double sdPx) {
        FrameTruth t = truth.frames().get(frame);
        double px = seen.distanceTo(t.points().get(point));
        return new PointError(
                point, t.part(), stage, px, 100 * px / staturePx(frame), sdPx > 0 ? px / sdPx : Double.NaN);
    }

    private double staturePx(int frame) {
        FrameTruth t = truth.frames().get(frame);
        return truth.statureM() * truth.camera(frame).pixelsPerMetre(t.comAlongM(), t.comAcrossM(), t.comUpM());
    }

    /** How often the network names the legs the wrong way round. */
    LegExchanges exchangesBefore() {
        return exchanges(f -> point -> poses.at(f).map(p -> p.place(point, 0)).orElse(Point2.UNKNOWN));
    }

    /** How often they are the wrong way round after repair. */
    LegExchanges exchangesAfter() {
        return exchanges(f -> point -> motion.px(f, point));
    }

    private LegExchanges exchanges(Function<Integer, Function<BodyPoint, Point2>> seen) {
        int apart = 0;
        int exchanged = 0;
        for (int f = 0; f < truth.frames().size(); f++) {
            Map<BodyPoint, Point2> true2 = truth.frames().get(f).points();
            if (LEFT_LEG.stream()
                            .anyMatch(p -> !truth.inPicture(true2.get(p)) || !truth.inPicture(true2.get(p.otherSide())))
                    || legsApart(true2) < LEGS_APART * staturePx(f)) {
                continue;
            }
            double asNamed = fit(true2, seen.apply(f), false);
            if (Double.isFinite(asNamed)) {
                apart++;
                exchanged += fit(true2, seen.apply(f), true) < CLEARLY_BETTER * asNamed ? 1 : 0;
            }
        }
        return new LegExchanges(apart, exchanged);
    }

    private static double legsApart(Map<BodyPoint, Point2> true2) {
        return LEFT_LEG.stream()
                .mapToDouble(p -> true2.get(p).distanceTo(true2.get(p.otherSide())))
                .average()
                .orElseThrow();
    }

    /** Mean distance of the known leg points from the truth; NaN when none is known. */
    private static double fit(Map<BodyPoint, Point2> true2, Function<BodyPoint, Point2> seen, boolean exchange) {
        double sum = 0;
        int n = 0;
        for (BodyPoint left : LEFT_LEG) {
            for (BodyPoint point : List.of(left, left.otherSide())) {
                Point2 place = seen.apply(point);
                if (place.isKnown()) {
                    sum += place.distanceTo(true2.get(exchange ? point.otherSide() : point));
                    n++;
                }
            }
        }
        return n == 0 ? Double.NaN : sum / n;
    }
}
