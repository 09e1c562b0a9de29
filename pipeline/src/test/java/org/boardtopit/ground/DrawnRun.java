package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boardtopit.ground.RunTraces.Body;
import org.boardtopit.ground.RunTraces.Fall;
import org.boardtopit.ground.RunTraces.Trace;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;

/**
 * A triple jump as a drawn camera sees it, reduced to what {@link SelfCalibration} looks at. SYN: free fall with 9.81 m/s^2
 * in every flight, a body of rigid segments that lean and swing, toes on the ground.
 *
 * @param camera pinhole written by the textbook's formula, not the one under test
 * @param noiseStature standard deviation of every point per axis, as a share of standing height
 */
record DrawnRun(DrawnCamera camera, double statureM, double noiseStature, long seed) {
    static final double FPS = 60;
    private static final double GRAVITY_MS2 = 9.81;
    /** Toe on the board, at both landings, and the mark: W2 of the worked attempts (SYN). */
    static final double[] PLACES_M = {-0.09, 4.80, 8.45, 13.21};

    /** Where flights start and how fast: along m, height m, speeds m/s, duration s. */
    private static final double[][] FLIGHTS = {
        {-5.2, 0.95, 8.4, 0.6, 0.12},
        {-3.1, 0.95, 8.5, 0.6, 0.12},
        {0.35, 1.05, 8.3, 2.1, 0.45},
        {5.2, 1.02, 7.5, 1.5, 0.34},
        {8.9, 1.05, 6.5, 2.2, 0.56}
    };

    private static final double[] TOES_M = {-6.3, -4.2, -2.1, -0.09, 4.80, 8.45};

    RunTraces traces() {
        Random random = new Random(seed);
        List<List<Fall>> falls = new ArrayList<>();
        List<Body> bodies = new ArrayList<>();
        for (double[] f : FLIGHTS) {
            List<Fall> fall = new ArrayList<>();
            for (double t = 0; t <= f[4]; t += 1 / FPS) {
                double along = f[0] + f[2] * t;
                double height = f[1] + f[3] * t - GRAVITY_MS2 / 2 * t * t;
                fall.add(new Fall(t, seen(along, 0, height, random, 0.6)));
                bodies.add(new Body(
                        chain(along, height, 1, 9 * along, random), chain(along, height, -1, 9 * along + 3, random)));
            }
            falls.add(fall);
        }
        List<Trace> toes = new ArrayList<>();
        for (int i = 0; i < TOES_M.length; i++) {
            double across = (i % 2 == 0 ? 1 : -1) * 0.048;
            toes.add(new Trace(seen(TOES_M[i], across * statureM, 0.014 * statureM, random, 1), across));
        }
        return new RunTraces(falls, bodies, toes);
    }

    /** Shoulder, hip, knee, ankle; trunk, thigh and shank are 0.27, 0.235 and 0.238 of the standing height, 0.743 in all. */
    private List<Trace> chain(double along, double height, int side, double phase, Random random) {
        double trunk = 0.1 * Math.sin(phase / 3);
        double thigh = 0.6 * Math.sin(phase);
        double shank = thigh - 0.5 - 0.4 * Math.cos(phase);
        double[][] steps = {{0.27, Math.PI + trunk}, {0.235, thigh}, {0.238, shank}};
        double x = along + 0.27 * statureM * Math.sin(trunk);
        double y = height + 0.27 * statureM * Math.cos(trunk);
        double across = side * 0.058;
        List<Trace> chain = new ArrayList<>();
        chain.add(new Trace(seen(x, across * statureM, y, random, 1), across));
        x = along;
        y = height;
        for (int i = 0; i < steps.length; i++) {
            if (i > 0) {
                x += steps[i][0] * statureM * Math.sin(steps[i][1]);
                y -= steps[i][0] * statureM * Math.cos(steps[i][1]);
            }
            chain.add(new Trace(seen(x, across * statureM, y, random, 1), across));
        }
        return chain;
    }

    private Point2 seen(double along, double across, double height, Random random, double share) {
        double sd = share * noiseStature * statureM;
        return camera.project(along + sd * random.nextGaussian(), across, height + sd * random.nextGaussian());
    }

    /** Where a toe on the ground at a place along is seen. */
    Point2 onGround(double alongM) {
        return camera.project(alongM, 0, 0);
    }

    int direction() {
        return camera.acrossM() < 0 ? 1 : -1;
    }
}
