package org.boardtopit.frontal;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.frontal.FrontalAttempt.SeenContact;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.measures.PhaseQuantity;
import org.boardtopit.measures.Reading;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.signal.OrderStatistics;

/**
 * Measures the plane across the runway: lays the clip from in front or behind beside the one from the side in time, takes the
 * contacts from there, and reads the tilt of shoulders and hips, the trunk's side lean and the place of the feet at each.
 *
 * <p>A point is taken to the plane across the runway in which the side clip has it at that time, so that a trunk that leans forwards
 * does not look bent sideways from a camera beside the middle of the runway.
 */
public final class FrontalAnalyser {
    /**
     * What a reading may be off by however many frames it rests on, in degrees. From in front the network's errors are about
     * twice what its standard deviations say; measured on our clip from in front: shoulders 1.1 a frame of which half
     * stays, hips 1.8, trunk 0.7.
     */
    private static final double SHOULDER_SD_DEG = 1.2;

    private static final double HIP_SD_DEG = 1.8;
    private static final double LEAN_SD_DEG = 0.7;
    /** The network draws tilted shoulders more level than they are (measured on our clip turned by 8 and 12 degrees: 12 %). */
    private static final double TILT_SHARE_SD = 0.12;

    private static final double LEAN_SHARE_SD = 0.08;
    /** Without marks the camera is taken to be level: a tripod by eye (a first guess, not tuned). */
    private static final double CAMERA_ROLL_SD_DEG = 1.5;
    /** Without marks a camera beside the middle sees a forward lean as a side lean (a first guess, not tuned). */
    private static final double UNKNOWN_PLACE_SD_DEG = 1;

    /** Of the network's toes and heels, in standing heights (measured on our clip from in front: 0.1 to 0.3 %). */
    private static final double FOOT_SD_STATURE = 0.008;
    /** Toe to heel of a shoe, in standing heights (common practice, no source). */
    private static final double SHOE_STATURE = 0.15;

    /** Shoulder joints to hip joints, in standing heights (see the subject's body reader). */
    private static final double TRUNK_STATURES = 0.27;

    private static final double PIT_STANDS_S = 0.06;

    /**
     * Measures.
     *
     * @param view in front or behind
     * @param camera of the fixed picture, from marks
     * @throws ClocksNotAlignedException when the two clips cannot be laid beside each other
     */
    public FrontalAttempt analyse(
            ClipLandmarks landmarks, Camera.View view, Optional<RunwayCamera> camera, SideMotion side)
            throws ClocksNotAlignedException {
        FrontalPlane plane = new FrontalPlane(landmarks.background(), camera, view);
        FrontalTrack track = new FrontalTrack(landmarks, plane);
        return new Analysis(plane, track, side, ClockAlignment.find(track, side)).attempt();
    }

    private static final class Analysis {
        private final FrontalPlane plane;
        private final FrontalTrack track;
        private final SideMotion side;
        private final ClockOffset clock;
        private final AngleCurve shoulders;
        private final AngleCurve hips;
        private final AngleCurve lean;

        Analysis(FrontalPlane plane, FrontalTrack track, SideMotion side, ClockOffset clock) {
            this.plane = plane;
            this.track = track;
            this.side = side;
            this.clock = clock;
            double[] times = new double[track.frameCount()];
            for (int f = 0; f < times.length; f++) {
                times[f] = track.timeS(f);
            }
            double step = track.frameStepS();
            double roll = plane.isMetric() ? 0 : CAMERA_ROLL_SD_DEG;
            double place = plane.isMetric() ? 0 : UNKNOWN_PLACE_SD_DEG;
            shoulders = new AngleCurve(
                    times,
                    track.tiltDeg(BodyPoint.LEFT_SHOULDER, this::alongM),
                    step,
                    Math.hypot(SHOULDER_SD_DEG, roll),
                    TILT_SHARE_SD);
            hips = new AngleCurve(
                    times, track.hipTiltDeg(this::alongM), step, Math.hypot(HIP_SD_DEG, roll), TILT_SHARE_SD);
            lean = new AngleCurve(
                    times,
                    track.leanDeg(this::alongM),
                    step,
                    Math.hypot(LEAN_SD_DEG, Math.hypot(roll, place)),
                    LEAN_SHARE_SD);
        }

        /** Where a point lies along the runway: from the side clip, the whole body from its size where only that tells. */
        private double alongM(int frame, BodyPoint point) {
            if (!plane.isMetric()) {
                return 0;
            }
            double sideS = track.timeS(frame) - clock.seconds();
            double hipsM = side.hipsAlong(sideS);
            double ahead = side.at(point, sideS).x() - hipsM;
            double base = side.fromMarks() && Double.isFinite(hipsM) ? hipsM : alongOfSize(frame);
            return Double.isFinite(ahead) ? base + ahead : base;
        }

        private double alongOfSize(int frame) {
            double trunk = track.trunkPx(frame);
            double statureM = side.motion().repaired().statureM();
            return plane.alongOfSize(trunk / TRUNK_STATURES, statureM);
        }

        FrontalAttempt attempt() {
            List<SeenContact> contacts = new ArrayList<>();
            for (Contact c : side.contacts().contacts()) {
                contacts.add(seen(c));
            }
            return new FrontalAttempt(clock, contacts, phases());
        }

        private SeenContact seen(Contact c) {
            double touchdown = c.touchdownS() + clock.seconds();
            double toeOff = c.toeOffS() + clock.seconds();
            double end = track.timeS(track.frameCount() - 1);
            boolean inside = touchdown >= 0 && !(toeOff > end) && touchdown <= end;
            if (!inside) {
                return new SeenContact(Optional.empty(), Map.of());
            }
            double touchdownSd = Math.hypot(c.touchdownSdS(), clock.sdS());
            double toeOffSd = Math.hypot(c.toeOffSdS(), clock.sdS());
            Contact own = new Contact(
                    c.kind(),
                    c.foot(),
                    touchdown,
                    touchdownSd,
                    toeOff,
                    toeOffSd,
                    c.toeAlongM(),
                    c.toeAlongSdM(),
                    c.confidence(),
                    c.frameLimited(),
                    c.corrected());
            return new SeenContact(Optional.of(own), readings(own));
        }

        private Map<ContactQuantity, Reading> readings(Contact own) {
            Map<ContactQuantity, Reading> readings = new EnumMap<>(ContactQuantity.class);
            double down = own.touchdownS();
            double off = own.toeOffS();
            put(readings, ContactQuantity.SHOULDER_TILT_TOUCHDOWN, shoulders.at(down, own.touchdownSdS()));
            put(readings, ContactQuantity.HIP_TILT_TOUCHDOWN, hips.at(down, own.touchdownSdS()));
            put(readings, ContactQuantity.SIDE_LEAN_TOUCHDOWN, lean.at(down, own.touchdownSdS()));
            put(readings, ContactQuantity.SHOULDER_TILT_TOE_OFF, shoulders.at(off, own.toeOffSdS()));
            put(readings, ContactQuantity.HIP_TILT_TOE_OFF, hips.at(off, own.toeOffSdS()));
            put(readings, ContactQuantity.SIDE_LEAN_TOE_OFF, lean.at(off, own.toeOffSdS()));
            put(readings, ContactQuantity.FOOT_ACROSS, footAcross(own));
            return readings;
        }

        private static <K> void put(Map<K, Reading> readings, K quantity, Reading reading) {
            if (reading.isKnown()) {
                readings.put(quantity, reading);
            }
        }

        private Reading footAcross(Contact own) {
            double statureM = side.motion().repaired().statureM();
            double until = own.kind() == ContactKind.PIT ? own.touchdownS() + PIT_STANDS_S : own.toeOffS();
            List<Double> across = new ArrayList<>();
            for (int f = 0; f < track.frameCount(); f++) {
                if (track.timeS(f) >= own.touchdownS() && track.timeS(f) <= until) {
                    double toe = toeAlong(own, f);
                    double v = track.footAcrossM(f, own.foot(), toe, toe - SHOE_STATURE * statureM);
                    if (Double.isFinite(v)) {
                        across.add(v);
                    }
                }
            }
            double[] values = across.stream().mapToDouble(v -> v).toArray();
            double noise = values.length < 2
                    ? FOOT_SD_STATURE * statureM
                    : OrderStatistics.scaledMad(values) / Math.sqrt(values.length / 2.0);
            double sd = Math.hypot(noise, FOOT_SD_STATURE * statureM);
            return values.length == 0 ? Reading.UNKNOWN : new Reading(OrderStatistics.median(values), sd);
        }

        /** In the pit the contact has the heel's place. */
        private double toeAlong(Contact own, int frame) {
            if (!side.fromMarks() || !Double.isFinite(own.toeAlongM())) {
                Foot foot = own.foot() == Foot.BOTH ? Foot.LEFT : own.foot();
                return alongM(frame, foot.toe());
            }
            double shoe = own.kind() == ContactKind.PIT
                    ? SHOE_STATURE * side.motion().repaired().statureM()
                    : 0;
            return own.toeAlongM() + shoe;
        }

        private Map<PhaseName, Map<PhaseQuantity, Reading>> phases() {
            Map<PhaseName, Map<PhaseQuantity, Reading>> phases = new EnumMap<>(PhaseName.class);
            swing(PhaseName.HOP, ContactKind.BOARD, ContactKind.HOP_LANDING, phases);
            swing(PhaseName.STEP, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, phases);
            swing(PhaseName.JUMP, ContactKind.STEP_LANDING, ContactKind.PIT, phases);
            return phases;
        }

        private void swing(
                PhaseName phase, ContactKind from, ContactKind to, Map<PhaseName, Map<PhaseQuantity, Reading>> phases) {
            double start = side.contacts().of(from).map(Contact::toeOffS).orElse(Double.NaN) + clock.seconds();
            double end = side.contacts().of(to).map(Contact::touchdownS).orElse(Double.NaN) + clock.seconds();
            Reading left = Reading.UNKNOWN;
            Reading right = Reading.UNKNOWN;
            for (double t = start; t <= end; t += track.frameStepS() / 2) {
                Reading now = lean.at(t, 0);
                if (!now.isKnown()) {
                    return; // the largest may be where it is not seen
                }
                left = !left.isKnown() || now.value() > left.value() ? now : left;
                right = !right.isKnown() || -now.value() > right.value() ? new Reading(-now.value(), now.sd()) : right;
            }
            if (left.isKnown()) {
                phases.put(
                        phase,
                        Map.of(
                                PhaseQuantity.SWING_LEFT,
                                notBelowZero(left),
                                PhaseQuantity.SWING_RIGHT,
                                notBelowZero(right)));
            }
        }

        /** Who leans to one side all the time has swung to the other by nothing. */
        private static Reading notBelowZero(Reading reading) {
            return new Reading(Math.max(0, reading.value()), reading.sd());
        }
    }
}
