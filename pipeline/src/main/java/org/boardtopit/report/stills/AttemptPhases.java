package org.boardtopit.report.stills;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.wording.Words;

/**
 * The runway in the fixed picture with the athlete at every contact and in every flight. All is laid out before the first frame
 * is seen: the measured points say how large the picture must be.
 */
final class AttemptPhases {
    private static final double WIDTH_PX = 1600;
    /** As many pixels as are held for each figure until the clip ends, 3 MB. */
    private static final double MOST_PX = 1e6;
    /** An athlete who is small in the clip is not blown up beyond this. */
    private static final double MOST_SCALE = 2.5;

    private static final int MOST_FIGURES = 12;
    /** Around the measured points, in standing heights: hair, hands and shoes, and a stretch of runway at both ends. */
    private static final double ROOM_ABOVE = 0.25;

    private static final double ROOM_BELOW = 0.3;
    private static final double ROOM_BESIDE = 0.45;
    /** How far from the middle of the runway a foot lands; nobody sees the difference from the side. */
    private static final double FOOT_ACROSS_M = 0.08;

    private final RunwayView view;
    private final MotionTrack motion;
    private final AttemptMeasures measures;
    private final OverlayScene overlay;
    private final Words words;
    private final Values values;
    private final StillPlaces places;

    AttemptPhases(RunwayView view, FittedMotion fitted, AttemptMeasures measures, OverlayScene overlay, Words words) {
        this.view = view;
        this.motion = fitted.repaired();
        this.measures = measures;
        this.overlay = overlay;
        this.words = words;
        this.values = new Values(words);
        this.places = new StillPlaces(view, fitted, measures.scaleSource());
    }

    /** Such as {@code hop} or, in a drill, {@code hop 2}. */
    static String name(Words words, Phase phase) {
        String word = words.get("phase." + phase.name().label());
        return phase.number() == 0 ? word : word + " " + phase.number();
    }

    /** Empty when the athlete was seen at no contact. */
    Optional<PhasesScene> scene() {
        List<Integer> frames = frames();
        Optional<Box> extent = frames.stream().map(this::extent).reduce(Box::joined);
        if (extent.isEmpty()) {
            return Optional.empty();
        }
        Box box = extent.get();
        double scale = Math.min(
                Math.min(MOST_SCALE, WIDTH_PX / box.width()), Math.sqrt(MOST_PX / (box.width() * box.height())));
        Homography toPicture = new Homography(scale, 0, -scale * box.left(), 0, scale, -scale * box.top(), 0, 0, 1);
        List<PhasesScene.Figure> figures =
                frames.stream().map(f -> figure(f, toPicture)).toList();
        return Optional.of(new PhasesScene(
                (int) Math.ceil(scale * box.width()),
                (int) Math.ceil(scale * box.height()),
                figures,
                feet(toPicture),
                spans(toPicture),
                metres(toPicture, scale * box.width())));
    }

    /** Touchdown of each contact, toe-off where that is unknown, and the middle of each flight, as long as they are not too many. */
    private List<Integer> frames() {
        List<Double> contacts = new ArrayList<>();
        List<Double> all = new ArrayList<>();
        List<Contact> those = contacts();
        for (int i = 0; i < those.size(); i++) {
            Contact c = those.get(i);
            double atS = Double.isFinite(c.touchdownS()) ? c.touchdownS() : c.toeOffS();
            contacts.add(atS);
            all.add(atS);
            if (i + 1 < those.size()) {
                all.add((c.toeOffS() + those.get(i + 1).touchdownS()) / 2);
            }
        }
        return framesAt(all.size() <= MOST_FIGURES ? all : contacts);
    }

    /** The frames nearest to known times in which the athlete is seen and the runway known. */
    private List<Integer> framesAt(List<Double> timesS) {
        return timesS.stream()
                .filter(Double::isFinite)
                .map(motion::nearestFrame)
                .filter(frame -> overlay.frame(frame)
                        .filter(p -> p.fixedToFrame().isPresent() && p.bounds().isPresent())
                        .isPresent())
                .distinct()
                .limit(MOST_FIGURES)
                .toList();
    }

    private List<Contact> contacts() {
        return measures.contacts().stream()
                .map(m -> m.contact())
                .filter(c -> c.kind() != ContactKind.APPROACH)
                .toList();
    }

    private FramePose pose(int frame) {
        return overlay.frame(frame).orElseThrow();
    }

    /** What a figure takes of the fixed picture, with room around it. */
    private Box extent(int frame) {
        Box body = pose(frame).bounds().orElseThrow();
        Homography toFixed = pose(frame).fixedToFrame().orElseThrow().inverse();
        Box fixed = Box.around(List.of(
                toFixed.apply(body.left(), body.top()),
                toFixed.apply(body.right(), body.top()),
                toFixed.apply(body.right(), body.bottom()),
                toFixed.apply(body.left(), body.bottom())));
        double stature = staturePx(frame);
        return new Box(
                fixed.left() - ROOM_BESIDE * stature,
                fixed.top() - ROOM_ABOVE * stature,
                fixed.right() + ROOM_BESIDE * stature,
                fixed.bottom() + ROOM_BELOW * stature);
    }

    /** Standing height in px of the fixed picture where the athlete is. */
    private double staturePx(int frame) {
        Box body = pose(frame).bounds().orElseThrow();
        Point2 middle = new Point2(body.centreX(), body.centreY());
        Point2 place = view.place(frame, middle, 0);
        Point2 foot = view.inFixedPicture(place, 0);
        Point2 head = view.inFixedPicture(place.plus(new Point2(0, motion.statureM())), 0);
        return foot.distanceTo(head);
    }

    private PhasesScene.Figure figure(int frame, Homography toPicture) {
        FramePose pose = pose(frame);
        Homography toFixed = pose.fixedToFrame().orElseThrow().inverse();
        return new PhasesScene.Figure(
                frame, toPicture.after(toFixed), pose, Math.abs(toPicture.h00()) * staturePx(frame));
    }

    private List<Point2> feet(Homography toPicture) {
        List<Point2> feet = new ArrayList<>();
        for (Contact c : contacts()) {
            Point2 foot = foot(c, toPicture);
            if (foot.isKnown()) {
                feet.add(foot);
            }
        }
        return feet;
    }

    /** Where the toe stood, in the picture. */
    private Point2 foot(Contact contact, Homography toPicture) {
        if (!Double.isFinite(contact.toeAlongM())) {
            return Point2.UNKNOWN;
        }
        double across = contact.foot() == Foot.LEFT ? FOOT_ACROSS_M : contact.foot() == Foot.RIGHT ? -FOOT_ACROSS_M : 0;
        Point2 seen = places.under(contact);
        return seen.isKnown() ? toPicture.apply(view.inFixedPicture(seen, across)) : Point2.UNKNOWN;
    }

    private List<PhasesScene.Span> spans(Homography toPicture) {
        List<PhasesScene.Span> spans = new ArrayList<>();
        List<Contact> those = contacts();
        for (int i = 0; i + 1 < those.size(); i++) {
            Point2 from = foot(those.get(i), toPicture);
            Point2 to = foot(those.get(i + 1), toPicture);
            Optional<PhaseMeasures> phase = phaseOf(those.get(i));
            if (from.isKnown() && to.isKnown() && phase.isPresent()) {
                boolean corrected = those.get(i).corrected() || those.get(i + 1).corrected();
                spans.add(span(phase.get(), from.x(), to.x(), corrected ? ContactMark.CORRECTED : ""));
            }
        }
        return spans;
    }

    private Optional<PhaseMeasures> phaseOf(Contact contact) {
        double inside = Double.isFinite(contact.toeOffS()) ? contact.toeOffS() : contact.touchdownS();
        return measures.phases().stream()
                .filter(p -> p.phase().name() != PhaseName.APPROACH && p.phase().name() != PhaseName.LANDING)
                .filter(p -> p.phase().startS() <= inside && inside < p.phase().endS())
                .findFirst();
    }

    private PhasesScene.Span span(PhaseMeasures p, double fromX, double toX, String mark) {
        boolean metres = measures.scaleSource() != ScaleSource.NONE;
        return new PhasesScene.Span(
                p.phase().name(),
                name(words, p.phase()) + mark,
                fromX,
                toX,
                metres && p.distanceM().isKnown() ? values.metres(p.distanceM()) : "",
                p.sharePct().isKnown() ? values.percent(p.sharePct()) : "");
    }

    /** Every metre that lies in the picture, where it is known where the take-off line is. */
    private List<PhasesScene.Metre> metres(Homography toPicture, double widthPx) {
        List<PhasesScene.Metre> metres = new ArrayList<>();
        if (!measures.scaleSource().tellsTakeoffLine()) {
            return metres;
        }
        List<Contact> those = contacts();
        double ground = those.stream()
                .mapToDouble(c -> places.under(c).y())
                .filter(Double::isFinite)
                .average()
                .orElse(0);
        for (int m = -10; m <= 30; m++) {
            double x = toPicture
                    .apply(view.inFixedPicture(new Point2(m, ground), 0))
                    .x();
            if (x >= 0 && x <= widthPx) {
                metres.add(new PhasesScene.Metre(m, x));
            }
        }
        return metres;
    }
}
