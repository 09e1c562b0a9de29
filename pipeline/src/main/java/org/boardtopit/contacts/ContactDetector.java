package org.boardtopit.contacts;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import org.boardtopit.clips.Pattern;
import org.boardtopit.clips.TakeoffFoot;
import org.boardtopit.contacts.SequenceDecoder.Sequence;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.signal.OrderStatistics;

/**
 * From the motion to the contacts of the attempt: candidates ({@link CandidateFinder}), the legal order ({@link
 * SequenceDecoder}) or the pattern of a drill ({@link PatternDecoder}), then the instants between the frames ({@link SupportFit}, {@link PitFit}).
 */
public final class ContactDetector {
    /** Weak priors of the support time, s: running strides, and the three contacts of the jump. */
    private static final double STRIDE_MEAN_S = 0.105;

    private static final double STRIDE_SD_S = 0.03;
    private static final double JUMP_MEAN_S = 0.135;
    private static final double JUMP_SD_S = 0.03;
    /** Of drills, from a fast hop to a slow skip (0.1 to 0.5 s; common practice, no source). */
    private static final double DRILL_MEAN_S = 0.19;

    private static final double DRILL_SD_S = 0.09;
    /** Of a foot that stands beyond what is seen, so much is looked at. */
    private static final double STANDING_S = 0.25;
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

    /**
     * In a drill the foot leaves more gently, in a slow one much more so: what the model's own uncertainty leaves out (drawn
     * drills: errors of touchdowns of 2 to 7 ms, of toe-offs of 4 to 10 ms, of 25 to 30 ms in skips at 1 to 2 m/s).
     */
    private static final double DRILL_TOUCHDOWN_SD_S = 0.004;

    private static final double DRILL_TOE_OFF_SD_S = 0.007;
    private static final double SLOW_DRILL_TOE_OFF_SD_S = 0.025;
    private static final double SLOW_DRILL_MS = 2;
    private static final double INTERVAL_90 = 1.645;
    /** An interval wider than this many frames tells no more than the nearest frame (domain notes, section 4c). */
    private static final double MOST_FRAMES = 1.5;

    private static final double TOE_SYSTEMATIC_SD_STATURE = 0.008;
    private static final double PIT_SYSTEMATIC_SD_STATURE = 0.015;
    /** Of a toe that is taken as it is seen, without the model of a support. */
    private static final double SEEN_TOE_SD_STATURE = 0.02;

    private static final List<ContactKind> TRIPLE_JUMP =
            List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING);

    private final boolean calibrated;
    private final Optional<Foot> expectedFoot;
    private final Optional<Pattern> pattern;

    /**
     * For one clip with a triple jump.
     *
     * @param calibrated true when the motion counts metres from the take-off line and the ground
     * @param expectedFoot take-off foot that the sheet tells
     */
    public ContactDetector(boolean calibrated, Optional<Foot> expectedFoot) {
        this(calibrated, expectedFoot, Optional.empty());
    }

    /**
     * For one clip.
     *
     * @param calibrated true when the motion counts metres from the take-off line and the ground
     * @param expectedFoot foot of the first contact of triple jump or drill that the sheet tells
     * @param pattern what the clip shows; empty for a triple jump from the board
     */
    public ContactDetector(boolean calibrated, Optional<Foot> expectedFoot, Optional<Pattern> pattern) {
        this.calibrated = calibrated;
        this.expectedFoot = expectedFoot;
        this.pattern = pattern;
    }

    /** The contacts; without a legal order only remarks, never an invented sequence. */
    public ContactTimeline detect(MotionTrack motion) {
        GroundLine ground = calibrated ? GroundLine.level() : GroundLine.underToes(motion);
        if (pattern.isPresent()) {
            return detectPattern(motion, ground, pattern.get());
        }
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
        SupportFit strides = new SupportFit(STRIDE_MEAN_S, STRIDE_SD_S);
        SupportFit jump = new SupportFit(JUMP_MEAN_S, JUMP_SD_S);
        List<Contact> contacts = new ArrayList<>();
        for (Candidate stride : sequence.approach()) {
            contacts.add(support(motion, ground, stride, ContactKind.APPROACH, stride.foot(), strides, confidence));
        }
        contacts.add(support(motion, ground, sequence.board(), ContactKind.BOARD, takeoff, jump, confidence));
        contacts.add(
                support(motion, ground, sequence.hopLanding(), ContactKind.HOP_LANDING, takeoff, jump, confidence));
        contacts.add(support(
                motion, ground, sequence.stepLanding(), ContactKind.STEP_LANDING, takeoff.other(), jump, confidence));
        sequence.pit().ifPresent(p -> contacts.add(pit(motion, p, confidence)));
        contacts.sort(Comparator.comparingDouble(Contact::touchdownS));
        return new ContactTimeline(contacts, confidence, remarks);
    }

    private double confidence(Sequence sequence, List<String> remarks) {
        double confidence = sureness(sequence.margin());
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

    /** How much later than at once a foot seems to leave, 1 SD. */
    private double lingersS(MotionTrack motion, ContactKind kind) {
        if (pattern.isPresent()) {
            boolean slow = CandidateFinder.runningSpeed(motion) < SLOW_DRILL_MS;
            return slow ? SLOW_DRILL_TOE_OFF_SD_S : DRILL_TOE_OFF_SD_S;
        }
        return kind == ContactKind.APPROACH ? STRIDE_TOE_LINGERS_S : 0;
    }

    private ContactTimeline detectPattern(MotionTrack motion, GroundLine ground, Pattern expected) {
        List<Candidate> candidates = CandidateFinder.ofDrill(motion, ground).find();
        Optional<TakeoffFoot> first = expectedFoot.map(f -> f == Foot.LEFT ? TakeoffFoot.LEFT : TakeoffFoot.RIGHT);
        Optional<PatternDecoder.Found> found =
                new PatternDecoder(expected, first, motion.statureM()).decode(candidates);
        if (found.isEmpty()) {
            return new ContactTimeline(
                    List.of(),
                    0,
                    List.of("the pattern " + expected + " does not fit the " + candidates.size()
                            + " slow moments of the feet that were seen: check it on the sheet, and film every contact"
                            + " of the drill with both feet in view"),
                    pattern);
        }
        return timed(motion, ground, expected, found.get(), candidates);
    }

    private ContactTimeline timed(
            MotionTrack motion,
            GroundLine ground,
            Pattern expected,
            PatternDecoder.Found found,
            List<Candidate> candidates) {
        List<String> remarks = new ArrayList<>();
        double confidence = sureness(found.margin(expected.isSkip()));
        if (confidence < 0.5) {
            remarks.add(
                    "the pattern " + expected + " fits nearly as well elsewhere in the clip: cut the clip to the drill,"
                            + " or write all its contacts as feet");
        }
        double feet = 1;
        if (found.wrongFeet() > 0) {
            remarks.add((found.wrongFeet() == 1 ? "one contact was" : found.wrongFeet() + " contacts were")
                    + " seen on the other foot than the pattern " + expected + " says");
            feet = 0.5;
        }
        SupportFit fit = new SupportFit(DRILL_MEAN_S, DRILL_SD_S);
        List<Contact> contacts = new ArrayList<>();
        for (Candidate stride : found.approach()) {
            contacts.add(support(motion, ground, stride, ContactKind.APPROACH, stride.foot(), fit, feet * confidence));
        }
        for (int i = 0; i < found.contacts().size(); i++) {
            Candidate candidate = found.contacts().get(i);
            double own = feet * sureness(found.margins().get(i));
            boolean last = i == found.contacts().size() - 1;
            if (found.feet().get(i) != Foot.BOTH) {
                ContactKind kind = expected.isTripleJump() ? TRIPLE_JUMP.get(i) : ContactKind.DRILL;
                contacts.add(
                        support(motion, ground, candidate, kind, found.feet().get(i), fit, own));
            } else if (last) {
                contacts.add(pit(motion, candidate, own));
            } else {
                contacts.add(onBoth(motion, ground, candidate, candidates, fit, own));
            }
        }
        return new ContactTimeline(contacts, feet * confidence, remarks, pattern);
    }

    private static double sureness(double margin) {
        return 1 / (1 + Math.exp(-margin + SURE_MARGIN / 2));
    }

    /** From the first foot's touch to the last one's; where the rear foot stands. */
    private Contact onBoth(
            MotionTrack motion,
            GroundLine ground,
            Candidate candidate,
            List<Candidate> candidates,
            SupportFit fit,
            double confidence) {
        Contact one = support(motion, ground, candidate, ContactKind.DRILL, Foot.BOTH, fit, confidence);
        Optional<Candidate> partner = PatternDecoder.partner(candidates, candidate);
        if (partner.isEmpty()) {
            return one;
        }
        Contact two = support(motion, ground, partner.get(), ContactKind.DRILL, Foot.BOTH, fit, confidence);
        Contact first = one.touchdownS() > two.touchdownS() ? two : one;
        Contact last = one.toeOffS() < two.toeOffS() ? two : one;
        Contact rear = one.toeAlongM() > two.toeAlongM() ? two : one;
        return new Contact(
                ContactKind.DRILL,
                Foot.BOTH,
                first.touchdownS(),
                first.touchdownSdS(),
                last.toeOffS(),
                last.toeOffSdS(),
                rear.toeAlongM(),
                rear.toeAlongSdM(),
                confidence * Math.max(candidate.strength(), partner.get().strength()),
                one.frameLimited() || two.frameLimited());
    }

    private Contact support(
            MotionTrack motion,
            GroundLine ground,
            Candidate candidate,
            ContactKind kind,
            Foot label,
            SupportFit fit,
            double confidence) {
        // Of a foot that stands beyond what is seen, only the end that is seen is timed.
        double fromS = candidate.fromFirst()
                ? Math.max(candidate.touchdownS(), candidate.toeOffS() - STANDING_S)
                : candidate.touchdownS();
        double toS = candidate.toLast() ? Math.min(candidate.toeOffS(), fromS + STANDING_S) : candidate.toeOffS();
        double largestShiftS = LARGEST_SHIFT_S + motion.frameStepS();
        double underfoot = calibrated && !candidate.fromFirst() ? ground.at(candidate.alongM()) : Double.NaN;
        Optional<SupportFit.Timed> timed = fit.fit(motion, candidate.foot(), fromS, toS, underfoot)
                .filter(t -> candidate.fromFirst() || Math.abs(t.touchdownS() - fromS) < largestShiftS)
                .filter(t -> candidate.toLast() || Math.abs(t.toeOffS() - toS) < largestShiftS);
        double toe = timed.map(SupportFit.Timed::toeAlong).orElse(candidate.alongM())
                + TOE_SHORT_STATURE * motion.statureM();
        double toeSd = Math.hypot(
                timed.map(SupportFit.Timed::toeAlongSd).orElse(SEEN_TOE_SD_STATURE * motion.statureM()),
                TOE_SYSTEMATIC_SD_STATURE * motion.statureM());
        double own = confidence * candidate.strength();
        double frame = motion.frameStepS();
        double touchdown = timed.map(SupportFit.Timed::touchdownS).orElse(fromS);
        double touchdownSd = Math.hypot(
                timed.map(SupportFit.Timed::touchdownSdS).orElse(frame),
                timed.isPresent() && pattern.isPresent() ? DRILL_TOUCHDOWN_SD_S : 0);
        double toeOff = timed.map(SupportFit.Timed::toeOffS).orElse(toS);
        double lingers = timed.isEmpty() ? 0 : lingersS(motion, kind);
        double toeOffSd = Math.hypot(timed.map(SupportFit.Timed::toeOffSdS).orElse(frame), lingers);
        boolean frameLimited =
                timed.isEmpty() || INTERVAL_90 * Math.max(touchdownSd, toeOffSd) > MOST_FRAMES * motion.frameStepS();
        double unknown = Double.NaN;
        return new Contact(
                kind,
                label,
                candidate.fromFirst() ? unknown : touchdown,
                candidate.fromFirst() ? unknown : touchdownSd,
                candidate.toLast() ? unknown : toeOff,
                candidate.toLast() ? unknown : toeOffSd,
                toe,
                toeSd,
                timed.isPresent() ? own : own * 0.7,
                frameLimited);
    }

    /**
     * A contact at the instants at which a person saw it; its place from the foot as the motion has it between them.
     *
     * @param toeOffS NaN for the pit
     * @param sdS of the instants
     */
    public Contact seen(
            MotionTrack motion, ContactKind kind, Foot foot, double touchdownS, double toeOffS, double sdS) {
        double stature = motion.statureM();
        double place;
        double placeSd;
        if (kind == ContactKind.PIT) {
            Optional<PitFit.Timed> heel = new PitFit().fit(motion, touchdownS);
            place = heel.map(PitFit.Timed::heelAlong).orElse(Double.NaN);
            placeSd = heel.map(t -> Math.hypot(t.heelAlongSd(), PIT_SYSTEMATIC_SD_STATURE * stature))
                    .orElse(Double.NaN);
        } else {
            GroundLine ground = calibrated ? GroundLine.level() : GroundLine.underToes(motion);
            double toe = toeAlong(motion, foot, touchdownS, toeOffS);
            Optional<SupportFit.Timed> stance = new SupportFit(JUMP_MEAN_S, JUMP_SD_S)
                    .fit(motion, foot, touchdownS, toeOffS, calibrated ? ground.at(toe) : Double.NaN)
                    .filter(t -> Math.abs(t.toeAlong() - toe) < 2 * SEEN_TOE_SD_STATURE * stature);
            place = stance.map(SupportFit.Timed::toeAlong).orElse(toe) + TOE_SHORT_STATURE * stature;
            placeSd = Math.hypot(
                    stance.map(SupportFit.Timed::toeAlongSd).orElse(SEEN_TOE_SD_STATURE * stature),
                    TOE_SYSTEMATIC_SD_STATURE * stature);
        }
        boolean leaves = Double.isFinite(toeOffS);
        double leavesSd = leaves ? sdS : Double.NaN;
        return new Contact(kind, foot, touchdownS, sdS, toeOffS, leavesSd, place, placeSd, 1, false, true);
    }

    /** Middle place of the toe between two instants; NaN where it is not seen. */
    private static double toeAlong(MotionTrack motion, Foot foot, double fromS, double toS) {
        int first = motion.frameAtOrAfter(fromS);
        int end = Math.max(first + 1, motion.frameAtOrAfter(toS));
        double[] toes = IntStream.range(first, Math.min(end, motion.frameCount()))
                .mapToDouble(f -> motion.seen(f, foot.toe()).x())
                .filter(Double::isFinite)
                .toArray();
        return toes.length == 0 ? Double.NaN : OrderStatistics.median(toes);
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
                timed.map(t -> Math.hypot(t.heelAlongSd(), PIT_SYSTEMATIC_SD_STATURE * motion.statureM()))
                        .orElse(Double.NaN),
                confidence * candidate.strength() * (timed.isPresent() ? 1 : 0.7),
                timed.isEmpty());
    }
}
