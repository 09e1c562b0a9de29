package org.boardtopit.frontal;

import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * What the clip from the side tells of an attempt, in its own time.
 *
 * @param forClock the contacts by which the clips' clocks are laid together: without corrected instants, so that one does not
 *     move all readings
 * @param fromMarks true when along counts metres from the take-off line
 */
public record SideMotion(FittedMotion motion, ContactTimeline contacts, ContactTimeline forClock, boolean fromMarks) {

    /** Without corrections. */
    public SideMotion(FittedMotion motion, ContactTimeline contacts, boolean fromMarks) {
        this(motion, contacts, contacts, fromMarks);
    }

    /** Height of the middle of the hips, in the unit of the motion; NaN outside the clip or where it is not known. */
    double hipsHeight(double timeS) {
        return middle(BodyPoint.LEFT_HIP, timeS).y();
    }

    /** The middle of the hips along the runway; NaN where it is not known. */
    double hipsAlong(double timeS) {
        return middle(BodyPoint.LEFT_HIP, timeS).x();
    }

    private Point2 middle(BodyPoint left, double timeS) {
        return at(left, timeS).plus(at(left.otherSide(), timeS)).times(0.5);
    }

    /** A point (along, height) at a time between two frames, by a straight line; unknown outside the clip. */
    Point2 at(BodyPoint point, double timeS) {
        int after = motion.repaired().frameAtOrAfter(timeS);
        if (after <= 0 || after >= motion.frameCount()) {
            return Point2.UNKNOWN;
        }
        double before = motion.timeS(after - 1);
        double share = (timeS - before) / (motion.timeS(after) - before);
        Point2 a = motion.smooth(after - 1, point);
        Point2 b = motion.smooth(after, point);
        return a.plus(b.minus(a).times(share));
    }
}
