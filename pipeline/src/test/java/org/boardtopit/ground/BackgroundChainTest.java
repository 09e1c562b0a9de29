package org.boardtopit.ground;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Random;
import java.util.function.IntFunction;
import org.boardtopit.ground.BackgroundChain.FrameTie;
import org.boardtopit.ground.BackgroundChain.Match;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.junit.jupiter.api.RepeatedTest;
import org.junit.jupiter.api.RepetitionInfo;
import org.junit.jupiter.api.Test;

/** Matches between drawn views (SYN, our own): where a frame belongs in the reference picture is known from a formula. */
class BackgroundChainTest {
    private static final int WIDTH = 1280;
    private static final int HEIGHT = 720;
    private static final DrawnCamera WIDE = new DrawnCamera(WIDTH, HEIGHT, 950, 5.5, -19, 1.5, 0, 0.04, 0);
    private static final PointPairs NONE = new PointPairs(new float[0], new float[0]);
    private static final double FREE_ERROR = 2e-6;

    /** A pan of 6 degrees from key frame to key frame, from beyond the left edge of the reference picture. */
    private static DrawnCamera panned(int frame) {
        return new DrawnCamera(
                WIDTH, HEIGHT, 1400, 5.5, -19, 1.5, Math.toRadians(-48 + 1.5 * frame), 0.05, 0.002 * Math.sin(frame));
    }

    private final Random random;

    BackgroundChainTest() {
        random = new Random(1);
    }

    /** A match with noise; its free map is a little wrong at the edges, as one is that few points hold there. */
    private Match match(Homography map, double sdPx, Random noise) {
        float[] from = new float[240];
        float[] to = new float[240];
        for (int n = 0; n < 120; ) {
            Point2 p = new Point2(WIDTH * noise.nextDouble(), HEIGHT * noise.nextDouble());
            Point2 q = map.apply(p);
            if (q.x() > 0 && q.y() > 0 && q.x() < WIDTH && q.y() < HEIGHT) {
                from[2 * n] = (float) p.x();
                from[2 * n + 1] = (float) p.y();
                to[2 * n] = (float) (q.x() + sdPx * noise.nextGaussian());
                to[2 * n + 1] = (float) (q.y() + sdPx * noise.nextGaussian());
                n++;
            }
        }
        Homography bent = new Homography(1, 0, 0, 0, 1, 0, FREE_ERROR * noise.nextGaussian(), 0, 1);
        Homography centred = new Homography(1, 0, -WIDTH / 2.0, 0, 1, -HEIGHT / 2.0, 0, 0, 1);
        Homography free = map.after(centred.inverse().after(bent.after(centred)));
        return new Match(free, new PointPairs(from, to), 1.2 * sdPx);
    }

    /** Every fourth frame is a key frame; the given ones are found in the reference picture. */
    private BackgroundMotion chained(IntFunction<DrawnCamera> camera, List<Integer> found, Random noise) {
        BackgroundChain chain = new BackgroundChain(WIDTH, HEIGHT);
        for (int f = 0; f <= 32; f++) {
            int key = f / 4;
            if (f % 4 == 0) {
                if (f == 0) {
                    chain.addFirstKey();
                } else {
                    chain.addKey(match(camera.apply(f - 4).to(camera.apply(f)), 0.1, noise));
                }
                if (found.contains(key)) {
                    chain.foundInReference(match(camera.apply(f).to(WIDE), 0.4, noise), true, WIDTH, HEIGHT);
                }
                chain.addFrame(new FrameTie(key, Homography.IDENTITY, true, NONE, 120, 0));
            } else {
                Match m = match(camera.apply(4 * key).to(camera.apply(f)), 0.1, noise);
                chain.addFrame(new FrameTie(key, m.map(), true, m.pairs(), 120, m.residualPx()));
            }
        }
        return chain.finish();
    }

    private static double errorPx(BackgroundMotion motion, IntFunction<DrawnCamera> camera, int frame) {
        Point2 middle = new Point2(700, 400);
        return motion.toFixed(frame, middle)
                .distanceTo(camera.apply(frame).to(WIDE).apply(middle));
    }

    @RepeatedTest(value = 20, name = "seed {currentRepetition}")
    void aTurningCameraIsKnownToTwoPixelsFarBeyondTheReferencePicture(RepetitionInfo info) {
        Random noise = new Random(info.getCurrentRepetition());
        BackgroundMotion motion = chained(BackgroundChainTest::panned, List.of(4, 6, 8), noise);
        assertEquals(CameraModel.TURNING, motion.facts().model());
        assertTrue(motion.referenceMatched());
        // 48 degrees off: the middle of the frame lies 1000 px from the middle of the reference picture.
        assertTrue(errorPx(motion, BackgroundChainTest::panned, 0) < 10, "first frame");
        assertTrue(errorPx(motion, BackgroundChainTest::panned, 13) < 2, "a frame between");
        assertTrue(errorPx(motion, BackgroundChainTest::panned, 31) < 0.5, "a frame by a match");
        assertEquals(950, motion.facts().focalPx(), 10);
        assertTrue(motion.facts().driftPx() < 1.5, "drift " + motion.facts().driftPx());
        assertEquals(120, motion.facts().inliers());
        assertEquals(0.12, motion.facts().residualPx(), 0.02);
    }

    /** Carried along the runway before a flat world: the maps are no turns, and the free ones are the right ones. */
    @Test
    void aCarriedCameraKeepsTheFreeMaps() {
        BackgroundChain chain = new BackgroundChain(WIDTH, HEIGHT);
        chain.addFirstKey();
        chain.addFrame(new FrameTie(0, Homography.IDENTITY, true, NONE, 120, 0));
        Homography slid = new Homography(1, 0.08, -30, 0, 1.03, -4, 0, 6e-5, 1);
        Match m = match(slid, 0.1, random);
        chain.addFrame(new FrameTie(0, slid, true, m.pairs(), 120, 0.12));
        BackgroundMotion motion = chain.finish();
        assertEquals(CameraModel.FREE, motion.facts().model());
        Point2 p = new Point2(200, 600);
        assertTrue(motion.frame(1).toFixed().apply(slid.apply(p)).distanceTo(p) < 1e-6);
        assertTrue(Double.isNaN(motion.facts().focalPx()));
        assertTrue(Double.isNaN(motion.facts().driftPx()));
    }

    @Test
    void noiseOfTheMatchesIsNoMovement() {
        BackgroundMotion motion = chained(f -> panned(30), List.of(0), random);
        assertEquals(CameraModel.STILL, motion.facts().model());
        assertFalse(motion.cameraMoves());
        assertEquals(motion.frame(3).toFixed(), motion.frame(27).toFixed());
    }

    /** A tripod that trembles by half a pixel: 0.7 cm on the runway, and not noise. */
    @Test
    void aTremorOfHalfAPixelIsFollowed() {
        double radians = 0.5 / 1400;
        IntFunction<DrawnCamera> camera = f -> panned(30).panned(Math.toRadians(-3) + radians * Math.sin(f), 1400);
        BackgroundMotion motion = chained(camera, List.of(0), random);
        assertEquals(CameraModel.TURNING, motion.facts().model());
        Point2 p = new Point2(700, 400);
        double moved = motion.toFixed(1, p).distanceTo(motion.toFixed(3, p));
        double trueMove = camera.apply(1)
                .to(WIDE)
                .apply(p)
                .distanceTo(camera.apply(3).to(WIDE).apply(p));
        assertEquals(trueMove, moved, 0.06);
    }

    /** The reference picture was taken two metres farther along: what is found there does not hang together. */
    @Test
    void tellsTheDriftWhenTheReferencePictureIsFromAnotherPlace() {
        BackgroundChain chain = new BackgroundChain(WIDTH, HEIGHT);
        for (int k = 0; k < 3; k++) {
            DrawnCamera now = panned(24 + 4 * k);
            if (k == 0) {
                chain.addFirstKey();
            } else {
                chain.addKey(match(panned(20 + 4 * k).to(now), 0.1, random));
            }
            Homography shift = new Homography(1, 0, 40 * k, 0, 1, 0, 0, 0, 1);
            chain.foundInReference(match(shift.after(now.to(WIDE)), 0.4, random), true, WIDTH, HEIGHT);
            chain.addFrame(new FrameTie(k, Homography.IDENTITY, true, NONE, 120, 0));
        }
        BackgroundMotion motion = chain.finish();
        assertEquals(40, motion.facts().driftPx(), 8);
    }
}
