package org.boardtopit.motion;

import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * Decides for every frame whether the network exchanged the left and the right limb.
 *
 * <p>Method: our own; per-survivor processing (Raheli, Polydoros and Tzou 1995, IEEE Trans. Commun. 43:354-364, from memory)
 * of two states, keep and exchange. Each survivor carries, for every point of both limbs, a Kalman filter of constant
 * velocity with white acceleration. A frame's cost in a state is the capped, mass-weighted distance of the points' modes
 * from where the filters expect them; exchanging costs a little in every frame and changing the state more. The velocity is
 * what tells the legs apart as they pass each other, which their places do not; filters instead of second differences make
 * the decision independent of the frame rate.
 */
final class SideIdentity {
    /** Squared distance (in variances) above which a point says no more: 3 sd. */
    private static final double CAP = 9;

    private static final double LEAST_MASS = 0.05;
    /** From this distance on limbs are clearly apart: a foot's length. */
    private static final double APART_M = 0.3;

    /**
     * What exchanging costs, in log likelihood. The network is right about the legs in 97 % of the frames and its errors come
     * in runs of up to a quarter of a second, so the cost is one of time, and far less than log(0.97 / 0.03) a frame. It
     * hardly ever exchanges arms, but an arm behind the trunk is seen anywhere (both measured on our footage).
     *
     * @param exchangedPerS of each second in which the sides are exchanged
     * @param change of each change between keeping and exchanging
     */
    record Prior(double exchangedPerS, double change) {
        static final Prior LEGS = new Prior(45, 2.5);
        static final Prior ARMS = new Prior(200, 6);
    }

    private final Prior prior;
    private final BodyPoint[] left;
    private final double[] accelerationMs2;
    private final LandmarkPlane plane;
    private final double[] timesS;

    /**
     * For one pair of limbs.
     *
     * @param left points of the left limb
     * @param accelerationMs2 typical acceleration of each in m/s^2, at touchdown too
     */
    SideIdentity(LandmarkPlane plane, double[] timesS, BodyPoint[] left, double[] accelerationMs2, Prior prior) {
        this.prior = prior;
        this.plane = plane;
        this.timesS = timesS;
        this.left = left;
        this.accelerationMs2 = accelerationMs2;
    }

    /** True for the frames in which left and right are to be exchanged. */
    boolean[] exchanged() {
        int n = timesS.length;
        Survivor[] survivors = {new Survivor(), new Survivor()};
        survivors[1].cost = prior.change();
        byte[][] from = new byte[n][2];
        for (int f = 0; f < n; f++) {
            if (!plane.isSeen(f)) {
                from[f][1] = 1;
                continue;
            }
            Survivor[] next = new Survivor[2];
            double step = f == 0 ? 0 : Math.min(0.1, timesS[f] - timesS[f - 1]);
            for (int state = 0; state < 2; state++) {
                double exchangedCost = state * prior.exchangedPerS() * step;
                Survivor a = survivors[state].copy();
                Survivor b = survivors[1 - state].copy();
                b.cost += prior.change();
                a.cost += a.step(f, state) + exchangedCost;
                b.cost += b.step(f, state) + exchangedCost;
                boolean stays = a.cost <= b.cost;
                next[state] = stays ? a : b;
                from[f][state] = (byte) (stays ? state : 1 - state);
            }
            survivors = next;
        }
        boolean[] exchanged = new boolean[n];
        int state = survivors[0].cost <= survivors[1].cost ? 0 : 1;
        for (int f = n - 1; f >= 0; f--) {
            exchanged[f] = state == 1;
            state = from[f][state];
        }
        return mostlyExchanged(exchanged) ? opposite(exchanged) : exchanged;
    }

    /**
     * True when the network would be wrong for the greater part. The opposite decisions make the same two limbs, only with each
     * other's names, so they explain the movement as well and cost less: the search over survivors has then passed over them.
     * A frame counts by how far the limbs are apart, because of limbs side by side a name says nothing.
     */
    private boolean mostlyExchanged(boolean[] exchanged) {
        double balance = 0;
        for (int f = 0; f < exchanged.length; f++) {
            if (plane.isSeen(f)) {
                double apartM = apartM(f);
                double weight = Double.isFinite(apartM) ? Math.min(1, apartM / APART_M) : 0;
                balance += exchanged[f] ? weight : -weight;
            }
        }
        return balance > 0;
    }

    /** Mean distance between the limbs' points. */
    private double apartM(int frame) {
        double sum = 0;
        for (BodyPoint point : left) {
            Point2 own = plane.place(frame, point, point, 0);
            Point2 other = plane.place(frame, point.otherSide(), point, 0);
            sum += own.distanceTo(other);
        }
        return sum / left.length;
    }

    private static boolean[] opposite(boolean[] exchanged) {
        boolean[] opposite = new boolean[exchanged.length];
        for (int f = 0; f < opposite.length; f++) {
            opposite[f] = !exchanged[f];
        }
        return opposite;
    }

    /** The filters of one history of decisions. */
    private final class Survivor {
        private double cost;
        private final Track[] tracks;

        Survivor() {
            tracks = new Track[2 * left.length];
            for (int i = 0; i < tracks.length; i++) {
                tracks[i] = new Track();
            }
        }

        private Survivor(Survivor other) {
            cost = other.cost;
            tracks = new Track[other.tracks.length];
            for (int i = 0; i < tracks.length; i++) {
                tracks[i] = new Track(other.tracks[i]);
            }
        }

        Survivor copy() {
            return new Survivor(this);
        }

        double step(int frame, int state) {
            double sum = 0;
            for (int i = 0; i < left.length; i++) {
                BodyPoint own = left[i];
                BodyPoint other = own.otherSide();
                sum += tracks[2 * i].step(frame, state == 0 ? own : other, own, accelerationMs2[i]);
                sum += tracks[2 * i + 1].step(frame, state == 0 ? other : own, other, accelerationMs2[i]);
            }
            return sum / 2; // the points of a limb err together: half of what independent ones would say
        }
    }

    /** Constant-velocity filter of one point, the same variance along both axes. */
    private final class Track {
        private double timeS = Double.NaN;
        private double x;
        private double y;
        private double vx;
        private double vy;
        private final double[] p = new double[3]; // variance of place, covariance, variance of velocity

        Track() {}

        Track(Track other) {
            timeS = other.timeS;
            x = other.x;
            y = other.y;
            vx = other.vx;
            vy = other.vy;
            System.arraycopy(other.p, 0, p, 0, 3);
        }

        /** Moves on to the frame, takes the more likely mode of {@code seenAs} and returns half its squared distance. */
        double step(int frame, BodyPoint seenAs, BodyPoint meant, double acceleration) {
            double now = timesS[frame];
            if (!Double.isNaN(timeS)) {
                predict(now - timeS, acceleration);
            }
            double best = CAP;
            int bestMode = -1;
            for (int mode = 0; mode < 2; mode++) {
                Point2 z = plane.place(frame, seenAs, meant, mode);
                double mass = plane.mass(frame, seenAs, mode);
                if (!z.isKnown() || mass < LEAST_MASS) {
                    continue;
                }
                if (Double.isNaN(timeS)) {
                    start(now, z, plane.sd(frame, seenAs, mode));
                    return 0;
                }
                double sd = plane.sd(frame, seenAs, mode);
                double s = p[0] + sd * sd;
                double d2 = ((z.x() - x) * (z.x() - x) + (z.y() - y) * (z.y() - y)) / s - 2 * Math.log(mass);
                if (d2 < best) {
                    best = d2;
                    bestMode = mode;
                }
            }
            timeS = now;
            if (bestMode >= 0) {
                update(plane.place(frame, seenAs, meant, bestMode), plane.sd(frame, seenAs, bestMode));
            } else if (p[0] > 0.5 * 0.5) {
                timeS = Double.NaN; // lost: begin anew with the next sight
            }
            return best / 2;
        }

        private void start(double now, Point2 z, double sd) {
            timeS = now;
            x = z.x();
            y = z.y();
            vx = 5; // half way between a foot that stands and one that swings
            vy = 0;
            p[0] = sd * sd;
            p[1] = 0;
            p[2] = 36;
        }

        private void predict(double dt, double acceleration) {
            x += vx * dt;
            y += vy * dt;
            // White acceleration of this size for about two hundredths of a second, the length of a foot strike.
            double q = acceleration * acceleration * 0.02;
            p[0] += 2 * dt * p[1] + dt * dt * p[2] + q * dt * dt * dt / 3;
            p[1] += dt * p[2] + q * dt * dt / 2;
            p[2] += q * dt;
        }

        private void update(Point2 z, double sd) {
            double s = p[0] + sd * sd;
            double k0 = p[0] / s;
            double k1 = p[1] / s;
            double ex = z.x() - x;
            double ey = z.y() - y;
            x += k0 * ex;
            y += k0 * ey;
            vx += k1 * ex;
            vy += k1 * ey;
            p[2] -= k1 * p[1];
            p[1] -= k0 * p[1];
            p[0] -= k0 * p[0];
        }
    }
}
