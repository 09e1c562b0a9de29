package org.boardtopit.report.stills;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.Reading;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.wording.Words;

/**
 * The angles that a still shows, with the values of contacts.csv: trunk, hip and knee of the leg on the ground; at touchdown on the
 * runway also the plant of that leg, at toe-off the free thigh. {@code docs/measures.md} defines each.
 */
final class StillAngles {
    /** Length of the arm that shows the vertical or the horizontal, in still metres. */
    private static final double LINE_M = 0.42;

    /** Radii of the arcs. Those of trunk, plant and thigh are large: few degrees need a long arm, and no two arcs may meet. */
    private static final double JOINT_ARC_M = 0.13;

    private static final double TRUNK_ARC_M = 0.36;
    private static final double PLANT_ARC_M = 0.2;
    private static final double THIGH_ARC_M = 0.26;

    private final Words words;
    private final Values values;

    StillAngles(Words words) {
        this.words = words;
        this.values = new Values(words);
    }

    /** Where the points of the body lie in one still. */
    private record Body(FramePose pose, Homography frameToMetres) {
        Point2 at(BodyPoint point) {
            return inMetres(pose.place(point));
        }

        Point2 middle(BodyPoint point) {
            return inMetres(pose.middle(point));
        }

        private Point2 inMetres(Point2 px) {
            return px.isKnown() ? frameToMetres.apply(px) : Point2.UNKNOWN;
        }
    }

    /**
     * The angles of a contact at touchdown or toe-off.
     *
     * @param side of the leg on the ground
     * @param centreOfMass in still metres
     * @param ahead +1 when the athlete runs to the right in the picture, -1 to the left
     */
    List<StillAngle> of(
            ContactMeasures contact,
            boolean touchdown,
            FramePose pose,
            Homography frameToMetres,
            BodySide side,
            Point2 centreOfMass,
            int ahead) {
        Body body = new Body(pose, frameToMetres);
        Angles angles = new Angles(contact, touchdown);
        Point2 hips = body.middle(BodyPoint.LEFT_HIP);
        Point2 shoulders = body.middle(BodyPoint.LEFT_SHOULDER);
        Point2 thigh = body.at(side.of(BodyPoint.LEFT_KNEE)).minus(body.at(side.of(BodyPoint.LEFT_HIP)));
        angles.add(BodyAngle.TRUNK, hips, shoulders, upFrom(hips), TRUNK_ARC_M, true);
        angles.add(BodyAngle.HIP, hips, shoulders, hips.plus(thigh), JOINT_ARC_M, false);
        angles.add(
                BodyAngle.KNEE,
                body.at(side.of(BodyPoint.LEFT_KNEE)),
                body.at(side.of(BodyPoint.LEFT_HIP)),
                body.at(side.of(BodyPoint.LEFT_ANKLE)),
                JOINT_ARC_M,
                false);
        if (touchdown && contact.contact().kind() != ContactKind.PIT) {
            Point2 ankle = body.at(side.of(BodyPoint.LEFT_ANKLE));
            angles.add(
                    BodyAngle.LEG_PLANT,
                    ankle,
                    centreOfMass,
                    ankle.plus(new Point2(-ahead * LINE_M, 0)),
                    PLANT_ARC_M,
                    true);
        } else if (!touchdown) {
            Point2 hip = body.at(side.other().of(BodyPoint.LEFT_HIP));
            Point2 knee = body.at(side.other().of(BodyPoint.LEFT_KNEE));
            angles.add(BodyAngle.FREE_THIGH, hip, knee, hip.plus(new Point2(0, LINE_M)), THIGH_ARC_M, true);
        }
        return angles.found;
    }

    private static Point2 upFrom(Point2 hips) {
        return hips.minus(new Point2(0, LINE_M));
    }

    private final class Angles {
        private final ContactMeasures contact;
        private final boolean touchdown;
        private final List<StillAngle> found = new ArrayList<>();

        Angles(ContactMeasures contact, boolean touchdown) {
            this.contact = contact;
            this.touchdown = touchdown;
        }

        void add(BodyAngle angle, Point2 vertex, Point2 firstArm, Point2 secondArm, double arcM, boolean toVertical) {
            Reading reading = touchdown ? contact.atTouchdown(angle) : contact.atToeOff(angle);
            if (reading.isKnown() && vertex.isKnown() && firstArm.isKnown() && secondArm.isKnown()) {
                String word = words.get("angle." + angle.name().toLowerCase(Locale.ROOT));
                boolean signed = angle == BodyAngle.TRUNK;
                found.add(new StillAngle(
                        word, values.degrees(reading, signed), vertex, firstArm, secondArm, arcM, toVertical));
            }
        }
    }
}
