package org.boardtopit.body;

/**
 * Mass and centre of one segment.
 *
 * @param massShare share of the body's mass, 0 to 1, of one side where there are two
 * @param centreFraction place of the segment's centre of mass from its first end, as a share of its length, 0 to 1
 */
public record SegmentParameters(double massShare, double centreFraction) {

    public SegmentParameters {
        if (!(massShare > 0 && massShare < 1 && centreFraction > 0 && centreFraction < 1)) {
            throw new IllegalArgumentException("mass share and centre fraction lie between 0 and 1, was %s and %s"
                    .formatted(massShare, centreFraction));
        }
    }

    SegmentParameters meanWith(SegmentParameters other) {
        return new SegmentParameters((massShare + other.massShare) / 2, (centreFraction + other.centreFraction) / 2);
    }

    SegmentParameters withMassDividedBy(double total) {
        return new SegmentParameters(massShare / total, centreFraction);
    }
}
