package org.boardtopit.contacts;

import java.util.List;
import java.util.Optional;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.clips.Pattern;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.TrueContact;

/** A drawn clip put through motion and contacts, beside its truth. */
record DrawnAttempt(DrawnClip clip, MotionTrack motion, ContactTimeline found) {

    /** The motion that is repaired from a drawn clip in metres. */
    static MotionTrack motion(DrawnClip clip) {
        return motion(clip, clip.landmarks(), clip.calibratedView());
    }

    private static MotionTrack motion(DrawnClip clip, ClipLandmarks landmarks, RunwayView view) {
        return new MotionRepair(SegmentTable.of(Sex.UNSTATED), clip.jumper().statureM()).repair(landmarks, view);
    }

    static DrawnAttempt of(DrawnClip.Setup setup) {
        DrawnClip clip = new DrawnClip(setup);
        return of(clip, clip.landmarks(), clip.calibratedView());
    }

    static DrawnAttempt of(DrawnClip clip, ClipLandmarks landmarks, RunwayView view) {
        MotionTrack motion = motion(clip, landmarks, view);
        ContactTimeline found = new ContactDetector(view.isCalibrated(), Optional.empty()).detect(motion);
        return new DrawnAttempt(clip, motion, found);
    }

    /** A drawn drill, of which the pattern is known. */
    static DrawnAttempt of(DrawnClip clip, RunwayView view, Pattern pattern) {
        MotionTrack motion = motion(clip, clip.landmarks(), view);
        ContactTimeline found =
                new ContactDetector(view.isCalibrated(), Optional.empty(), Optional.of(pattern)).detect(motion);
        return new DrawnAttempt(clip, motion, found);
    }

    /** Board, hop landing, step landing and pit as drawn. */
    List<TrueContact> jump() {
        return clip.contacts().stream()
                .filter(c -> c.kind() != ContactKind.APPROACH)
                .toList();
    }

    Contact found(ContactKind kind) {
        return found.of(kind).orElseThrow(() -> new AssertionError("no " + kind + ": " + found.remarks()));
    }

    double touchdownErrorS(ContactKind kind) {
        double drawn = jump().stream()
                .filter(c -> c.kind() == kind)
                .findFirst()
                .orElseThrow()
                .touchdownS();
        return found(kind).touchdownS() - drawn;
    }
}
