package org.boardtopit.body;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class SegmentTableTest {

    // SEEN: de Leva 1996, J Biomech 29:1223-1230, table 4, as in the open data of a university course in biomechanics.
    // Published masses add up to 1.0000 (men) and 0.9999 (women), so the women's are divided by 0.9999 here.
    @ParameterizedTest
    @CsvSource({
        "HEAD,      .0694, .5976, .0668, .5894",
        "TRUNK,     .4346, .4310, .4257, .3782",
        "UPPER_ARM, .0271, .5772, .0255, .5754",
        "FOREARM,   .0162, .4574, .0138, .4559",
        "HAND,      .0061, .7900, .0056, .7474",
        "THIGH,     .1416, .4095, .1478, .3612",
        "SHANK,     .0433, .4395, .0481, .4352",
        "FOOT,      .0137, .4415, .0129, .4014"
    })
    void holdsThePublishedRows(Segment segment, double massM, double centreM, double massF, double centreF) {
        SegmentParameters man = SegmentTable.of(Sex.MALE).row(segment);
        SegmentParameters woman = SegmentTable.of(Sex.FEMALE).row(segment);

        assertEquals(massM, man.massShare(), 1e-12);
        assertEquals(centreM, man.centreFraction());
        assertEquals(massF / 0.9999, woman.massShare(), 1e-12);
        assertEquals(centreF, woman.centreFraction());
    }

    // SEEN: the published thirds of the trunk add up to the trunk: men .1596 + .1633 + .1117, women .1545 + .1465 +
    // .1247.
    @Test
    void hasTheTrunkThatItsThirdsAddUpTo() {
        assertEquals(
                .1596 + .1633 + .1117,
                SegmentTable.of(Sex.MALE).row(Segment.TRUNK).massShare(),
                1e-12);
        assertEquals(
                (.1545 + .1465 + .1247) / 0.9999,
                SegmentTable.of(Sex.FEMALE).row(Segment.TRUNK).massShare(),
                1e-12);
    }

    @ParameterizedTest
    @EnumSource(Sex.class)
    void addsUpToOneBody(Sex sex) {
        double total = Arrays.stream(Segment.values())
                .mapToDouble(s -> s.count() * SegmentTable.of(sex).row(s).massShare())
                .sum();

        assertEquals(1, total, 1e-12);
    }

    @Test
    void takesTheMeanWhenTheSexIsNotStated() {
        SegmentParameters thigh = SegmentTable.of(Sex.UNSTATED).row(Segment.THIGH);

        assertEquals((.1416 + .1478 / 0.9999) / 2, thigh.massShare(), 1e-12);
        assertEquals((.4095 + .3612) / 2, thigh.centreFraction(), 1e-12);
    }

    @Test
    void refusesImpossibleRows() {
        assertThrows(IllegalArgumentException.class, () -> new SegmentParameters(0, 0.5));
        assertThrows(IllegalArgumentException.class, () -> new SegmentParameters(0.1, 1));
        assertThrows(IllegalArgumentException.class, () -> new SegmentParameters(0.1, Double.NaN));
    }
}
