package org.boardtopit.report.stills;

import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/** Where the still metres of a picture lie in the plane of the run, and that plane in a frame. */
final class StillPlaces {
    /** A standing height where nothing tells metres: stills are then alike in bodies, not in metres. */
    private static final double USUAL_STATURE_M = 1.75;
    /** Height of the lowest point that is seen on a shoe over the sole; measured on our footage. */
    private static final double SOLE_M = 0.02;

    private final RunwayView view;
    private final FittedMotion fitted;
    private final MotionTrack motion;
    private final double unitsPerMetre;

    StillPlaces(RunwayView view, FittedMotion fitted, ScaleSource scale) {
        this.view = view;
        this.fitted = fitted;
        this.motion = fitted.repaired();
        this.unitsPerMetre = scale == ScaleSource.NONE ? motion.statureM() / USUAL_STATURE_M : 1;
    }

    /** Under the standing foot: the one place in all stills of a contact. Unknown when the foot was not placed. */
    Point2 under(Contact contact) {
        return new Point2(contact.toeAlongM(), groundOf(contact));
    }

    /** On the ground under the centre of mass, which lies between two contacts. */
    Point2 under(int frame, Contact before, Contact after) {
        Point2 centre = fitted.centreOfMass(frame);
        double share = (centre.x() - before.toeAlongM()) / (after.toeAlongM() - before.toeAlongM());
        double from = groundOf(before);
        double inside = Double.isFinite(share) ? Math.max(0, Math.min(1, share)) : 0;
        return new Point2(centre.x(), from + inside * (groundOf(after) - from));
    }

    /** Height of the ground in the plane: 0 with marks, else from where the foot is seen while it stands. */
    private double groundOf(Contact contact) {
        if (view.isCalibrated()) {
            return 0;
        }
        double start = Double.isFinite(contact.touchdownS()) ? contact.touchdownS() : contact.toeOffS();
        double end = Double.isFinite(contact.toeOffS()) ? contact.toeOffS() : contact.touchdownS();
        int first = motion.nearestFrame(start);
        int last = motion.nearestFrame(end);
        Foot foot = contact.foot() == Foot.RIGHT ? Foot.RIGHT : Foot.LEFT;
        double[] lowest = new double[last - first + 1];
        Arrays.setAll(
                lowest,
                i -> Math.min(
                        fitted.place(first + i, foot.heel()).y(),
                        fitted.place(first + i, foot.toe()).y()));
        double[] known = Arrays.stream(lowest).filter(Double::isFinite).toArray();
        return known.length == 0 ? Double.NaN : OrderStatistics.median(known) - SOLE_M * unitsPerMetre;
    }

    /**
     * From still metres to px of a frame; empty when the place is unknown or the frame could not be registered.
     *
     * @param origin in the plane of the run
     */
    Optional<Homography> metresToFrame(int frame, Point2 origin) {
        boolean blind = view.background().cameraMoves()
                && !view.background().frame(frame).registered();
        if (!origin.isKnown() || blind) {
            return Optional.empty();
        }
        // The plane to the frame is a homography, found from the corners of a square of 2 m on the ground.
        Point2 a = inFrame(frame, origin, -1, -2);
        Point2 b = inFrame(frame, origin, 1, -2);
        Point2 c = inFrame(frame, origin, 1, 0);
        Point2 d = inFrame(frame, origin, -1, 0);
        if (!a.isKnown() || !b.isKnown() || !c.isKnown() || !d.isKnown()) {
            return Optional.empty();
        }
        Homography metresToSquare = new Homography(0.5, 0, 0.5, 0, 0.5, 1, 0, 0, 1);
        return Optional.of(Homography.ofUnitSquare(a, b, c, d).after(metresToSquare));
    }

    /** Px of a frame of a place in still metres. */
    private Point2 inFrame(int frame, Point2 origin, double x, double y) {
        return view.inFrame(frame, inPlane(origin, x, y), 0);
    }

    private Point2 inPlane(Point2 origin, double x, double y) {
        return new Point2(origin.x() + view.direction() * x * unitsPerMetre, origin.y() - y * unitsPerMetre);
    }

    /** Still metres of a place in the plane of the run. */
    Point2 inMetres(Point2 origin, Point2 place) {
        return new Point2(
                view.direction() * (place.x() - origin.x()) / unitsPerMetre, -(place.y() - origin.y()) / unitsPerMetre);
    }
}
