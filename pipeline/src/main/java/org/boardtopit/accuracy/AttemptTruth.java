package org.boardtopit.accuracy;

import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.signal.Point2;

/**
 * All that is known of a clip: {@code docs/inputs.md} describes the two files it is read from.
 *
 * @param landingS first touch in the pit
 * @param markM the mark in the sand, from the take-off line
 * @param phasesM hop, step, jump
 * @param groundMarks points of the ground (along, across)
 * @param cameras one for a camera that stands still, else one for each frame
 */
record AttemptTruth(
        int widthPx,
        int heightPx,
        double statureM,
        List<ContactTruth> contacts,
        double landingS,
        double markM,
        List<Double> phasesM,
        List<Point2> groundMarks,
        List<CameraTruth> cameras,
        List<FrameTruth> frames) {

    private static final double APPROACH_M = 5;

    AttemptTruth {
        contacts = List.copyOf(contacts);
        phasesM = List.copyOf(phasesM);
        groundMarks = List.copyOf(groundMarks);
        cameras = List.copyOf(cameras);
        frames = List.copyOf(frames);
        if (cameras.size() != 1 && cameras.size() != frames.size()) {
            throw new IllegalArgumentException("camera must have one entry or one for each of the " + frames.size()
                    + " frames, was " + cameras.size());
        }
        for (ContactKind kind :
                new ContactKind[] {ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING}) {
            if (contacts.stream().filter(c -> c.kind() == kind).count() != 1) {
                throw new IllegalArgumentException("contacts must have one " + kind.label());
            }
        }
    }

    /** True when the points are known in metres, too. */
    boolean knowsPlaces() {
        int all = frames.get(0).points().size();
        return frames.stream().allMatch(f -> f.places().size() == all);
    }

    ContactTruth contact(ContactKind kind) {
        return contacts.stream().filter(c -> c.kind() == kind).findFirst().orElseThrow();
    }

    CameraTruth camera(int frame) {
        return cameras.get(cameras.size() == 1 ? 0 : frame);
    }

    double effectiveM() {
        return phasesM.stream().mapToDouble(p -> p).sum();
    }

    double sharePct(int phase) {
        return 100 * phasesM.get(phase) / effectiveM();
    }

    /** Largest share less the next. */
    double leadPct() {
        double[] sorted = {sharePct(0), sharePct(1), sharePct(2)};
        java.util.Arrays.sort(sorted);
        return sorted[2] - sorted[1];
    }

    boolean inPicture(Point2 px) {
        return px.x() >= 0 && px.x() <= widthPx && px.y() >= 0 && px.y() <= heightPx;
    }

    /** True when the whole of a contact happens in the picture. */
    boolean isSeen(ContactTruth contact) {
        return isSeen(contact, contact.touchdownS()) && isSeen(contact, contact.toeOffS());
    }

    private boolean isSeen(ContactTruth contact, double timeS) {
        int frame = frameAtOrAfter(timeS);
        return timeS >= 0
                && frame < frames.size()
                && inPicture(camera(frame).project(contact.toeAlongM(), contact.toeAcrossM(), 0));
    }

    private int frameAtOrAfter(double timeS) {
        int frame = 0;
        while (frame < frames.size() && frames.get(frame).timeS() < timeS) {
            frame++;
        }
        return frame;
    }

    /** Mean speed of the centre of mass over the last 5 m before the touchdown on the board; empty when they are not whole. */
    Optional<Double> approachSpeedMs() {
        ContactTruth board = contact(ContactKind.BOARD);
        double end = board.touchdown().comAlongM();
        double start = end - APPROACH_M;
        for (int f = Math.min(frameAtOrAfter(board.touchdownS()), frames.size()) - 1; f > 0; f--) {
            FrameTruth ahead = frames.get(f);
            FrameTruth behind = frames.get(f - 1);
            if (behind.comAlongM() <= start && ahead.comAlongM() > start) {
                double share = (start - behind.comAlongM()) / (ahead.comAlongM() - behind.comAlongM());
                double startS = behind.timeS() + share * (ahead.timeS() - behind.timeS());
                return Optional.of(APPROACH_M / (board.touchdownS() - startS));
            }
        }
        return Optional.empty();
    }
}
