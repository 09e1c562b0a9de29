package org.boardtopit.measures;

import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.phases.PhaseName;

/** Where an attempt touches the runway and the sand, and what follows: distances, shares, closure, sit-back. */
final class JumpPlaces {
    /** The official distance is read to the centimetre and cut to the one below. */
    private static final double OFFICIAL_SD_M = 0.01;

    private final ContactTimeline contacts;
    private final double officialM;
    private final MetreScale scale;
    private final Optional<PhaseDistances> distances;

    /**
     * Of an attempt.
     *
     * @param officialM NaN when there is none
     */
    JumpPlaces(ContactTimeline contacts, double officialM, MetreScale scale) {
        this.contacts = contacts;
        this.officialM = officialM;
        this.scale = scale;
        this.distances = fromPlaces();
    }

    /** Empty when one of the places is missing or they are not in order. */
    Optional<PhaseDistances> distances() {
        return distances;
    }

    private double toe(ContactKind kind) {
        return contacts.of(kind).map(Contact::toeAlongM).orElse(Double.NaN);
    }

    private double toeSd(ContactKind kind) {
        return scale.placeSd(contacts.of(kind).map(Contact::toeAlongSdM).orElse(Double.NaN));
    }

    /** The official distance is the mark when places count from the take-off line; else the rear heel is. */
    private double mark() {
        return isMarkOfficial() ? officialM : toe(ContactKind.PIT);
    }

    private double markSd() {
        return isMarkOfficial() ? OFFICIAL_SD_M : toeSd(ContactKind.PIT);
    }

    private boolean isMarkOfficial() {
        return scale.isCalibrated() && Double.isFinite(officialM);
    }

    private Optional<PhaseDistances> fromPlaces() {
        double b = toe(ContactKind.BOARD);
        double h = toe(ContactKind.HOP_LANDING);
        double s = toe(ContactKind.STEP_LANDING);
        double m = mark();
        return b < h && h < s && s < m ? Optional.of(new PhaseDistances(b, h, s, m)) : Optional.empty();
    }

    /** Standard deviation of the lead of the largest share, NaN when unknown. */
    double leadSdPct() {
        return distances
                .map(d -> {
                    double ofPlaces = d.leadSdPct(
                            toeSd(ContactKind.BOARD),
                            toeSd(ContactKind.HOP_LANDING),
                            toeSd(ContactKind.STEP_LANDING),
                            markSd());
                    return Math.hypot(ofPlaces, scale.doubts().leadSdPct(d));
                })
                .orElse(Double.NaN);
    }

    /** Official over measured distance; NaN when the scale itself rests on the official one or one is missing. */
    double closure() {
        return switch (scale.source()) {
            case MARKS -> officialM / toe(ContactKind.PIT);
            case STATURE -> officialM / (toe(ContactKind.PIT) - toe(ContactKind.BOARD));
            default -> Double.NaN;
        };
    }

    /** How far behind the heels' first touch the mark lies that counts: what sitting back gives away. */
    Reading sitBackM() {
        Optional<Contact> pit = contacts.of(ContactKind.PIT);
        if (!scale.isCalibrated() || pit.isEmpty()) {
            return Reading.UNKNOWN;
        }
        double sd = Math.hypot(toeSd(ContactKind.PIT), OFFICIAL_SD_M);
        return new Reading(toe(ContactKind.PIT) - officialM, sd, pit.get().touchdownS());
    }

    /** Length of a phase in the unit of the motion. */
    Reading distance(Bound bound) {
        int i = indexOf(bound);
        if (i < 0 || distances.isEmpty()) {
            // A missing mark leaves the jump unknown, but not the hop and the step.
            boolean official = bound.intoPit() && isMarkOfficial();
            double to = official ? officialM : bound.next().toeAlongM();
            double toSd = official ? OFFICIAL_SD_M : scale.placeSd(bound.next().toeAlongSdM());
            double fromSd = scale.placeSd(bound.support().toeAlongSdM());
            return new Reading(to - bound.support().toeAlongM(), Math.hypot(fromSd, toSd));
        }
        PhaseDistances d = distances.get();
        double end = bound.intoPit() ? markSd() : toeSd(bound.next().kind());
        double ofPlaces = Math.hypot(toeSd(bound.support().kind()), end);
        double sd = Math.hypot(ofPlaces, scale.doubts().phaseSdM(d, i));
        return new Reading(new double[] {d.hopM(), d.stepM(), d.jumpM()}[i], sd);
    }

    /** Share of the effective distance; unknown for what is not a phase of a triple jump. */
    Reading share(Bound bound) {
        int i = indexOf(bound);
        if (i < 0 || distances.isEmpty()) {
            return Reading.UNKNOWN;
        }
        PhaseDistances d = distances.get();
        double[] shares = {d.hopPct(), d.stepPct(), d.jumpPct()};
        double[] sds = d.shareSdsPct(
                toeSd(ContactKind.BOARD), toeSd(ContactKind.HOP_LANDING), toeSd(ContactKind.STEP_LANDING), markSd());
        // What an unknown camera adds to the lead, the difference of two shares, it adds to each at most.
        return new Reading(shares[i], Math.hypot(sds[i], scale.doubts().leadSdPct(d)));
    }

    private static int indexOf(Bound bound) {
        PhaseName name = bound.phase().name();
        return name == PhaseName.HOP ? 0 : name == PhaseName.STEP ? 1 : name == PhaseName.JUMP ? 2 : -1;
    }
}
