package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.SequenceDecoder.Sequence;
import org.boardtopit.motion.MotionTrack;

/**
 * From the motion to the contacts of the attempt: candidates ({@link CandidateFinder}), the legal order ({@link
 * SequenceDecoder}), then the instants between the frames ({@link SupportFit}, {@link PitFit}).
 */
public final class ContactDetector {
    /** Weak priors of the support time, s: running strides, and the three contacts of the jump. */
    private static final double STRIDE_MEAN_S = 0.105;

    private static final double STRIDE_SD_S = 0.03;
    private static final double JUMP_MEAN_S = 0.135;
    private static final double JUMP_SD_S = 0.03;
    /** A margin over the next best order from which the order counts as sure, in log likelihood (a first guess). */
    private static final double SURE_MARGIN = 6;
    /**
     * Further apart than this and a frame the model and the ankle's speed tell of different things: the ends of a slow stretch
     * are known to a frame.
     */
    private static final double LARGEST_SHIFT_S = 0.045;
    /**
     * The network reads the toe of a standing foot this much short of the tip of the shoe (mean of 18 contacts of our
     * footage, sd 1.4 cm; a constant of the network that goes with small pictures, not with a shoe).
     */
    public static final double TOE_SHORT_STATURE = 0.009;

    /**
     * After a running stride the tip of the shoe stays within a centimetre of its place for some 8 ms before it is swept
     * away (seen in the truth of our footage), so that its leaving is told late.
     */
    private static final double STRIDE_TOE_LINGERS_S = 0.006;

    private static final double INTERVAL_90 = 1.645;
    /** An interval wider than this many frames tells no more than the nearest frame (domain notes, section 4c). */
    private static final double MOST_FRAMES = 1.5;

    private static final double TOE_SYSTEMATIC_SD_STATURE = 0.008;

    private final boolean calibrated;
    private final Optional<Foot> expectedFoot;

    /**
     * For one clip.
     *
     * @param calibrated true when the motion counts metres from the take-off line and the ground
     * @param expectedFoot take-off foot that the sheet tells
     */
    public ContactDetector(boolean calibrated, Optional<Foot> expectedFoot) {
        this.calibrated = calibrated;
        this.expectedFoot = expectedFoot;
    }

    /** The contacts; without a legal order only remarks, never an invented sequence. */
    public ContactTimeline detect(MotionTrack motion) {
        GroundLine ground = calibrated ? GroundLine.level() : GroundLine.underToes(motion);
        List<Candidate> candidates = new CandidateFinder(motion, ground).find();
        Optional<Sequence> decoded =
                new SequenceDecoder(calibrated, expectedFoot, motion.statureM()).decode(candidates);
        if (decoded.isEmpty()) {
            return new ContactTimeline(
                    List.of(),
                    0,
                    List.of("no three contacts in the order of a triple jump among " + candidates.size()
                            + " slow moments of the feet"));
        }
        return timed(motion, ground, decoded.get());
    }

    private ContactTimeline timed(MotionTrack motion, GroundLine ground, Sequence sequence) {
        List<String> remarks = new ArrayList<>();
        double confidence = confidence(sequence, remarks);
        Foot takeoff = sequence.takeoffFoot();
        List<Contact> contacts = new ArrayList<>();
        for (Candidate stride : sequence.approach()) {
            contacts.add(support(motion, ground, stride, ContactKind.APPROACH, stride.foot(), confidence));
        }
        contacts.add(support(motion, ground, sequence.board(), ContactKind.BOARD, takeoff, confidence));
        contacts.add(support(motion, ground, sequence.hopLanding(), ContactKind.HOP_LANDING, takeoff, confidence));
        contacts.add(
                support(motion, ground, sequence.stepLanding(), ContactKind.STEP_LANDING, takeoff.other(), confidence));
        sequence.pit().ifPresent(p -> contacts.add(pit(motion, p, confidence)));
        contacts.sort(Comparator.comparingDouble(Contact::touchdownS));
        return new ContactTimeline(contacts, confidence, remarks);
    }

    private double confidence(Sequence sequence, List<String> remarks) {
        double confidence = 1 / (1 + Math.exp(-sequence.margin() + SURE_MARGIN / 2));
        if (!sequence.feetAgree()) {
            remarks.add("left and right of one contact do not fit the legal order and were taken from the others");
            confidence *= 0.5;
        }
        if (sequence.pit().isEmpty()) {
            remarks.add("no landing in the pit was seen");
            confidence *= 0.5;
        }
        if (expectedFoot.isPresent() && expectedFoot.get() != sequence.takeoffFoot()) {
            remarks.add("the take-off foot differs from the sheet's");
            confidence *= 0.5;
        }
        return confidence;
    }

    private Contact support(
            MotionTrack motion,
            GroundLine ground,
            Candidate candidate,
            ContactKind kind,
            Foot label,
            double confidence) {
        SupportFit fit = kind == ContactKind.APPROACH
                ? new SupportFit(STRIDE_MEAN_S, STRIDE_SD_S)
                : new SupportFit(JUMP_MEAN_S, JUMP_SD_S);
        double largestShiftS = LARGEST_SHIFT_S + motion.frameStepS();
        double underfoot = calibrated ? ground.at(candidate.alongM()) : Double.NaN;
        Optional<SupportFit.Timed> timed = fit.fit(
                        motion, candidate.foot(), candidate.touchdownS(), candidate.toeOffS(), underfoot)
                .filter(t -> Math.abs(t.touchdownS() - candidate.touchdownS()) < largestShiftS
                        && Math.abs(t.toeOffS() - candidate.toeOffS()) < largestShiftS);
        double toe = timed.map(SupportFit.Timed::toeAlong).orElse(candidate.alongM())
                + TOE_SHORT_STATURE * motion.statureM();
        double toeSd = Math.hypot(
                timed.map(SupportFit.Timed::toeAlongSd).orElse(0.02 * motion.statureM()),
                TOE_SYSTEMATIC_SD_STATURE * motion.statureM());
        double own = confidence * candidate.strength();
        if (timed.isPresent()) {
            SupportFit.Timed t = timed.get();
            double toeOffSd =
                    kind == ContactKind.APPROACH ? Math.hypot(t.toeOffSdS(), STRIDE_TOE_LINGERS_S) : t.toeOffSdS();
            boolean frameLimited =
                    INTERVAL_90 * Math.max(t.touchdownSdS(), toeOffSd) > MOST_FRAMES * motion.frameStepS();
            return new Contact(
                    kind,
                    label,
                    t.touchdownS(),
                    t.touchdownSdS(),
                    t.toeOffS(),
                    toeOffSd,
                    toe,
                    toeSd,
                    own,
                    frameLimited);
        }
        double frame = motion.frameStepS();
        return new Contact(
                kind, label, candidate.touchdownS(), frame, candidate.toeOffS(), frame, toe, toeSd, own * 0.7, true);
    }

    private static Contact pit(MotionTrack motion, Candidate candidate, double confidence) {
        Optional<PitFit.Timed> timed = new PitFit()
                .fit(motion, candidate.touchdownS())
                .filter(t -> Math.abs(t.touchdownS() - candidate.touchdownS())
                        < 1.5 * (LARGEST_SHIFT_S + motion.frameStepS()));
        double frame = motion.frameStepS();
        return new Contact(
                ContactKind.PIT,
                Foot.BOTH,
                timed.map(PitFit.Timed::touchdownS).orElse(candidate.touchdownS()),
                timed.map(PitFit.Timed::touchdownSdS).orElse(frame),
                Double.NaN,
                Double.NaN,
                timed.map(PitFit.Timed::heelAlong).orElse(Double.NaN),
                timed.map(t -> Math.hypot(t.heelAlongSd(), 0.015 * motion.statureM()))
                        .orElse(Double.NaN),
                confidence * candidate.strength() * (timed.isPresent() ? 1 : 0.7),
                timed.isEmpty());
    }
}
