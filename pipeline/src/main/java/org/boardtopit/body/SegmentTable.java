package org.boardtopit.body;

import java.util.EnumMap;
import java.util.Map;

/**
 * Masses and centres of mass of the segments after de Leva 1996, "Adjustments to Zatsiorsky-Seluyanov's segment inertia
 * parameters", J Biomech 29:1223-1230, table 4, for the ends that landmarks show.
 *
 * <p>The rows were measured on young adults; for children and masters they are an approximation. The published masses add
 * up to 1.0000 (men) and 0.9999 (women); here they are divided by their sum.
 */
public final class SegmentTable {

    private static final SegmentTable FEMALE = published(
            new double[] {.0668, .4257, .0255, .0138, .0056, .1478, .0481, .0129},
            new double[] {.5894, .3782, .5754, .4559, .7474, .3612, .4352, .4014});
    private static final SegmentTable MALE = published(
            new double[] {.0694, .4346, .0271, .0162, .0061, .1416, .0433, .0137},
            new double[] {.5976, .4310, .5772, .4574, .7900, .4095, .4395, .4415});

    private final Map<Segment, SegmentParameters> rows;

    private SegmentTable(Map<Segment, SegmentParameters> rows) {
        double total = rows.entrySet().stream()
                .mapToDouble(row -> row.getKey().count() * row.getValue().massShare())
                .sum();
        this.rows = new EnumMap<>(rows);
        this.rows.replaceAll((segment, row) -> row.withMassDividedBy(total));
    }

    /** The table of a sex; the mean of both when it is not stated. */
    public static SegmentTable of(Sex sex) {
        return switch (sex) {
            case FEMALE -> FEMALE;
            case MALE -> MALE;
            case UNSTATED -> meanOfBoth();
        };
    }

    /** Mass, as a share of the whole body, and centre of one segment. All masses together are 1. */
    public SegmentParameters row(Segment segment) {
        return rows.get(segment);
    }

    private static SegmentTable published(double[] massShares, double[] centreFractions) {
        Map<Segment, SegmentParameters> rows = new EnumMap<>(Segment.class);
        Segment[] segments = Segment.values();
        for (int i = 0; i < segments.length; i++) {
            rows.put(segments[i], new SegmentParameters(massShares[i], centreFractions[i]));
        }
        return new SegmentTable(rows);
    }

    private static SegmentTable meanOfBoth() {
        Map<Segment, SegmentParameters> rows = new EnumMap<>(Segment.class);
        for (Segment segment : Segment.values()) {
            rows.put(segment, FEMALE.row(segment).meanWith(MALE.row(segment)));
        }
        return new SegmentTable(rows);
    }
}
