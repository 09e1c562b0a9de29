package org.boardtopit.frontal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.synthetic.DrawnFrontClip;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Drawn attempts (SYN, our own) whose clips from in front or behind begin at a known time of the side clip's clock. */
class ClockAlignmentTest {

    private static ClockOffset found(DrawnViews views, DrawnFrontClip other, Camera.View view)
            throws ClocksNotAlignedException {
        FrontalPlane plane = new FrontalPlane(other.landmarks().background(), Optional.empty(), view);
        return ClockAlignment.find(new FrontalTrack(other.landmarks(), plane), views.side());
    }

    /** Ten milliseconds are a third of what a tilt's own smoothing spans, and below a frame. */
    @ParameterizedTest(name = "{0}, seed {1}, begins at {2} s, {3} m beside, rolled by {4}")
    @CsvSource({
        "FRONT, 1, 0, -0.8, 0",
        "FRONT, 2, 0.4, 2, 0.05",
        "FRONT, 3, -0.7, 5, 0",
        "FRONT, 4, 0.25, -1.5, -0.04",
        "REAR, 1, 0.3, 1, 0",
        "REAR, 5, 0.2, -3, 0.03"
    })
    void findsTheOffsetOfTheClocks(Camera.View view, long seed, double beginsAtS, double acrossM, double rollRad)
            throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(seed);
        DrawnFrontClip other = views.drawn(
                DrawnFrontClip.camera(view, acrossM, rollRad),
                t -> 0,
                beginsAtS,
                views.clip().jumper().endS());
        ClockOffset offset = found(views, other, view);
        assertEquals(-beginsAtS, offset.seconds(), 0.010);
        assertTrue(Math.abs(offset.seconds() + beginsAtS) < 3 * offset.sdS(), "sd " + offset.sdS());
    }

    @Test
    void alignsAClipThatEndsBeforeThePit() throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(6);
        double end = views.contact(ContactKind.STEP_LANDING).toeOffS() + 0.25;
        DrawnFrontClip other = views.drawn(DrawnFrontClip.camera(Camera.View.FRONT, 0.5, 0), t -> 0, 0.1, end);
        assertEquals(-0.1, found(views, other, Camera.View.FRONT).seconds(), 0.010);
    }

    @Test
    void refusesAClipOfTheRunUpOnly() {
        DrawnViews views = DrawnViews.of(7);
        double end = views.contact(ContactKind.BOARD).touchdownS();
        DrawnFrontClip other = views.drawn(DrawnFrontClip.camera(Camera.View.FRONT, 0.5, 0), t -> 0, 0, end);
        assertThrows(ClocksNotAlignedException.class, () -> found(views, other, Camera.View.FRONT));
    }

    @Test
    void refusesAClipOfAnotherAttempt() {
        DrawnViews views = DrawnViews.of(1);
        DrawnFrontClip other = DrawnViews.of(2).front(t -> 0);
        assertThrows(ClocksNotAlignedException.class, () -> found(views, other, Camera.View.FRONT));
    }

    @Test
    void refusesASideClipWithoutContacts() {
        DrawnViews views = DrawnViews.of(1);
        SideMotion blind = new SideMotion(views.side().motion(), new ContactTimeline(List.of(), 0, List.of()), true);
        DrawnFrontClip other = views.front(t -> 0);
        assertThrows(
                ClocksNotAlignedException.class,
                () -> found(new DrawnViews(views.clip(), blind), other, Camera.View.FRONT));
    }

    @Test
    void aTouchdownThatAPersonPutRightDoesNotMoveTheClock() throws ClocksNotAlignedException {
        DrawnViews views = DrawnViews.of(1);
        DrawnFrontClip other = views.front(t -> 0);
        SideMotion side = views.side();
        List<Contact> contacts = new ArrayList<>(side.contacts().contacts());
        int last = contacts.size() - 1;
        Contact pit = contacts.get(last);
        contacts.set(last, pit.timed(pit.touchdownS() + 0.05, 0.005, pit.toeOffS(), pit.toeOffSdS()));
        SideMotion corrected =
                new SideMotion(side.motion(), new ContactTimeline(contacts, 1, List.of()), side.contacts(), true);
        assertEquals(
                found(views, other, Camera.View.FRONT),
                found(new DrawnViews(views.clip(), corrected), other, Camera.View.FRONT));
    }
}
