package org.boardtopit.run;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.ground.RunTraces;
import org.boardtopit.ground.RunTraces.Body;
import org.boardtopit.ground.RunTraces.Fall;
import org.boardtopit.ground.RunTraces.Trace;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.BodyWidths;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * Reads from a first look, which needs no camera, what the run left in the fixed picture.
 *
 * <p>The centre of mass is taken to the picture as a point of the view in which it was computed: within the width of a body
 * perspective bends a weighted mean by less than a millimetre.
 */
final class RunTraceReader {
    private static final BodyPoint[] LEFT_CHAIN = {
        BodyPoint.LEFT_SHOULDER, BodyPoint.LEFT_HIP, BodyPoint.LEFT_KNEE, BodyPoint.LEFT_ANKLE
    };
    /** A foot is flat, and its toe still, from just after touchdown until the heel has risen (common practice). */
    private static final double AFTER_TOUCHDOWN_S = 0.010;

    private static final double BEFORE_TOE_OFF_S = 0.030;

    private final RunwayView view;
    private final MotionTrack motion;
    private final List<Contact> contacts;

    /**
     * For one look at a clip.
     *
     * @param view in which the motion was computed
     */
    RunTraceReader(RunwayView view, MotionTrack motion, ContactTimeline contacts) {
        this.view = view;
        this.motion = motion;
        this.contacts = contacts.contacts();
    }

    RunTraces read() {
        return new RunTraces(falls(), bodies(), toes());
    }

    private List<List<Fall>> falls() {
        List<List<Fall>> falls = new ArrayList<>();
        for (int i = 1; i < contacts.size(); i++) {
            double from = contacts.get(i - 1).toeOffS();
            List<Fall> fall = new ArrayList<>();
            for (int f = motion.frameAtOrAfter(from);
                    Double.isFinite(from)
                            && f < motion.frameCount()
                            && motion.timeS(f) <= contacts.get(i).touchdownS();
                    f++) {
                Point2 centre = motion.centreOfMass(f);
                if (centre.isKnown()) {
                    fall.add(new Fall(motion.timeS(f) - from, view.inFixedPicture(centre, 0)));
                }
            }
            falls.add(fall);
        }
        return falls;
    }

    /** Up to the pit: a body that sits down is not a measuring rod. */
    private List<Body> bodies() {
        double end = contacts.stream()
                .filter(c -> c.kind() == ContactKind.PIT)
                .mapToDouble(Contact::touchdownS)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
        List<Body> bodies = new ArrayList<>();
        for (int f = 0; f < motion.frameCount() && motion.timeS(f) < end; f++) {
            List<Trace> left = chain(f, false);
            List<Trace> right = chain(f, true);
            if (!left.isEmpty() && !right.isEmpty()) {
                bodies.add(new Body(left, right));
            }
        }
        return bodies;
    }

    /** Empty when a point of it is not known. */
    private List<Trace> chain(int frame, boolean otherSide) {
        List<Trace> chain = new ArrayList<>();
        for (BodyPoint left : LEFT_CHAIN) {
            BodyPoint point = otherSide ? left.otherSide() : left;
            Point2 px = fixed(frame, point);
            if (!px.isKnown()) {
                return List.of();
            }
            chain.add(new Trace(px, BodyWidths.acrossM(point, 1)));
        }
        return chain;
    }

    private Point2 fixed(int frame, BodyPoint point) {
        Point2 px = motion.px(frame, point);
        return px.isKnown() ? view.background().toFixed(frame, px) : Point2.UNKNOWN;
    }

    private List<Trace> toes() {
        List<Trace> toes = new ArrayList<>();
        for (Contact contact : contacts) {
            if (contact.kind() == ContactKind.PIT || contact.foot() == Foot.BOTH) {
                continue;
            }
            BodyPoint toe = contact.foot().toe();
            List<Point2> seen = new ArrayList<>();
            for (int f = motion.frameAtOrAfter(contact.touchdownS() + AFTER_TOUCHDOWN_S);
                    f < motion.frameCount() && motion.timeS(f) <= contact.toeOffS() - BEFORE_TOE_OFF_S;
                    f++) {
                Point2 px = fixed(f, toe);
                if (px.isKnown()) {
                    seen.add(px);
                }
            }
            if (!seen.isEmpty()) {
                Point2 middle = new Point2(
                        OrderStatistics.median(
                                seen.stream().mapToDouble(Point2::x).toArray()),
                        OrderStatistics.median(
                                seen.stream().mapToDouble(Point2::y).toArray()));
                toes.add(new Trace(middle, BodyWidths.acrossM(toe, 1)));
            }
        }
        return toes;
    }
}
