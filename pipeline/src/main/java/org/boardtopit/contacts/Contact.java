package org.boardtopit.contacts;

/**
 * One contact with the ground.
 *
 * @param touchdownS time of the first touch, seconds from the first frame; NaN when it lies before the clip
 * @param touchdownSdS its standard deviation
 * @param toeOffS time of the last touch; NaN in the pit, or after the clip
 * @param toeAlongM where the tip of the shoe stands, in the plane of the run; in the pit the rear-most heel, which makes the
 *     mark; NaN when not seen
 * @param confidence 0 to 1: how surely this is a contact of this kind
 * @param frameLimited true when the frame rate decides: the model could not time it and nearest frames are given, or its
 *     90 % interval is wider than one and a half frames
 * @param corrected true when a person put something of it right
 */
public record Contact(
        ContactKind kind,
        Foot foot,
        double touchdownS,
        double touchdownSdS,
        double toeOffS,
        double toeOffSdS,
        double toeAlongM,
        double toeAlongSdM,
        double confidence,
        boolean frameLimited,
        boolean corrected) {

    /** As the program found it. */
    public Contact(
            ContactKind kind,
            Foot foot,
            double touchdownS,
            double touchdownSdS,
            double toeOffS,
            double toeOffSdS,
            double toeAlongM,
            double toeAlongSdM,
            double confidence,
            boolean frameLimited) {
        this(
                kind,
                foot,
                touchdownS,
                touchdownSdS,
                toeOffS,
                toeOffSdS,
                toeAlongM,
                toeAlongSdM,
                confidence,
                frameLimited,
                false);
    }

    public Contact {
        if (touchdownS >= toeOffS) {
            throw new IllegalArgumentException(
                    "toe-off must come after touchdown, was " + touchdownS + " and " + toeOffS);
        }
        if (!(confidence >= 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence must be 0 to 1, was " + confidence);
        }
    }

    Contact withDoubtOfPlace(double sdM) {
        double sd = Double.isFinite(sdM) ? Math.hypot(toeAlongSdM, sdM) : toeAlongSdM;
        return new Contact(
                kind,
                foot,
                touchdownS,
                touchdownSdS,
                toeOffS,
                toeOffSdS,
                toeAlongM,
                sd,
                confidence,
                frameLimited,
                corrected);
    }

    /** The same contact, touching and leaving when a person saw it. */
    public Contact timed(double downS, double downSdS, double offS, double offSdS) {
        return new Contact(
                kind, foot, downS, downSdS, offS, offSdS, toeAlongM, toeAlongSdM, confidence, frameLimited, true);
    }

    /** The same contact as what a person calls it, which makes it sure. */
    public Contact called(ContactKind otherKind, Foot otherFoot) {
        return new Contact(
                otherKind,
                otherFoot,
                touchdownS,
                touchdownSdS,
                toeOffS,
                toeOffSdS,
                toeAlongM,
                toeAlongSdM,
                1,
                frameLimited,
                true);
    }

    /** Time on the ground in seconds; NaN when an end is unknown. */
    public double supportTimeS() {
        return toeOffS - touchdownS;
    }
}
