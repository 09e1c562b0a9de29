package org.boardtopit.frontal;

import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.clips.Camera;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.synthetic.DrawnCamera;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.DrawnFrontClip;
import org.boardtopit.synthetic.TrueContact;

/** One drawn attempt from the side, and what is needed to draw it from in front or behind as well. */
record DrawnViews(DrawnClip clip, SideMotion side) {
    static final double ERROR = 0.003;

    static DrawnViews of(long seed) {
        DrawnClip clip = new DrawnClip(
                DrawnClip.Setup.ordinary(seed).atFps(60).withStillCamera().withExchanges(0));
        MotionTrack motion = new MotionRepair(
                        SegmentTable.of(Sex.UNSTATED), clip.jumper().statureM())
                .repair(clip.landmarks(), clip.calibratedView());
        ContactTimeline contacts = new ContactDetector(true, Optional.empty()).detect(motion);
        return new DrawnViews(clip, new SideMotion(FittedMotion.asRepaired(motion), contacts, true));
    }

    TrueContact contact(ContactKind kind) {
        return clip.contacts().stream()
                .filter(c -> c.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    /** From in front, 30 m from the board, whole. */
    DrawnFrontClip front(DoubleUnaryOperator rollDeg) {
        return drawn(
                DrawnFrontClip.camera(Camera.View.FRONT, -0.8, 0),
                rollDeg,
                0,
                clip.jumper().endS());
    }

    DrawnFrontClip drawn(DrawnCamera camera, DoubleUnaryOperator rollDeg, double fromS, double toS) {
        return new DrawnFrontClip(clip.jumper(), camera, rollDeg, fromS, toS, 60, ERROR, 0);
    }

    /** A roll to the left that grows in the flight of the hop, stays over the landing and goes back in that of the step. */
    DoubleUnaryOperator rollFromHopToStep(double mostDeg) {
        double up = contact(ContactKind.BOARD).toeOffS();
        double there = contact(ContactKind.HOP_LANDING).touchdownS();
        double back = contact(ContactKind.HOP_LANDING).toeOffS();
        double gone = contact(ContactKind.STEP_LANDING).touchdownS();
        return t -> mostDeg * (smoothStep((t - up) / (there - up)) - smoothStep((t - back) / (gone - back)));
    }

    private static double smoothStep(double u) {
        double v = Math.max(0, Math.min(1, u));
        return v * v * (3 - 2 * v);
    }
}
