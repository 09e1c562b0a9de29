package org.boardtopit.report.overlay.drawing;

import static org.boardtopit.models.BodyPoint.LEFT_ANKLE;
import static org.boardtopit.models.BodyPoint.LEFT_EAR;
import static org.boardtopit.models.BodyPoint.LEFT_ELBOW;
import static org.boardtopit.models.BodyPoint.LEFT_HEEL;
import static org.boardtopit.models.BodyPoint.LEFT_HIP;
import static org.boardtopit.models.BodyPoint.LEFT_KNEE;
import static org.boardtopit.models.BodyPoint.LEFT_SHOULDER;
import static org.boardtopit.models.BodyPoint.LEFT_TOE;
import static org.boardtopit.models.BodyPoint.LEFT_WRIST;

import org.boardtopit.models.BodyPoint;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.PosePoint;
import org.boardtopit.signal.Point2;

/** The stick figure: far side dashed and thinner, then the trunk, then the near side solid, all in dark casings. */
final class SkeletonPainter {
    /**
     * A point whose standard deviation exceeds this share of the athlete's height is drawn hollow and its limbs thin. A
     * first guess, not tuned: 5 cm on a body of 1.80 m.
     */
    static final double UNCERTAIN_SHARE = 0.03;

    private static final BodyPoint[][] LIMBS = {
        {LEFT_SHOULDER, LEFT_ELBOW},
        {LEFT_ELBOW, LEFT_WRIST},
        {LEFT_HIP, LEFT_KNEE},
        {LEFT_KNEE, LEFT_ANKLE},
        {LEFT_ANKLE, LEFT_HEEL},
        {LEFT_ANKLE, LEFT_TOE},
        {LEFT_HEEL, LEFT_TOE}
    };
    private static final BodyPoint[] JOINTS = {LEFT_SHOULDER, LEFT_ELBOW, LEFT_WRIST, LEFT_HIP, LEFT_KNEE, LEFT_ANKLE};

    private final Canvas canvas;

    SkeletonPainter(Canvas canvas) {
        this.canvas = canvas;
    }

    /**
     * Draws a pose.
     *
     * @param placement from the pose's frame px to the picture
     * @param poseHeightPx height of the athlete in the pose's own frame, to judge the standard deviations by
     * @param drawnHeightPx height of the athlete as drawn, to choose the line widths by
     */
    void draw(FramePose pose, Placement placement, double poseHeightPx, double drawnHeightPx) {
        Figure figure = new Figure(pose, placement, UNCERTAIN_SHARE * poseHeightPx, drawnHeightPx);
        figure.side(pose.nearSide().other(), Ink.FAR, true);
        figure.trunk();
        figure.side(pose.nearSide(), Ink.NEAR, false);
    }

    /** Draws a pose as a remembered outline: one colour, thin, no joints. */
    void drawTrace(FramePose pose, Placement placement, double drawnHeightPx) {
        Figure figure = new Figure(pose, placement, Double.POSITIVE_INFINITY, drawnHeightPx);
        figure.traceSide(pose.nearSide().other());
        figure.trunk();
        figure.traceSide(pose.nearSide());
    }

    /**
     * Draws a pose in one colour, to tell one athlete from another: in whole lines or, for the second, in dashed ones without a
     * casing, between which the first is seen where both are in one place.
     *
     * @param linesForPx height of an athlete for whom the lines would be as wide
     */
    void drawAs(FramePose pose, Placement placement, double linesForPx, Ink ink, boolean dashed) {
        Figure figure = new Figure(pose, placement, Double.POSITIVE_INFINITY, linesForPx);
        if (dashed) {
            figure.dashes(pose.nearSide().other(), ink);
            figure.dashedTrunk(ink);
            figure.dashes(pose.nearSide(), ink);
        } else {
            figure.limbs(pose.nearSide().other(), ink, false);
            figure.trunk(ink);
            figure.limbs(pose.nearSide(), ink, false);
        }
    }

    private final class Figure {
        private final FramePose pose;
        private final Placement placement;
        private final double uncertainSdPx;
        private final int thick;
        private final int thin;
        private final int casing;
        private final double stroke;
        private final double jointRadius;
        private final double headRadius;

        Figure(FramePose pose, Placement placement, double uncertainSdPx, double heightPx) {
            this.pose = pose;
            this.placement = placement;
            this.uncertainSdPx = uncertainSdPx;
            thick = Math.max(heightPx < 70 ? 1 : 2, (int) Math.round(heightPx * 0.018));
            thin = Math.max(heightPx < 90 ? 1 : 2, (int) Math.round(heightPx * 0.010));
            casing = Math.max(2, 2 * (int) Math.round(heightPx * 0.004));
            stroke = Math.max(5, heightPx * 0.055);
            jointRadius = Math.max(1.3, heightPx * 0.016);
            headRadius = Math.max(3, heightPx * 0.06);
        }

        void side(BodySide side, Ink ink, boolean dashed) {
            limbs(side, ink, dashed);
            for (BodyPoint joint : JOINTS) {
                joint(side.of(joint), ink);
            }
        }

        void limbs(BodySide side, Ink ink, boolean dashed) {
            for (BodyPoint[] limb : LIMBS) {
                limb(side.of(limb[0]), side.of(limb[1]), ink, dashed);
            }
        }

        void dashes(BodySide side, Ink ink) {
            for (BodyPoint[] limb : LIMBS) {
                dashes(place(side.of(limb[0])), place(side.of(limb[1])), ink);
            }
        }

        void dashedTrunk(Ink ink) {
            Point2 shoulders = placement.of(pose.middle(LEFT_SHOULDER));
            Point2 head = placement.of(head());
            dashes(placement.of(pose.middle(LEFT_HIP)), shoulders, ink);
            dashes(shoulders, head, ink);
            canvas.ring(head.x(), head.y(), 0.7 * headRadius, thin, ink);
        }

        private void dashes(Point2 a, Point2 b, Ink ink) {
            canvas.dashedLine(a.x(), a.y(), b.x(), b.y(), stroke, stroke * 0.7, thick, ink);
        }

        void traceSide(BodySide side) {
            for (BodyPoint[] limb : LIMBS) {
                Point2 a = placement.of(pose.place(side.of(limb[0])));
                Point2 b = placement.of(pose.place(side.of(limb[1])));
                line(a, b, thin, Ink.BODY);
            }
        }

        void trunk() {
            trunk(Ink.BODY);
        }

        void trunk(Ink ink) {
            Point2 shoulders = placement.of(pose.middle(LEFT_SHOULDER));
            Point2 hips = placement.of(pose.middle(LEFT_HIP));
            Point2 head = placement.of(head());
            line(hips, shoulders, thick, ink);
            line(place(LEFT_SHOULDER), place(LEFT_SHOULDER.otherSide()), thin, ink);
            line(place(LEFT_HIP), place(LEFT_HIP.otherSide()), thin, ink);
            if (shoulders.isKnown() && head.isKnown()) {
                double distance = Math.max(1e-6, shoulders.distanceTo(head));
                line(shoulders, head.plus(shoulders.minus(head).times(Math.min(1, headRadius / distance))), thin, ink);
                canvas.ring(head.x(), head.y(), headRadius, thin + casing, Ink.OUTLINE);
                canvas.ring(head.x(), head.y(), headRadius, thin, ink);
            }
        }

        private Point2 head() {
            Point2 ears = pose.middle(LEFT_EAR);
            return ears.isKnown() ? ears : pose.place(BodyPoint.NOSE);
        }

        private Point2 place(BodyPoint point) {
            return placement.of(pose.place(point));
        }

        private void limb(BodyPoint from, BodyPoint to, Ink ink, boolean dashed) {
            Point2 a = place(from);
            Point2 b = place(to);
            boolean sure = isSure(pose.point(from)) && isSure(pose.point(to));
            int width = sure && !dashed ? thick : thin;
            if (dashed) {
                canvas.line(a.x(), a.y(), b.x(), b.y(), width + casing, Ink.OUTLINE);
                canvas.dashedLine(a.x(), a.y(), b.x(), b.y(), stroke, stroke * 0.7, width, ink);
            } else {
                line(a, b, width, ink);
            }
        }

        private void line(Point2 a, Point2 b, int width, Ink ink) {
            canvas.line(a.x(), a.y(), b.x(), b.y(), width + casing, Ink.OUTLINE);
            canvas.line(a.x(), a.y(), b.x(), b.y(), width, ink);
        }

        private void joint(BodyPoint point, Ink ink) {
            Point2 p = place(point);
            if (isSure(pose.point(point))) {
                canvas.disc(p.x(), p.y(), jointRadius, ink);
            } else {
                canvas.disc(p.x(), p.y(), jointRadius * 1.6, Ink.OUTLINE);
                canvas.ring(p.x(), p.y(), jointRadius * 1.6, 1, ink);
            }
        }

        private boolean isSure(PosePoint point) {
            // An unknown deviation is not held against the point.
            return !(point.sdPx() > uncertainSdPx);
        }
    }
}
