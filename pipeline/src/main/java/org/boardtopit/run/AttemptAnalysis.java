package org.boardtopit.run;

import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.frontal.SideMotion;
import org.boardtopit.ground.FoundCamera;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.ContactMeasures;

/**
 * What the cheap half of the pipeline yields for one clip: where the camera looks, the motion (repaired and
 * fitted), the measures.
 *
 * @param found the camera of the view, when it was found from the run
 * @param fitted the motion at the instants at which the program found the contacts
 * @param drawn the same at the instants that a person put right, for pictures; without corrections the same
 * @param asFound the contacts before any correction, by whose numbers corrections go
 * @param called those that there are, at the instants at which they were found
 */
public record AttemptAnalysis(
        RunwayView view,
        Optional<FoundCamera> found,
        FittedMotion fitted,
        FittedMotion drawn,
        ContactTimeline asFound,
        ContactTimeline called,
        AttemptMeasures measures) {

    /** The same with other measures. */
    AttemptAnalysis with(AttemptMeasures others) {
        return new AttemptAnalysis(view, found, fitted, drawn, asFound, called, others);
    }

    /** What a clip from another view needs to know of this one from the side. */
    SideMotion sideMotion() {
        ContactTimeline contacts = new ContactTimeline(
                measures.contacts().stream().map(ContactMeasures::contact).toList(), 1, List.of());
        return new SideMotion(fitted, contacts, called, view.isCalibrated());
    }
}
