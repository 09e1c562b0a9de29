package org.boardtopit.fit;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.function.Predicate;
import java.util.stream.IntStream;
import org.boardtopit.body.SegmentTable;
import org.boardtopit.body.Sex;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactDetector;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.motion.MotionRepair;
import org.boardtopit.motion.MotionTrack;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;
import org.boardtopit.signal.RobustPolynomial;
import org.boardtopit.signal.RobustWeights;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.Variants;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Drawn jumpers with known joints (SYN, our own; see {@link org.boardtopit.synthetic.DrawnJumper}). */
class WholeClipFitTest {
    private static final SegmentTable SEGMENTS = SegmentTable.of(Sex.UNSTATED);
    /** The centre of mass of the drawn jumper does not fall freely, its hips do. */
    private static final Assumptions DRAWN = Assumptions.ALL.withoutFlight();

    private record Drawn(DrawnClip clip, MotionTrack motion, ContactTimeline contacts) {
        static Drawn of(long seed) {
            DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed));
            return of(clip, clip.landmarks());
        }

        static Drawn of(DrawnClip clip, ClipLandmarks landmarks) {
            MotionTrack motion =
                    new MotionRepair(SEGMENTS, clip.jumper().statureM()).repair(landmarks, clip.calibratedView());
            return new Drawn(clip, motion, new ContactDetector(true, Optional.empty()).detect(motion));
        }

        Point2 truth(int frame, BodyPoint point) {
            double[] p = clip.jumper().points(motion.timeS(frame))[point.index()];
            return new Point2(p[0], p[2]);
        }

        /** Mean distance of the legs' points from the truth over the fitted frames. */
        double error(FittedMotion fitted, boolean seen) {
            double sum = 0;
            int n = 0;
            for (int f = 0; f < motion.frameCount(); f++) {
                for (BodyPoint p : Unknowns.POINTS) {
                    if (fitted.isFitted(f)
                            && p.index() >= BodyPoint.LEFT_HIP.index()
                            && motion.seen(f, p).isKnown()) {
                        sum += (seen ? motion.seen(f, p) : fitted.place(f, p)).distanceTo(truth(f, p));
                        n++;
                    }
                }
            }
            return sum / n;
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void bringsTheLegsNearerToTheTruth(long seed) {
        Drawn drawn = Drawn.of(seed);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, DRAWN).fit(drawn.motion(), drawn.contacts());
        assertTrue(
                drawn.error(fitted, false) < 0.97 * drawn.error(fitted, true),
                () -> drawn.error(fitted, false) + " m, " + drawn.error(fitted, true) + " m as seen");
    }

    @Test
    void countsTheFramesThatItReaches() {
        Drawn drawn = Drawn.of(1);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, DRAWN).fit(drawn.motion(), drawn.contacts());
        long reached =
                IntStream.range(0, fitted.frameCount()).filter(fitted::isFitted).count();
        assertTrue(reached > 0);
        assertEquals(reached, fitted.fittedFrames());
        assertEquals(0, FittedMotion.asRepaired(drawn.motion()).fittedFrames());
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void saysHowFarOffItMayBe(long seed) {
        Drawn drawn = Drawn.of(seed);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, DRAWN).fit(drawn.motion(), drawn.contacts());
        double[] z = drawn.contacts().contacts().stream()
                .filter(c -> c.kind() != ContactKind.PIT)
                .mapToInt(c -> drawn.motion().nearestFrame(c.touchdownS()))
                .filter(fitted::isFitted)
                .boxed()
                .flatMap(f -> List.of(Foot.LEFT, Foot.RIGHT).stream()
                        .flatMap(s -> List.of(s.knee(), s.ankle(), s.toe()).stream())
                        .map(p -> (fitted.place(f, p).x() - drawn.truth(f, p).x()) / fitted.sd(f, p, false)))
                .mapToDouble(v -> Math.abs(v))
                .toArray();
        double median = OrderStatistics.median(z);
        assertTrue(median > 0.2 && median < 1.6, "median error over sd " + median); // 0.67 for a Gaussian
    }

    @Test
    void findsHowFarForwardTheHipsAreRead() {
        double[] offsets = new double[8];
        for (int seed = 1; seed <= offsets.length; seed++) {
            DrawnClip clip = new DrawnClip(DrawnClip.Setup.ordinary(seed));
            double h = clip.jumper().statureM();
            double shiftPx = clip.direction() * 0.012 * h / clip.flatMetresPerPixel();
            ClipLandmarks shifted = Variants.edited(clip.landmarks(), (frame, numbers) -> {
                for (BodyPoint hip : new BodyPoint[] {BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP}) {
                    numbers[hip.index() * PoseTrack.NUMBERS] += (float) shiftPx;
                    numbers[hip.index() * PoseTrack.NUMBERS + 4] += (float) shiftPx;
                }
            });
            offsets[seed - 1] =
                    (offsetAlong(Drawn.of(clip, shifted)) - offsetAlong(Drawn.of(clip, clip.landmarks()))) / h;
        }
        // The prior keeps back some of it.
        assertEquals(0.010, OrderStatistics.median(offsets), 0.004);
    }

    private static double offsetAlong(Drawn drawn) {
        int n = drawn.motion().frameCount();
        return Proportions.of(drawn.motion(), 0, n - 1, true).hipOffset().x();
    }

    @Test
    void keepsTheThighAtOneLength() {
        Drawn drawn = Drawn.of(3);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, DRAWN).fit(drawn.motion(), drawn.contacts());
        double seen = spread(
                drawn,
                fitted,
                f -> drawn.motion()
                        .seen(f, BodyPoint.LEFT_HIP)
                        .distanceTo(drawn.motion().seen(f, BodyPoint.LEFT_KNEE)));
        double held = spread(
                drawn,
                fitted,
                f -> fitted.place(f, BodyPoint.LEFT_HIP).distanceTo(fitted.place(f, BodyPoint.LEFT_KNEE)));
        assertTrue(held < 0.6 * seen, held + " m against " + seen + " m");
    }

    private interface OfFrame {
        double at(int frame);
    }

    /** Middle half of the values over the fitted frames. */
    private static double spread(Drawn drawn, FittedMotion fitted, OfFrame length) {
        double[] values = frames(drawn, fitted::isFitted)
                .map(f -> length.at((int) f))
                .filter(Double::isFinite)
                .toArray();
        return OrderStatistics.quantile(0.75, values) - OrderStatistics.quantile(0.25, values);
    }

    private static java.util.stream.DoubleStream frames(Drawn drawn, Predicate<Integer> which) {
        return java.util.stream.IntStream.range(0, drawn.motion().frameCount())
                .filter(which::test)
                .asDoubleStream();
    }

    @Test
    void letsTheToeOfASupportStand() {
        Drawn drawn = Drawn.of(2);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, DRAWN).fit(drawn.motion(), drawn.contacts());
        Contact hop = drawn.contacts().of(ContactKind.HOP_LANDING).orElseThrow();
        DoubleUnaryOperator along = f -> fitted.place((int) f, hop.foot().toe()).x();
        double[] places = frames(
                        drawn,
                        f -> drawn.motion().timeS(f) >= hop.touchdownS()
                                && drawn.motion().timeS(f) <= hop.toeOffS())
                .map(along)
                .toArray();
        assertTrue(places.length > 4);
        double range = OrderStatistics.quantile(1, places) - OrderStatistics.quantile(0, places);
        assertTrue(range < 0.01, "the toe moves " + range + " m");
    }

    @Test
    void leavesTheRepairedPointsWithoutContacts() {
        Drawn drawn = Drawn.of(1);
        FittedMotion fitted = new WholeClipFit(SEGMENTS, Assumptions.ALL)
                .fit(drawn.motion(), new ContactTimeline(List.of(), 0, List.of()));
        assertFalse(fitted.isFitted(100));
        assertEquals(drawn.motion().seen(100, BodyPoint.LEFT_KNEE), fitted.place(100, BodyPoint.LEFT_KNEE));
        assertEquals(drawn.motion().sd(100, BodyPoint.LEFT_KNEE), fitted.sd(100, BodyPoint.LEFT_KNEE, true));
    }

    /**
     * Gravity of 9.81 m/s^2 (standard value). Of the drawn jumper the hips fall freely; the segments' centre, with swinging legs
     * below it, falls with some 11 m/s^2: the assumption pulls it towards free fall, and the points hold it back.
     */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 4, 5})
    void pullsTheCentreOfMassTowardsFreeFall(long seed) {
        Drawn drawn = Drawn.of(seed);
        double with = fallMs2(drawn, Assumptions.ALL);
        double without = fallMs2(drawn, DRAWN);
        assertTrue(with > 9.81 && with < without, with + " m/s^2, without the assumption " + without);
    }

    /** Of a parabola through the hop's flight. */
    private static double fallMs2(Drawn drawn, Assumptions assumptions) {
        FittedMotion fitted = new WholeClipFit(SEGMENTS, assumptions).fit(drawn.motion(), drawn.contacts());
        double from = drawn.contacts().of(ContactKind.BOARD).orElseThrow().toeOffS();
        double to = drawn.contacts().of(ContactKind.HOP_LANDING).orElseThrow().touchdownS();
        int[] flight = frames(drawn, f -> fitted.timeS(f) >= from && fitted.timeS(f) <= to)
                .mapToInt(f -> (int) f)
                .toArray();
        double[] t = Arrays.stream(flight).mapToDouble(fitted::timeS).toArray();
        double[] y = Arrays.stream(flight)
                .mapToDouble(f -> fitted.centreOfMass(f).y())
                .toArray();
        return -2 * RobustPolynomial.quadratic(t, y, RobustWeights.TUKEY).coefficient(2);
    }
}
