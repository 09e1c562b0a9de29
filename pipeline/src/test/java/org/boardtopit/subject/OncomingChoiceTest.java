package org.boardtopit.subject;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Sightings of drawn people (SYN, our own), seen from in front 15 times a second. */
class OncomingChoiceTest {
    private static final double FOCAL_PX = 3000;

    private final List<SightedPerson> people = new ArrayList<>();

    /** Somebody at a distance in metres that changes in time, with the detector's error of size. */
    private void add(double x, DoubleUnaryOperator distanceM, double worth, long seed) {
        Random random = new Random(seed);
        for (int i = 0; i < 45; i++) {
            double t = i / 15.0;
            double stature = FOCAL_PX * 1.8 / distanceM.applyAsDouble(t) * (1 + 0.04 * random.nextGaussian());
            double y = 500 + FOCAL_PX * 0.9 / distanceM.applyAsDouble(t);
            people.add(new SightedPerson(2 * i, t, new Square(x, y, stature), new Point2(x, y), stature, worth, 0));
        }
        people.sort(Comparator.comparingDouble(SightedPerson::timeS));
    }

    private static boolean allAt(double x, List<SightedPerson> chosen) {
        return chosen.stream().allMatch(p -> p.fixed().x() == x);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void choosesTheOneWhoComesAmongOfficialsAndWalkers(long seed) {
        add(400, t -> 28, 1, seed); // official who waves
        add(1300, t -> 25 - 1.4 * t, 1, seed + 100); // walker
        add(960, t -> 45 - 9 * t, 0.6, seed + 200); // athlete
        List<SightedPerson> chosen = new OncomingChoice(people, 1).chosen();
        assertTrue(allAt(960, chosen), "somebody else");
        assertTrue(chosen.size() > 38, "sightings " + chosen.size());
    }

    @Test
    void choosesTheOneWhoGoesAwayFromACameraBehind() {
        add(1300, t -> 25 - 1.4 * t, 1, 1); // coach who comes back
        add(960, t -> 12 + 8 * t, 0.6, 2); // athlete
        List<SightedPerson> chosen = new OncomingChoice(people, -1).chosen();
        assertTrue(allAt(960, chosen), "somebody else");
        assertTrue(chosen.size() > 38, "sightings " + chosen.size());
    }

    /** Seen on our clip from in front: in too wide a crop the network took the runway's lines for a body twice as large. */
    @Test
    void doesNotEndWithASightingOfTwiceTheSize() {
        add(960, t -> 45 - 9 * t, 0.8, 6);
        for (int frame : new int[] {50, 52}) {
            people.add(new SightedPerson(
                    frame, frame / 30.0, new Square(970, 620, 420), new Point2(970, 620), 420, 0.3, 0));
        }
        people.sort(Comparator.comparingDouble(SightedPerson::timeS));
        List<SightedPerson> chosen = new OncomingChoice(people, 1).chosen();
        assertTrue(allAt(960, chosen), "the lines of the runway");
        assertEquals(88, chosen.get(chosen.size() - 1).frame());
    }

    @Test
    void choosesNobodyWhereNobodyComes() {
        add(400, t -> 28, 1, 3); // official
        add(1300, t -> 20, 1, 4); // bystander
        assertEquals(List.of(), new OncomingChoice(people, 1).chosen());
    }

    @Test
    void followsTheBodyThatFoldsInTheSand() {
        add(960, t -> 45 - 9 * Math.min(t, 2.4), 1, 5); // athlete
        for (int i = 36; i < people.size(); i++) {
            SightedPerson p = people.get(i);
            Square folded = new Square(
                    p.body().centreXPx(), p.body().centreYPx(), 0.7 * p.body().sidePx());
            people.set(i, new SightedPerson(p.frame(), p.timeS(), folded, p.fixed(), 0.7 * p.fixedStaturePx(), 1, 0));
        }
        List<SightedPerson> chosen = new OncomingChoice(people, 1).chosen();
        SightedPerson end = chosen.get(chosen.size() - 1);
        assertEquals(people.get(people.size() - 1).frame(), end.frame());
        assertEquals(FOCAL_PX * 1.8 / 23.4, end.body().sidePx(), 25, "as tall as before the fold");
    }
}
