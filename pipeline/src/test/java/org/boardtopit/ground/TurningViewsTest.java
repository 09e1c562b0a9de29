package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Random;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** Against a drawn pinhole (SYN, our own) whose maps between views are a formula of their own. */
class TurningViewsTest {
    private static final DrawnCamera WIDE = new DrawnCamera(1280, 720, 950, 5.5, -19, 1.5, 0, 0.04, 0);

    private static DrawnCamera view(double panDeg, double focalPx, double rollDeg) {
        return new DrawnCamera(
                1280, 720, focalPx, 5.5, -19, 1.5, Math.toRadians(panDeg), 0.05, Math.toRadians(rollDeg));
    }

    /** Points that both views hold, off by noise; every tenth one is wrong by up to 20 px, as on somebody who walks. */
    private static PointPairs pairs(DrawnCamera a, DrawnCamera b, int count, double sdPx, Random random) {
        Homography map = a.to(b);
        float[] from = new float[2 * count];
        float[] to = new float[2 * count];
        for (int n = 0; n < count; ) {
            Point2 p = new Point2(1280 * random.nextDouble(), 720 * random.nextDouble());
            Point2 q = map.apply(p);
            if (q.x() < 0 || q.y() < 0 || q.x() > 1280 || q.y() > 720) {
                continue;
            }
            double off = n % 10 == 9 ? 20 * random.nextDouble() : 0;
            from[2 * n] = (float) p.x();
            from[2 * n + 1] = (float) p.y();
            to[2 * n] = (float) (q.x() + sdPx * random.nextGaussian() + off);
            to[2 * n + 1] = (float) (q.y() + sdPx * random.nextGaussian());
            n++;
        }
        return new PointPairs(from, to);
    }

    private static double worstPx(Homography found, Homography true_) {
        double worst = 0;
        for (double x = 0; x <= 1280; x += 320) {
            for (double y = 0; y <= 720; y += 180) {
                worst = Math.max(worst, found.apply(x, y).distanceTo(true_.apply(x, y)));
            }
        }
        return worst;
    }

    @Test
    void findsTurnAndZoomBetweenTwoPictures() {
        DrawnCamera a = view(0, 1300, 0);
        DrawnCamera b = view(14, 1500, 1);
        TurningViews views = new TurningViews();
        int first = views.add(1280, 720);
        int second = views.add(1280, 720);
        int tie = views.tie(first, second, pairs(a, b, 80, 0, new Random(1)), a.to(b), 0.1);
        views.solve(first);
        assertEquals(1300, views.focalPx(first), 2);
        assertEquals(1500, views.focalPx(second), 2);
        assertTrue(worstPx(views.map(first, second), a.to(b)) < 0.05);
        assertTrue(worstPx(views.map(second, first), b.to(a)) < 0.05);
        assertTrue(views.residualPx(tie) < 0.05);
    }

    /** A pan of 50 degrees away from the reference picture: the free maps of the test below are off by tens of pixels. */
    @RepeatedTest(value = 20, name = "seed {currentRepetition}")
    void aLongChainBeyondTheReferencePictureStaysWithinEightPixels(RepetitionInfo info) {
        Random random = new Random(info.getCurrentRepetition());
        TurningViews views = new TurningViews();
        int reference = views.add(1280, 720);
        DrawnCamera last = null;
        int lastView = -1;
        for (int k = 0; k <= 8; k++) {
            DrawnCamera now = view(8 - 7 * k, 1400 + 20 * k, 0.3 * k);
            int view = views.add(1280, 720);
            if (k == 0 || k == 2) {
                views.tie(view, reference, pairs(now, WIDE, 100, 0.5, random), now.to(WIDE), 0.5);
            }
            if (last != null) {
                views.tie(lastView, view, pairs(last, now, 130, 0.1, random), last.to(now), 0.1);
            }
            last = now;
            lastView = view;
        }
        views.solve(reference);
        assertEquals(950, views.focalPx(reference), 12);
        double sd = views.logFocalSd(reference);
        assertEquals(0, Math.log(views.focalPx(reference) / 950) / sd, 4);
        Point2 middle = new Point2(640, 400);
        Point2 found = views.map(lastView, reference).apply(middle);
        Point2 place = last.to(WIDE).apply(middle);
        assertTrue(found.distanceTo(place) < 8, found + " for " + place);
    }

    @Test
    void findsASingleViewAroundAKnownOne() {
        DrawnCamera a = view(3, 1300, 0);
        DrawnCamera b = view(5, 1310, 0.5);
        TurningViews views = new TurningViews();
        int known = views.addKnown(1280, 720, 1300);
        int other = views.add(1280, 720);
        views.tie(known, other, pairs(a, b, 60, 0.1, new Random(3)), a.to(b), 0.1);
        views.solveAround(known);
        assertEquals(1300, views.focalPx(known), 1e-9);
        assertEquals(1310, views.focalPx(other), 2);
        assertTrue(worstPx(views.map(known, other), a.to(b)) < 0.3);
    }

    /** A camera that was carried one metre along the runway between the pictures: no turn explains a ground that slides. */
    @Test
    void residualsGrowWhenTheCameraWasCarried() {
        Homography slid = new Homography(1, 0.12, -70, 0, 1.02, 4, 0, 1e-4, 1);
        DrawnCamera a = view(0, 1300, 0);
        Random random = new Random(5);
        PointPairs still = pairs(a, a, 80, 0.1, random);
        float[] from = new float[160];
        float[] to = new float[160];
        for (int i = 0; i < 80; i++) {
            Point2 q = slid.apply(still.from(i));
            from[2 * i] = (float) still.from(i).x();
            from[2 * i + 1] = (float) still.from(i).y();
            to[2 * i] = (float) q.x();
            to[2 * i + 1] = (float) q.y();
        }
        TurningViews views = new TurningViews();
        int first = views.add(1280, 720);
        int second = views.add(1280, 720);
        int tie = views.tie(first, second, new PointPairs(from, to), slid, 0.1);
        views.solve(first);
        assertTrue(views.residualPx(tie) > 2, "residual " + views.residualPx(tie));
    }

    @Test
    void refusesAPictureThatHangsOnNoOther() {
        TurningViews views = new TurningViews();
        views.add(1280, 720);
        views.add(1280, 720);
        assertThrows(IllegalArgumentException.class, () -> views.solve(0));
    }
}
