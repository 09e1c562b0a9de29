package org.boardtopit.report.comparison;

import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.tables.IntervalRow;

/**
 * One of the two attempts of a comparison, as far as it was measured.
 *
 * @param name of the clip
 * @param scene of the clip's overlay: what the clip is called and the athlete's points in each frame
 * @param intervals the rows of the attempt in intervals.csv
 */
public record ComparedAttempt(
        String name,
        ClipLandmarks landmarks,
        RunwayView view,
        FittedMotion fitted,
        AttemptMeasures measures,
        OverlayScene scene,
        List<IntervalRow> intervals) {

    public ComparedAttempt {
        intervals = List.copyOf(intervals);
    }

    MotionTrack motion() {
        return fitted.repaired();
    }

    List<Contact> contacts() {
        return measures.contacts().stream().map(ContactMeasures::contact).toList();
    }

    Optional<Contact> contact(ContactKind kind, int number) {
        List<Contact> ofKind = contacts().stream().filter(c -> c.kind() == kind).toList();
        return number < ofKind.size() ? Optional.of(ofKind.get(number)) : Optional.empty();
    }

    /** The contact from which jump or drill begins. */
    Optional<Contact> first() {
        return contacts().stream()
                .filter(c -> c.kind() != ContactKind.APPROACH && Double.isFinite(c.touchdownS()))
                .findFirst();
    }

    /** When its contacts begin and end. */
    AttemptInstants instants() {
        int first = 0;
        int last = landmarks.frameCount() - 1;
        while (first < last && !isSeen(first)) {
            first++;
        }
        while (last > first && !isSeen(last)) {
            last--;
        }
        double firstS = landmarks.timeS(first);
        return AttemptInstants.of(contacts(), firstS, Math.max(landmarks.timeS(last), firstS + landmarks.frameStepS()));
    }

    private boolean isSeen(int frame) {
        return pose(frame).bounds().isPresent();
    }

    /** Where the athlete is in a frame. */
    FramePose pose(int frame) {
        return scene.frame(frame).orElseThrow();
    }

    /** Frames a second at which the camera looked. */
    double fps() {
        return 1 / landmarks.frameStepS();
    }

    boolean runsToTheRight() {
        return landmarks.subject().direction() > 0;
    }
}
