package org.boardtopit.report.stills;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.fit.FittedMotion;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.measures.AttemptMeasures;
import org.boardtopit.measures.ContactMeasures;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.measures.ScaleSource;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.report.overlay.BodySide;
import org.boardtopit.report.overlay.ContactMark;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.wording.Words;

/** What the stills of one attempt show: every contact but those of the approach, and the flights between them. */
public final class AttemptStills {
    private final RunwayView view;
    private final FittedMotion fitted;
    private final MotionTrack motion;
    private final AttemptMeasures measures;
    private final OverlayScene overlay;
    private final Words words;
    private final StillPlaces places;
    private final StillAngles angles;
    private final Values values;

    /**
     * For one measured clip.
     *
     * @param overlay the athlete's points in every frame, and who it is
     * @param words of the bundle {@code picture}
     */
    public AttemptStills(
            RunwayView view, FittedMotion fitted, AttemptMeasures measures, OverlayScene overlay, Words words) {
        this.view = view;
        this.fitted = fitted;
        this.motion = fitted.repaired();
        this.measures = measures;
        this.overlay = overlay;
        this.words = words;
        this.places = new StillPlaces(view, fitted, measures.scaleSource());
        this.angles = new StillAngles(words);
        this.values = new Values(words);
    }

    /** The scene, ready to be painted while the frames go by. */
    public StillsScene scene() {
        List<Still> stills = new ArrayList<>();
        List<StillsScene.Column> columns = new ArrayList<>();
        for (int i = 0; i < measures.contacts().size(); i++) {
            if (contact(i).kind() != ContactKind.APPROACH) {
                addContact(i, stills);
                if (columns.size() < StillsScene.MOST_COLUMNS) {
                    columns.add(new StillsScene.Column(i, name(i)));
                }
            }
        }
        stills.sort(Comparator.comparingInt(Still::frameIndex));
        boolean metres = measures.scaleSource() != ScaleSource.NONE;
        return new StillsScene(
                overlay.titleLines(),
                view.direction() > 0,
                columns,
                Stream.of(StillInstant.values()).collect(Collectors.toMap(instant -> instant, this::word)),
                words.get(metres ? "metre" : "no_metres"),
                metres,
                stills,
                new AttemptPhases(view, fitted, measures, overlay, words).scene());
    }

    private Contact contact(int i) {
        return measures.contacts().get(i).contact();
    }

    private String word(StillInstant instant) {
        return words.get("instant." + instant.label());
    }

    /** Such as {@code hop landing, right}. */
    private String name(int i) {
        Contact c = contact(i);
        String kind = words.format("kind." + c.kind().label(), Integer.toString(i));
        String name = c.foot() == Foot.BOTH
                ? kind
                : kind + ", " + words.get("foot." + c.foot().label());
        return c.corrected() ? name + ContactMark.CORRECTED : name;
    }

    /** True when the instant of a still rests on a contact that a person put right. */
    private boolean isCorrected(int i, StillInstant instant) {
        return contact(i).corrected()
                || (instant == StillInstant.FLIGHT && contact(i + 1).corrected());
    }

    private void addContact(int i, List<Still> stills) {
        Contact c = contact(i);
        Point2 foot = places.under(c);
        still(i, StillInstant.TOUCHDOWN, c.touchdownS(), foot, List.of()).ifPresent(stills::add);
        still(i, StillInstant.MID_SUPPORT, (c.touchdownS() + c.toeOffS()) / 2, foot, support(i))
                .ifPresent(stills::add);
        still(i, StillInstant.TOE_OFF, c.toeOffS(), foot, List.of()).ifPresent(stills::add);
        if (i + 1 < measures.contacts().size()) {
            double middleS = (c.toeOffS() + contact(i + 1).touchdownS()) / 2;
            if (Double.isFinite(middleS)) {
                Point2 ground = places.under(motion.nearestFrame(middleS), c, contact(i + 1));
                still(i, StillInstant.FLIGHT, middleS, ground, flight(c)).ifPresent(stills::add);
            }
        }
    }

    private Optional<Still> still(int i, StillInstant instant, double atS, Point2 origin, List<String> measured) {
        if (!Double.isFinite(atS)) {
            return Optional.empty();
        }
        int frame = motion.nearestFrame(atS);
        Optional<FramePose> pose = overlay.frame(frame);
        Optional<Homography> map = places.metresToFrame(frame, origin);
        if (pose.isEmpty() || map.isEmpty()) {
            return Optional.empty();
        }
        List<String> notes = new ArrayList<>();
        String distance = distance(frame, atS);
        notes.add(isCorrected(i, instant) ? distance + "   " + words.get("corrected") : distance);
        notes.addAll(measured);
        return Optional.of(new Still(
                i,
                instant,
                frame,
                map.get(),
                pose.get(),
                angles(i, instant, frame, pose.get(), map.get(), origin),
                (instant == StillInstant.FLIGHT ? phaseName(i) : name(i)) + ": " + word(instant),
                notes));
    }

    private List<StillAngle> angles(
            int i, StillInstant instant, int frame, FramePose pose, Homography metresToFrame, Point2 origin) {
        if (instant != StillInstant.TOUCHDOWN && instant != StillInstant.TOE_OFF) {
            return List.of(); // the tables have none there
        }
        return angles.of(
                measures.contacts().get(i),
                instant == StillInstant.TOUCHDOWN,
                pose,
                metresToFrame.inverse(),
                contact(i).foot() == Foot.RIGHT ? BodySide.RIGHT : BodySide.LEFT,
                places.inMetres(origin, fitted.centreOfMass(frame)),
                view.direction());
    }

    /** Which frame it is, and how far it lies from the instant. */
    private String distance(int frame, double atS) {
        long ms = Math.round(1000 * (motion.timeS(frame) - atS));
        String key = ms == 0 ? "frame.at" : ms > 0 ? "frame.after" : "frame.before";
        return words.format(key, Integer.toString(frame), Long.toString(Math.abs(ms)));
    }

    private List<String> support(int i) {
        ContactMeasures m = measures.contacts().get(i);
        List<String> lines = new ArrayList<>();
        if (m.supportTimeS().isKnown()) {
            lines.add(words.format("support", values.seconds(m.supportTimeS())));
        }
        phaseFrom(m.contact())
                .map(PhaseMeasures::kneeMinDeg)
                .filter(r -> r.isKnown())
                .ifPresent(r -> lines.add(words.format("least_knee", values.degrees(r, false))));
        return lines;
    }

    private List<String> flight(Contact before) {
        List<String> lines = new ArrayList<>();
        phaseFrom(before).ifPresent(p -> {
            if (p.flightTimeS().isKnown()) {
                lines.add(words.format("flight_time", values.seconds(p.flightTimeS())));
            }
            if (p.of(PhaseQuantity.THIGH_SEPARATION_MAX).isKnown()) {
                lines.add(words.format("thighs", values.degrees(p.of(PhaseQuantity.THIGH_SEPARATION_MAX), false)));
            }
        });
        return lines;
    }

    private String phaseName(int i) {
        return phaseFrom(contact(i))
                .map(p -> AttemptPhases.name(words, p.phase()))
                .orElseGet(() -> name(i));
    }

    /** The phase that begins with the support of a contact. */
    private Optional<PhaseMeasures> phaseFrom(Contact contact) {
        double inside = Double.isFinite(contact.toeOffS()) ? contact.toeOffS() : contact.touchdownS();
        return measures.phases().stream()
                .filter(p -> p.phase().startS() <= inside && inside < p.phase().endS())
                .findFirst();
    }
}
