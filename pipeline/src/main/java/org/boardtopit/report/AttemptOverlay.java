package org.boardtopit.report;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.Clip;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.overlay.AngleCallout;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.OverlayWords;
import org.boardtopit.report.overlay.PhaseSpan;
import org.boardtopit.report.overlay.PosePoint;
import org.boardtopit.report.overlay.TouchdownFigure;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.wording.Language;

/**
 * What the overlay of one attempt shows: the repaired skeleton, contacts on the runway, phases, angles at each touchdown.
 *
 * <p>The video keeps the clip's own times, so measured times are stretched by the slow-down of a slow-motion file.
 */
public final class AttemptOverlay {
    private final Clip clip;
    private final ClipLandmarks landmarks;
    private final RunwayView view;
    private final FittedMotion fitted;
    private final MotionTrack motion;
    private final AttemptMeasures measures;
    private final double slowDown;
    private final Language language;
    private final OverlayWords words;

    /** For one measured clip. */
    public AttemptOverlay(
            Clip clip,
            ClipLandmarks landmarks,
            RunwayView view,
            FittedMotion fitted,
            AttemptMeasures measures,
            double slowDown,
            Language language) {
        this.clip = clip;
        this.landmarks = landmarks;
        this.view = view;
        this.fitted = fitted;
        this.motion = fitted.repaired();
        this.measures = measures;
        this.slowDown = slowDown;
        this.language = language;
        this.words = new OverlayWords(language);
    }

    /** The scene, ready to be painted. */
    public OverlayScene scene() {
        List<FramePose> frames = new ArrayList<>();
        for (int f = 0; f < motion.frameCount(); f++) {
            frames.add(pose(f));
        }
        long last = landmarks.timestampsUs().get(landmarks.frameCount() - 1);
        return new OverlayScene(
                titles(),
                List.of(words.quality(measures.quality())),
                playUs((last + Math.round(1e6 * motion.frameStepS())) / 1e6),
                landmarks.subject().direction() > 0,
                phases(),
                marks(),
                figures(frames),
                frames,
                OverlayScene.CloseView.AUTO,
                language);
    }

    private long playUs(double seconds) {
        return Math.round(seconds * slowDown * 1e6);
    }

    private List<String> titles() {
        Optional<AttemptEntry> entry = clip.entry();
        if (entry.isEmpty()) {
            return List.of(clip.name());
        }
        AttemptEntry e = entry.get();
        // Never the name: a picture that is passed on must not tell who a young athlete is.
        boolean pseudonym = e.bib().equals(e.athlete());
        String who = e.bib().isBlank() ? clip.name() : pseudonym ? e.bib() : words.bib(e.bib());
        String attempt = e.attempt().isPresent() ? words.attempt(e.attempt().getAsInt()) : "";
        String distance = Double.isFinite(e.officialM()) ? words.metres(e.officialM()) : "";
        String line = String.join("  ", List.of(attempt, distance)).strip();
        return line.isEmpty() ? List.of(who) : List.of(who, line);
    }

    private FramePose pose(int frame) {
        long us = playUs(motion.timeS(frame));
        Optional<Homography> fixedToFrame = landmarks.background().frame(frame).registered()
                ? Optional.of(landmarks.background().fromFixed(frame))
                : Optional.empty();
        if (landmarks.poses().at(frame).isEmpty()) {
            return FramePose.withoutAthlete(frame, us, fixedToFrame);
        }
        double metresPerPx = view.metresPerPixel(
                frame,
                landmarks
                        .subject()
                        .at(frame)
                        .map(s -> new Point2(s.centreXPx(), s.centreYPx()))
                        .orElse(new Point2(0, 0)));
        List<PosePoint> points = new ArrayList<>();
        for (int i = 0; i < BodyPoint.COUNT; i++) {
            Point2 px = px(frame, BodyPoint.at(i));
            points.add(
                    px.isKnown()
                            ? new PosePoint(px, motion.sd(frame, BodyPoint.at(i)) / metresPerPx)
                            : PosePoint.UNKNOWN);
        }
        BodySide near = view.seenFromLeft() ? BodySide.LEFT : BodySide.RIGHT;
        return new FramePose(frame, us, points, near, fixedToFrame);
    }

    /** The fitted point, from which the angles are read; where nothing was fitted, the repaired one. */
    private Point2 px(int frame, BodyPoint point) {
        Point2 seen = motion.px(frame, point);
        if (!seen.isKnown() || !fitted.isFitted(frame, point)) {
            return seen;
        }
        return view.inFrame(frame, fitted.place(frame, point), motion.acrossM(point));
    }

    private List<PhaseSpan> phases() {
        List<PhaseSpan> spans = new ArrayList<>();
        for (PhaseMeasures p : measures.phases()) {
            long start = playUs(p.phase().startS());
            long end = playUs(p.phase().endS());
            if (end > start) {
                spans.add(new PhaseSpan(p.phase().name(), words.phase(p.phase()), start, end, note(p)));
            }
        }
        return spans;
    }

    private String note(PhaseMeasures p) {
        String metres = p.distanceM().isKnown() ? words.metres(p.distanceM().value()) : "";
        String share = p.sharePct().isKnown() ? words.perCent(p.sharePct().value()) : "";
        return (metres + "  " + share).strip();
    }

    private List<ContactMark> marks() {
        List<ContactMark> marks = new ArrayList<>();
        for (int i = 0; i < measures.contacts().size(); i++) {
            Contact c = measures.contacts().get(i).contact();
            Point2 place = place(c);
            mark(i, ContactMark.Instant.TOUCHDOWN, place, c.touchdownS()).ifPresent(marks::add);
            mark(i, ContactMark.Instant.TOE_OFF, place, c.toeOffS()).ifPresent(marks::add);
        }
        marks.sort((a, b) -> Long.compare(a.timeUs(), b.timeUs()));
        return marks;
    }

    private Optional<ContactMark> mark(int i, ContactMark.Instant instant, Point2 place, double atS) {
        if (!Double.isFinite(atS)) {
            return Optional.empty();
        }
        Contact c = measures.contacts().get(i).contact();
        ContactMark mark = c.kind() == ContactKind.APPROACH
                ? ContactMark.small(instant, place, playUs(atS))
                : ContactMark.labelled(name(i), words.foot(c.foot()), instant, place, playUs(atS), words);
        return Optional.of(c.corrected() ? mark.withCorrectedSign() : mark);
    }

    /** Of a contact by its place in the list. */
    private String name(int i) {
        return words.contact(measures.contacts().get(i).contact().kind(), i);
    }

    /** The foot on the ground in the fixed picture: through the ground with marks, else where the toe was seen. */
    private Point2 place(Contact contact) {
        if (view.isCalibrated() && Double.isFinite(contact.toeAlongM())) {
            double across = contact.foot() == Foot.LEFT ? 0.08 : contact.foot() == Foot.RIGHT ? -0.08 : 0;
            return view.inFixedPicture(new Point2(contact.toeAlongM(), 0), across);
        }
        boolean wholeSeen = Double.isFinite(contact.supportTimeS());
        double end = Double.isFinite(contact.touchdownS()) ? contact.touchdownS() : contact.toeOffS();
        double middle = wholeSeen ? (contact.touchdownS() + contact.toeOffS()) / 2 : end;
        int frame = motion.nearestFrame(middle);
        BodyPoint toe = contact.foot() == Foot.RIGHT ? BodyPoint.RIGHT_TOE : BodyPoint.LEFT_TOE;
        Point2 px = motion.px(frame, toe);
        return px.isKnown() ? landmarks.background().toFixed(frame, px) : Point2.UNKNOWN;
    }

    private List<TouchdownFigure> figures(List<FramePose> frames) {
        List<TouchdownFigure> figures = new ArrayList<>();
        for (int i = 0; i < measures.contacts().size(); i++) {
            ContactMeasures m = measures.contacts().get(i);
            Contact c = m.contact();
            if (c.kind() == ContactKind.APPROACH || !Double.isFinite(c.touchdownS())) {
                continue;
            }
            FramePose pose = frames.get(motion.nearestFrame(c.touchdownS()));
            Foot foot = c.foot() == Foot.BOTH ? Foot.LEFT : c.foot();
            BodySide side = foot == Foot.LEFT ? BodySide.LEFT : BodySide.RIGHT;
            List<AngleCallout> angles = new ArrayList<>();
            AngleCallout.trunk(pose, m.atTouchdown(BodyAngle.TRUNK).value()).ifPresent(angles::add);
            AngleCallout.hip(pose, side, m.atTouchdown(BodyAngle.HIP).value()).ifPresent(angles::add);
            AngleCallout.knee(pose, side, m.atTouchdown(BodyAngle.KNEE).value()).ifPresent(angles::add);
            String title = words.figure(name(i), c.foot()) + (c.corrected() ? ContactMark.CORRECTED : "");
            figures.add(new TouchdownFigure(title, playUs(c.touchdownS()), pose, angles));
        }
        return figures;
    }
}
