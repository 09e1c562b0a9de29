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
 */
public record AttemptAnalysis(
        RunwayView view, Optional<FoundCamera> found, FittedMotion fitted, AttemptMeasures measures) {

    /** The same with other measures. */
    AttemptAnalysis with(AttemptMeasures others) {
        return new AttemptAnalysis(view, found, fitted, others);
    }

    /** What a clip from another view needs to know of this one from the side. */
    SideMotion sideMotion() {
        ContactTimeline contacts = new ContactTimeline(
                measures.contacts().stream().map(ContactMeasures::contact).toList(), 1, List.of());
        return new SideMotion(fitted, contacts, view.isCalibrated());
    }
}
