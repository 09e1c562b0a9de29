package org.boardtopit.report.overlay;

import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * One angle and where on the body it is measured.
 *
 * @param valueDeg the measured value, which need not be what the three points span: it belongs to the instant of
 *     touchdown, the points to the frame nearest to it
 * @param vertex the joint, in px of the touchdown's frame
 * @param firstArm end of one arm, same plane
 * @param secondArm end of the other arm, same plane; for the trunk the vertical above the hips
 */
public record AngleCallout(Angle angle, double valueDeg, Point2 vertex, Point2 firstArm, Point2 secondArm) {

    /** Knee and hip are inner angles, 180 straight; trunk is the lean from the vertical, forward positive. */
    public enum Angle {
        TRUNK,
        HIP,
        KNEE;

        String text() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    public AngleCallout {
        Objects.requireNonNull(angle, "angle");
        if (!(Math.abs(valueDeg) <= 360)) {
            throw new IllegalArgumentException("valueDeg must lie within -360 and 360, was " + valueDeg);
        }
        if (!vertex.isKnown() || !firstArm.isKnown() || !secondArm.isKnown()) {
            throw new IllegalArgumentException("the " + angle.text() + " angle needs three known points");
        }
    }

    /** Hip, knee, ankle of one side; empty when a point or the value is unknown (NaN). */
    public static Optional<AngleCallout> knee(FramePose pose, BodySide side, double valueDeg) {
        return of(
                Angle.KNEE,
                valueDeg,
                pose.place(side.of(BodyPoint.LEFT_KNEE)),
                pose.place(side.of(BodyPoint.LEFT_HIP)),
                pose.place(side.of(BodyPoint.LEFT_ANKLE)));
    }

    /** Shoulder, hip, knee of one side; empty when a point or the value is unknown (NaN). */
    public static Optional<AngleCallout> hip(FramePose pose, BodySide side, double valueDeg) {
        return of(
                Angle.HIP,
                valueDeg,
                pose.place(side.of(BodyPoint.LEFT_HIP)),
                pose.place(side.of(BodyPoint.LEFT_SHOULDER)),
                pose.place(side.of(BodyPoint.LEFT_KNEE)));
    }

    /** Mid-shoulder, mid-hip, vertical; empty when a point or the value is unknown (NaN). */
    public static Optional<AngleCallout> trunk(FramePose pose, double valueDeg) {
        Point2 hips = pose.middle(BodyPoint.LEFT_HIP);
        Point2 shoulders = pose.middle(BodyPoint.LEFT_SHOULDER);
        return of(Angle.TRUNK, valueDeg, hips, shoulders, new Point2(hips.x(), hips.y() - shoulders.distanceTo(hips)));
    }

    private static Optional<AngleCallout> of(Angle angle, double valueDeg, Point2 vertex, Point2 first, Point2 second) {
        boolean known = Double.isFinite(valueDeg) && vertex.isKnown() && first.isKnown() && second.isKnown();
        return known ? Optional.of(new AngleCallout(angle, valueDeg, vertex, first, second)) : Optional.empty();
    }

    /** "knee 152°", "trunk +7°". */
    public String text(OverlayWords words) {
        return words.angle(angle, valueDeg);
    }
}
