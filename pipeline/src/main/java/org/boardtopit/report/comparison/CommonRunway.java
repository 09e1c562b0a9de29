package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.Foot;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.PosePoint;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * Both athletes on one runway, as the camera of A sees it: places are pixels of A's fixed picture.
 *
 * <p>B goes by way of the plane of the run: pixels of B's frame become metres along the runway and height, and these become
 * pixels through A's camera, each body point at its own distance from the centre line. So metres count the same for both,
 * whatever the cameras, and one who ran to the left runs to the right. Where both know the take-off line, board lies on board;
 * else the toes of the first contact do, and without metres both athletes count as equally tall as their views take them to be.
 */
public final class CommonRunway {
    private final ComparedAttempt a;
    private final ComparedAttempt b;
    private final Point2 shift;

    CommonRunway(ComparedAttempt a, ComparedAttempt b) {
        this.a = a;
        this.b = b;
        this.shift = shift(a, b);
    }

    /** What is added to B's along and height. */
    private static Point2 shift(ComparedAttempt a, ComparedAttempt b) {
        boolean line = tellsTakeoffLine(a) && tellsTakeoffLine(b);
        boolean ground = a.view().camera().isPresent() && b.view().camera().isPresent();
        if (line && ground) {
            return new Point2(0, 0);
        }
        Point2 apart = firstContact(a).minus(firstContact(b));
        return apart.isKnown() ? new Point2(line ? 0 : apart.x(), ground ? 0 : apart.y()) : new Point2(0, 0);
    }

    private static boolean tellsTakeoffLine(ComparedAttempt attempt) {
        return attempt.measures().scaleSource().tellsTakeoffLine();
    }

    /** True when a metre is as long for both. */
    boolean hasMetres() {
        return a.measures().scaleSource() != ScaleSource.NONE && b.measures().scaleSource() != ScaleSource.NONE;
    }

    /** The toe in the middle of the first contact, in the plane of the run. */
    private static Point2 firstContact(ComparedAttempt attempt) {
        Optional<Contact> first = attempt.first();
        if (first.isEmpty()) {
            return Point2.UNKNOWN;
        }
        Contact contact = first.get();
        double end = Double.isFinite(contact.toeOffS()) ? contact.toeOffS() : contact.touchdownS();
        int frame = attempt.motion().nearestFrame((contact.touchdownS() + end) / 2);
        BodyPoint toe = contact.foot() == Foot.RIGHT ? BodyPoint.RIGHT_TOE : BodyPoint.LEFT_TOE;
        return attempt.motion().smooth(frame, toe);
    }

    /** A's points in a frame of A. */
    FramePose ofA(int frame) {
        FramePose pose = a.pose(frame);
        return moved(pose, (point, px) -> a.landmarks().background().toFixed(frame, px));
    }

    /** B's points in a frame of B. */
    FramePose ofB(int frame) {
        RunwayView own = b.view();
        return moved(b.pose(frame), (point, px) -> {
            double across = b.motion().acrossM(point);
            return a.view().inFixedPicture(own.place(frame, px, across).plus(shift), across);
        });
    }

    /** Where a body point comes to lie. */
    @FunctionalInterface
    private interface Move {
        Point2 of(BodyPoint point, Point2 px);
    }

    private static FramePose moved(FramePose pose, Move move) {
        List<PosePoint> points = new ArrayList<>();
        for (int i = 0; i < BodyPoint.COUNT; i++) {
            BodyPoint point = BodyPoint.at(i);
            Point2 px = pose.place(point);
            Point2 moved = px.isKnown() ? move.of(point, px) : Point2.UNKNOWN;
            points.add(moved.isKnown() ? new PosePoint(moved, Double.NaN) : PosePoint.UNKNOWN);
        }
        return new FramePose(pose.frameIndex(), pose.timestampUs(), points, pose.nearSide(), Optional.empty());
    }

    /** A place on the ground, metres from the take-off line; unknown when A does not know where that is. */
    Point2 onGround(double alongM, double acrossM) {
        return tellsTakeoffLine(a) && a.view().camera().isPresent()
                ? a.view().inFixedPicture(new Point2(alongM, 0), acrossM)
                : Point2.UNKNOWN;
    }

    /** Where a contact of A stands along the runway, in the metres of {@link #onGround}; NaN when not known. */
    double alongOfA(Contact contact) {
        return tellsTakeoffLine(a) ? contact.toeAlongM() : Double.NaN;
    }

    /** The same of B: not known where B was only laid toe on toe. */
    double alongOfB(Contact contact) {
        return tellsTakeoffLine(b) ? contact.toeAlongM() : Double.NaN;
    }

    /** From a frame of A to its fixed picture. */
    Homography toFixed(int frameOfA) {
        return a.landmarks().background().frame(frameOfA).toFixed();
    }
}
