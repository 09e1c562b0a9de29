package org.boardtopit.synthetic;

import static org.boardtopit.synthetic.JumpPlan.ANKLE_OVER_SOLE;
import static org.boardtopit.synthetic.JumpPlan.HEEL_BEHIND_TOE;
import static org.boardtopit.synthetic.JumpPlan.LEG;
import static org.boardtopit.synthetic.JumpPlan.SHANK;
import static org.boardtopit.synthetic.JumpPlan.THIGH;
import static org.boardtopit.synthetic.JumpPlan.TOE_BEFORE_ANKLE;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boardtopit.contacts.Foot;
import org.boardtopit.models.BodyPoint;

/**
 * A jumper drawn by formulas: where each of the 33 points is at any time.
 *
 * <p>World: along = towards the pit from the take-off line, across = to the athlete's left, height; metres. A supporting foot
 * is planted flat at touchdown, its toe stands still until toe-off, its heel until heel-off, then the foot turns about the toe
 * ever faster. A swinging ankle follows a smooth curve relative to the hips that leaves the ground with the turning foot's
 * velocity and comes down with 2.5 to 5.5 m/s forwards (no more than three quarters of the running speed) and 1.2 to 3 m/s
 * downwards over the ground: an active landing; velocity breaks at touchdown. Knees by inverse kinematics.
 */
public final class DrawnJumper implements Jumper {
    private static final double HIP_WIDTH = 0.05;
    private static final double SHOULDER_WIDTH = 0.11;

    private final JumpPlan plan;
    private final double footWidth;
    private final double armSwing;
    private final List<Swing> left;
    private final List<Swing> right;

    /** The athlete and the run that belong to a seed. */
    public DrawnJumper(long seed, Foot takeoffFoot) {
        this(seed, JumpPlan.attempt(seed, takeoffFoot));
    }

    /** An athlete who does a drill. */
    public DrawnJumper(long seed, DrawnDrill drill) {
        this(seed, JumpPlan.drill(seed, drill));
    }

    private DrawnJumper(long seed, JumpPlan plan) {
        Random random = new Random(seed ^ 0x5eedL);
        this.plan = plan;
        footWidth = 0.03 + 0.03 * random.nextDouble();
        armSwing = 0.6 + 0.4 * random.nextDouble();
        left = swings(Foot.LEFT, random);
        right = swings(Foot.RIGHT, random);
    }

    @Override
    public List<TrueContact> contacts() {
        return List.copyOf(plan.contacts);
    }

    @Override
    public double statureM() {
        return plan.statureM;
    }

    @Override
    public double endS() {
        return plan.endS();
    }

    @Override
    public double[] hips(double timeS) {
        return new double[] {plan.hipAlongM(timeS), plan.hipHeight.at(timeS)};
    }

    /** Ankle from the toe (along, height) in metres when the foot is pitched by an angle, heel up positive. */
    static double[] ankleFromToe(double pitch, double statureM) {
        return turned(-TOE_BEFORE_ANKLE * statureM, ANKLE_OVER_SOLE * statureM, pitch);
    }

    /** Turned so that what lies behind goes up. */
    private static double[] turned(double x, double y, double pitch) {
        double c = Math.cos(pitch);
        double s = Math.sin(pitch);
        return new double[] {c * x + s * y, -s * x + c * y};
    }

    /** An ankle between two contacts, relative to the hips, and the pitch of the foot; it is still until it is held. */
    private record Swing(
            double fromS, double toS, double heldUntilS, HermitePath x, HermitePath y, HermitePath pitch) {}

    private List<Swing> swings(Foot foot, Random random) {
        List<Integer> own = new ArrayList<>();
        for (int i = 0; i < plan.contacts.size(); i++) {
            Foot f = plan.contacts.get(i).foot();
            if (f == foot || f == Foot.BOTH) {
                own.add(i);
            }
        }
        List<Swing> swings = new ArrayList<>();
        if (plan.contacts.get(own.get(0)).touchdownS() > 0) {
            swings.add(swing(-1, own.get(0), random));
        }
        for (int k = 1; k < own.size(); k++) {
            swings.add(swing(own.get(k - 1), own.get(k), random));
        }
        return swings;
    }

    // Knots of a swing: share of its time, along and height of the ankle from the hips in leg lengths, pitch in
    // radians.
    private static final double[][] STRIDE = {{0.30, -0.35, -0.50, 1.7}, {0.60, 0.15, -0.55, 0.6}};
    private static final double[][] LONG_STRIDE = {
        {0.14, -0.35, -0.50, 1.6},
        {0.28, 0.20, -0.52, 0.6},
        {0.42, 0.55, -0.52, 0.3},
        {0.56, 0.20, -0.60, 0.5},
        {0.66, -0.42, -0.60, 1.0},
        {0.75, -0.25, -0.48, 1.5},
        {0.84, 0.20, -0.52, 0.6}
    };

    private Swing swing(int before, int next, Random random) {
        double toS = plan.contacts.get(next).touchdownS();
        double fromS = before < 0 ? toS - 0.36 : plan.contacts.get(before).toeOffS();
        HermitePath x = new HermitePath();
        HermitePath y = new HermitePath();
        HermitePath pitch = new HermitePath();
        double leg = LEG * plan.statureM;
        List<double[]> knots = new ArrayList<>();
        if (before >= 0) {
            knots.add(leaving(before));
        }
        List<TrueContact> others = between(before, next);
        if (others.size() >= 2 || (before < 0 && next > 0 && others.get(0).touchdownS() < 0)) {
            others.forEach(c -> knots.addAll(swingThrough(c, toS, leg)));
        } else {
            for (double[] k : toS - fromS > 0.6 ? LONG_STRIDE : STRIDE) {
                knots.add(new double[] {
                    fromS + k[0] * (toS - fromS), k[1] * leg, k[2] * leg, k[3], Double.NaN, Double.NaN, Double.NaN
                });
            }
        }
        double[] touchdown = arriving(next, random);
        knots.add(reaching(touchdown, random));
        knots.add(touchdown);
        for (int i = 0; i < knots.size(); i++) {
            double[] k = knots.get(i);
            double[] a = knots.get(Math.max(0, i - 1));
            double[] b = knots.get(Math.min(knots.size() - 1, i + 1));
            HermitePath[] paths = {x, y, pitch};
            for (int d = 0; d < 3; d++) {
                double slope = Double.isNaN(k[4 + d]) ? (b[1 + d] - a[1 + d]) / (b[0] - a[0]) : k[4 + d];
                paths[d].add(k[0], k[1 + d], slope);
            }
        }
        boolean waits = before < 0 && !others.isEmpty() && others.get(0).touchdownS() < 0;
        return new Swing(fromS, toS, waits ? knots.get(0)[0] : Double.NEGATIVE_INFINITY, x, y, pitch);
    }

    private List<TrueContact> between(int before, int next) {
        return plan.contacts.subList(before + 1, next);
    }

    /** The free leg: behind when the other foot comes down, in front when it leaves. */
    private static List<double[]> swingThrough(TrueContact other, double toS, double leg) {
        double nan = Double.NaN;
        List<double[]> knots = new ArrayList<>();
        double behindS = Math.max(0.2, other.touchdownS() + 0.02);
        if (behindS < toS - 0.2) {
            knots.add(new double[] {behindS, -0.35 * leg, -0.62 * leg, 1.0, nan, nan, nan});
        }
        if (other.toeOffS() < toS - 0.15) {
            knots.add(new double[] {other.toeOffS(), 0.42 * leg, -0.60 * leg, 0.3, nan, nan, nan});
        }
        return knots;
    }

    /** Time, ankle from hips, pitch and their rates at toe-off: those of the foot that turns about its toe. */
    private double[] leaving(int contact) {
        TrueContact c = plan.contacts.get(contact);
        double e = 1e-5;
        double[] now = supported(c, plan.pitchAtToeOff.get(contact), c.toeOffS());
        double[] earlier = supported(c, plan.pitchAtToeOff.get(contact), c.toeOffS() - e);
        double[] hip = hips(c.toeOffS());
        double[] hipEarlier = hips(c.toeOffS() - e);
        double x = now[0] - hip[0];
        double y = now[1] - hip[1];
        return new double[] {
            c.toeOffS(),
            x,
            y,
            now[2],
            (x - (earlier[0] - hipEarlier[0])) / e,
            (y - (earlier[1] - hipEarlier[1])) / e,
            (now[2] - earlier[2]) / e
        };
    }

    /** The same at touchdown, with the velocity over the ground drawn by lot. */
    private double[] arriving(int contact, Random random) {
        TrueContact c = plan.contacts.get(contact);
        double e = 1e-5;
        double[] now = supported(c, plan.pitchAtToeOff.get(contact), c.touchdownS());
        double[] hip = hips(c.touchdownS());
        double[] hipEarlier = hips(c.touchdownS() - e);
        double hipVx = (hip[0] - hipEarlier[0]) / e;
        double hipVy = (hip[1] - hipEarlier[1]) / e;
        double forwards = Math.min(0.75 * hipVx, 2.5 + 3 * random.nextDouble());
        double downwards = -(1.2 + 1.8 * random.nextDouble());
        boolean pit = Double.isNaN(c.toeOffS());
        return new double[] {
            c.touchdownS(),
            now[0] - hip[0],
            now[1] - hip[1],
            now[2],
            pit ? -1 : forwards - hipVx,
            pit ? -0.5 : downwards - hipVy,
            pit ? 0 : 2 * random.nextDouble()
        };
    }

    /** Some 60 ms before touchdown, at the end of the reach forwards: from here the foot is braked evenly. */
    private static double[] reaching(double[] touchdown, Random random) {
        double before = 0.050 + 0.020 * random.nextDouble();
        double vx = -0.5 + 2.5 * random.nextDouble();
        double vy = (0.3 + random.nextDouble()) * touchdown[5];
        return new double[] {
            touchdown[0] - before,
            touchdown[1] - before * (vx + touchdown[4]) / 2,
            touchdown[2] - before * (vy + touchdown[5]) / 2,
            touchdown[3] - 0.2 + 0.15 * random.nextDouble(),
            vx,
            vy,
            0
        };
    }

    /** Ankle (along, height) and pitch of a foot that is down. */
    private double[] supported(TrueContact c, double pitchAtEnd, double timeS) {
        if (Double.isNaN(c.toeOffS())) {
            double h = plan.statureM;
            double heel = c.toeAlongM() - HEEL_BEHIND_TOE * h * Math.cos(pitchAtEnd);
            double[] fromHeel = turned((HEEL_BEHIND_TOE - TOE_BEFORE_ANKLE) * h, ANKLE_OVER_SOLE * h, pitchAtEnd);
            return new double[] {heel + fromHeel[0], fromHeel[1], pitchAtEnd};
        }
        double u = Math.max(0, (timeS - c.heelOffS()) / (c.toeOffS() - c.heelOffS()));
        double pitch = pitchAtEnd * u * u;
        double[] ankle = ankleFromToe(pitch, plan.statureM);
        return new double[] {c.toeAlongM() + ankle[0], ankle[1], pitch};
    }

    /** Ankle (along, height) and pitch of a foot at any time. */
    private double[] foot(Foot foot, double timeS) {
        for (int i = 0; i < plan.contacts.size(); i++) {
            TrueContact c = plan.contacts.get(i);
            boolean own = c.foot() == foot || c.foot() == Foot.BOTH;
            if (own && timeS >= c.touchdownS() && !(timeS > c.toeOffS())) {
                return supported(c, plan.pitchAtToeOff.get(i), timeS);
            }
        }
        Swing swing = null;
        for (Swing s : foot == Foot.LEFT ? left : right) {
            if (swing == null || timeS >= s.fromS()) {
                swing = s;
            }
        }
        double x = swing.x().at(Math.max(timeS, swing.heldUntilS()));
        double y = swing.y().at(Math.max(timeS, swing.heldUntilS()));
        double reach = 0.985 * LEG * plan.statureM;
        double shrink = Math.min(1, reach / Math.hypot(x, y));
        double[] hip = hips(timeS);
        return new double[] {
            hip[0] + shrink * x, hip[1] + shrink * y, swing.pitch().at(Math.max(timeS, swing.heldUntilS()))
        };
    }

    @Override
    public double[][] points(double timeS) {
        double h = plan.statureM;
        double[][] p = new double[BodyPoint.COUNT][];
        double[] hip = hips(timeS);
        for (Foot f : new Foot[] {Foot.LEFT, Foot.RIGHT}) {
            leg(p, f, timeS, hip);
        }
        double phase = phase(timeS);
        double lean = 0.08 + 0.05 * Math.sin(phase);
        double shoulderX = hip[0] + 0.30 * h * Math.sin(lean);
        double shoulderY = hip[1] + 0.30 * h * Math.cos(lean);
        arm(p, 1, shoulderX, shoulderY, armSwing * Math.sin(phase));
        arm(p, -1, shoulderX, shoulderY, -armSwing * Math.sin(phase));
        head(p, shoulderX + 0.115 * h * Math.sin(lean), shoulderY + 0.115 * h * Math.cos(lean));
        return p;
    }

    private void leg(double[][] p, Foot foot, double timeS, double[] hip) {
        double h = plan.statureM;
        double side = foot == Foot.LEFT ? 1 : -1;
        double[] a = foot(foot, timeS);
        double[] knee = knee(hip[0], hip[1], a[0], a[1]);
        double[] toe = turned(TOE_BEFORE_ANKLE * h, -ANKLE_OVER_SOLE * h, a[2]);
        double[] heel = turned((TOE_BEFORE_ANKLE - HEEL_BEHIND_TOE) * h, -ANKLE_OVER_SOLE * h, a[2]);
        double feet = side * footWidth * h;
        p[foot.hip().index()] = new double[] {hip[0], side * HIP_WIDTH * h, hip[1]};
        p[foot.knee().index()] = new double[] {knee[0], side * (HIP_WIDTH + footWidth) / 2 * h, knee[1]};
        p[foot.ankle().index()] = new double[] {a[0], feet, a[1]};
        p[foot.toe().index()] = new double[] {a[0] + toe[0], feet, a[1] + toe[1]};
        p[foot.heel().index()] = new double[] {a[0] + heel[0], feet, a[1] + heel[1]};
    }

    /** Where two links of the thigh's and the shank's length meet, in front of the line from hip to ankle. */
    private double[] knee(double hipX, double hipY, double ankleX, double ankleY) {
        double h = plan.statureM;
        double dx = ankleX - hipX;
        double dy = ankleY - hipY;
        double d = Math.min(0.9999 * LEG * h, Math.hypot(dx, dy));
        double along = (d * d + h * h * (THIGH * THIGH - SHANK * SHANK)) / (2 * d);
        double off = Math.sqrt(Math.max(0, THIGH * THIGH * h * h - along * along));
        double ux = dx / Math.hypot(dx, dy);
        double uy = dy / Math.hypot(dx, dy);
        return new double[] {hipX + along * ux - off * uy, hipY + along * uy + off * ux};
    }

    /** Half a turn from the middle of one contact to that of the next. */
    private double phase(double timeS) {
        List<TrueContact> c = plan.contacts;
        int i = 0;
        while (i + 2 < c.size() && c.get(i + 1).middleS() < timeS) {
            i++;
        }
        double a = c.get(i).middleS();
        double b = c.get(i + 1).middleS();
        double u = Math.max(-1, Math.min(1.2, (timeS - a) / (b - a)));
        return Math.PI * (i + u + (c.get(0).foot() == Foot.LEFT ? 0.5 : -0.5));
    }

    private void arm(double[][] p, int side, double shoulderX, double shoulderY, double swing) {
        double h = plan.statureM;
        double across = side * SHOULDER_WIDTH * h;
        double elbowX = shoulderX + 0.162 * h * Math.sin(swing - 0.3);
        double elbowY = shoulderY - 0.162 * h * Math.cos(swing - 0.3);
        double fore = swing + 1.2;
        double wristX = elbowX + 0.155 * h * Math.sin(fore);
        double wristY = elbowY - 0.155 * h * Math.cos(fore);
        double handX = wristX + 0.05 * h * Math.sin(fore);
        double handY = wristY - 0.05 * h * Math.cos(fore);
        BodyPoint[] hand = {BodyPoint.LEFT_LITTLE_FINGER, BodyPoint.LEFT_INDEX_FINGER, BodyPoint.LEFT_THUMB};
        put(p, BodyPoint.LEFT_SHOULDER, side, shoulderX, across, shoulderY);
        put(p, BodyPoint.LEFT_ELBOW, side, elbowX, 1.2 * across, elbowY);
        put(p, BodyPoint.LEFT_WRIST, side, wristX, across, wristY);
        for (BodyPoint finger : hand) {
            put(p, finger, side, handX, across, handY);
        }
    }

    private void head(double[][] p, double earX, double earY) {
        double h = plan.statureM;
        p[BodyPoint.NOSE.index()] = new double[] {earX + 0.06 * h, 0, earY};
        for (int side : new int[] {1, -1}) {
            put(p, BodyPoint.LEFT_EAR, side, earX, side * 0.042 * h, earY);
            put(p, BodyPoint.LEFT_EYE_INNER, side, earX + 0.05 * h, side * 0.01 * h, earY + 0.015 * h);
            put(p, BodyPoint.LEFT_EYE, side, earX + 0.05 * h, side * 0.018 * h, earY + 0.015 * h);
            put(p, BodyPoint.LEFT_EYE_OUTER, side, earX + 0.045 * h, side * 0.025 * h, earY + 0.015 * h);
            put(p, BodyPoint.MOUTH_LEFT, side, earX + 0.05 * h, side * 0.015 * h, earY - 0.02 * h);
        }
    }

    private static void put(double[][] p, BodyPoint left, int side, double x, double across, double y) {
        p[(side > 0 ? left : left.otherSide()).index()] = new double[] {x, across, y};
    }
}
