package org.boardtopit.synthetic;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;

/**
 * The contacts of a drawn attempt and the path of the hips: running strides, board, hop landing and step landing in the legal
 * order of feet (A-A-B; World Athletics Technical Rules, TR31, MEM-H), pit.
 *
 * <p>The hips stand for the body: free fall whenever no foot is down (g = 9.81), speed lost at each contact. Ground covered by
 * the hips during a contact follows from the legs' reach, contact times from it and the speed (100 to 170 ms), flight times
 * from the vertical speed at toe-off. Ranges inside those of club to national level (biomechanics section 3c, MEM-M).
 */
final class JumpPlan {
    static final double GRAVITY_MS2 = 9.81;

    // Lengths as shares of standing height. Legs: Winter's thigh .245 and shank .246 (MEM-H); the foot is .152 long.
    static final double THIGH = 0.245;
    static final double SHANK = 0.246;
    static final double LEG = THIGH + SHANK;
    static final double TOE_BEFORE_ANKLE = 0.110;
    static final double ANKLE_OVER_SOLE = 0.039;
    static final double HEEL_BEHIND_TOE = 0.152;
    private static final double STRETCHED = 0.975;

    final double statureM;
    final Foot takeoffFoot;
    final List<TrueContact> contacts = new ArrayList<>();
    /** Pitch of the foot at toe-off, radians, heel up. */
    final List<Double> pitchAtToeOff = new ArrayList<>();

    final HermitePath hipAlong = new HermitePath();
    final HermitePath hipHeight = new HermitePath();

    private final Random random;
    private double timeS;
    private double along;
    private double vx;
    private double vy;
    private double height;
    private double boardAlong;
    private double endS;

    private JumpPlan(long seed, Foot takeoffFoot) {
        this.random = new Random(seed);
        this.takeoffFoot = takeoffFoot;
        this.statureM = uniform(1.55, 1.92);
    }

    /** An attempt; the seed decides on the athlete and the run, the foot is given. */
    static JumpPlan attempt(long seed, Foot takeoffFoot) {
        JumpPlan plan = new JumpPlan(seed, takeoffFoot);
        plan.planAttempt();
        return plan;
    }

    /** A drill; the seed decides on the athlete and how it is done. */
    static JumpPlan drill(long seed, DrawnDrill drill) {
        JumpPlan plan = new JumpPlan(seed, drill.contacts().get(0));
        plan.planDrill(drill);
        return plan;
    }

    private void planAttempt() {
        int strides = 3 + random.nextInt(3);
        vx = uniform(6.4, 9.3);
        vy = -0.7;
        timeS = uniform(0.05, 0.3);
        approach(strides);
        stand(ContactKind.BOARD, takeoffFoot, 64, uniform(.50, .53), 50, .985, uniform(.3, .7), uniform(1.7, 2.3));
        stand(
                ContactKind.HOP_LANDING,
                takeoffFoot,
                61,
                uniform(.52, .56),
                50,
                .985,
                uniform(.5, .9),
                uniform(1.2, 1.8));
        Foot last = takeoffFoot.other();
        stand(ContactKind.STEP_LANDING, last, 61, uniform(.52, .56), 52, .985, uniform(.6, 1.1), uniform(1.7, 2.3));
        land();
        shiftToTheLine(strides);
        endS = contacts.get(contacts.size() - 1).touchdownS() + 0.6;
    }

    private void approach(int strides) {
        for (int i = 0; i < strides; i++) {
            Foot foot = (strides - i) % 2 == 0 ? takeoffFoot : takeoffFoot.other();
            stand(ContactKind.APPROACH, foot, 70, uniform(0.44, 0.48), 40, 0.965, 0, uniform(0.4, 0.6));
        }
    }

    /** Supports of 0.13 to 0.4 s and flights of 0.15 to 0.6 s (common practice, no source). */
    private void planDrill(DrawnDrill drill) {
        vy = -0.5;
        if (drill.approach()) {
            vx = uniform(drill.slow() ? 2.5 : 4, drill.slow() ? 3.5 : 6.5);
            timeS = uniform(0.05, 0.3);
            approach(3);
        } else {
            standFirst(takeoffFoot, uniform(drill.slow() ? 1.0 : 2.2, drill.slow() ? 1.8 : 3.0));
        }
        int firstOfDrill = drill.approach() ? 3 : 0;
        int n = drill.contacts().size();
        for (int i = contacts.size() - firstOfDrill; i < n; i++) {
            Foot foot = drill.contacts().get(i);
            if (foot == Foot.BOTH) {
                land();
                shiftToTheLine(firstOfDrill);
                endS = contacts.get(contacts.size() - 1).touchdownS() + 0.6;
                return;
            }
            bounce(drill.slow(), foot);
        }
        Foot next = drill.contacts().get(n - 1);
        for (int i = 0; i < 3; i++) {
            next = next.other();
            stand(ContactKind.APPROACH, next, 74, 0.3, 35, 0.965, 0, uniform(0.5, 0.7));
        }
        shiftToTheLine(firstOfDrill);
        endS = contacts.get(contacts.size() - 2).toeOffS();
    }

    private void bounce(boolean slow, Foot foot) {
        double faster = Math.max(slow ? 1.0 : 2.5, vx + uniform(-0.4, 0.4)) - vx;
        if (slow) {
            stand(ContactKind.DRILL, foot, 76, uniform(.20, .28), 40, .97, -faster, uniform(0.9, 1.6));
        } else {
            stand(ContactKind.DRILL, foot, 68, uniform(.40, .50), 48, .98, -faster, uniform(1.3, 2.2));
        }
    }

    /** Stands on one foot from before the clip until it pushes off. */
    private void standFirst(Foot foot, double outVx) {
        double h = statureM;
        height = (ANKLE_OVER_SOLE + 0.95 * LEG) * h;
        timeS = -1;
        knot(0);
        timeS = uniform(0.4, 0.9);
        knot(0);
        double travel = 0.3 * h;
        double toe = TOE_BEFORE_ANKLE * h;
        double pitch = Math.toRadians(45);
        double push = 2 * travel / outVx;
        double[] ankle = DrawnJumper.ankleFromToe(pitch, h);
        double ahead = travel - (toe + ankle[0]);
        double heelOff = timeS + 0.5 * push;
        timeS += push;
        along = travel;
        height = ankle[1] + Math.sqrt(0.98 * LEG * h * 0.98 * LEG * h - ahead * ahead);
        vx = outVx;
        vy = uniform(1.0, 1.6);
        knot();
        contacts.add(new TrueContact(ContactKind.DRILL, foot, -1, heelOff, timeS, toe));
        pitchAtToeOff.add(pitch);
    }

    private double uniform(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** A contact on one foot: from the flight so far to the next toe-off. */
    private void stand(
            ContactKind kind,
            Foot foot,
            double legDeg,
            double travel,
            double pitchDeg,
            double stretchAtToeOff,
            double speedLoss,
            double upwards) {
        double h = statureM;
        double leg = Math.toRadians(legDeg + uniform(-2, 2));
        double hipOverGround = (ANKLE_OVER_SOLE + STRETCHED * LEG * Math.sin(leg)) * h;
        if (contacts.isEmpty()) {
            height = hipOverGround;
        } else {
            hipOverGround =
                    Math.min(hipOverGround, height - 0.006 * h); // the knee gives way before it hurries the stride
            fly(hipOverGround);
        }
        double toe = along + (STRETCHED * LEG * Math.cos(leg) + TOE_BEFORE_ANKLE) * h;
        double outVx = vx - speedLoss;
        double supportS = 2 * travel * h / (vx + outVx);
        double pitch = Math.toRadians(pitchDeg + uniform(-4, 4));
        double touchdown = timeS;
        double hipOut = along + travel * h;
        double[] ankle = DrawnJumper.ankleFromToe(pitch, h);
        double ahead = hipOut - (toe + ankle[0]);
        double reach = stretchAtToeOff * LEG * h;
        double heightOut = ankle[1] + Math.sqrt(reach * reach - ahead * ahead);
        knot(); // the hips at touchdown
        timeS += supportS;
        along = hipOut;
        height = heightOut;
        vx = outVx;
        vy = upwards;
        knot();
        double heelOff = touchdown + uniform(0.40, 0.55) * supportS;
        contacts.add(new TrueContact(kind, foot, touchdown, heelOff, timeS, toe));
        pitchAtToeOff.add(pitch);
    }

    /** Free fall to a height of the hips. */
    private void fly(double toHeight) {
        double t = (vy + Math.sqrt(vy * vy + 2 * GRAVITY_MS2 * (height - toHeight))) / GRAVITY_MS2;
        timeS += t;
        along += vx * t;
        height = toHeight;
        vy -= GRAVITY_MS2 * t;
    }

    /** Both heels into the sand; the hips come to rest over them. */
    private void land() {
        double h = statureM;
        fly(0.33 * h);
        knot();
        double heel = along + 0.86 * LEG * Math.cos(Math.toRadians(40)) * h;
        contacts.add(new TrueContact(
                ContactKind.PIT, Foot.BOTH, timeS, Double.NaN, Double.NaN, heel + HEEL_BEHIND_TOE * h * Math.cos(0.7)));
        pitchAtToeOff.add(-0.7);
        timeS += 0.35;
        along = heel - 0.05 * h;
        height = 0.2 * h;
        vx = 0;
        vy = 0;
        knot();
    }

    private void knot(double speed) {
        hipAlong.add(timeS, along, speed);
        hipHeight.add(timeS, height, speed);
    }

    private void knot() {
        hipAlong.add(timeS, along, vx);
        hipHeight.add(timeS, height, vy);
    }

    private void shiftToTheLine(int boardIndex) {
        boardAlong = contacts.get(boardIndex).toeAlongM() + uniform(0.0, 0.25);
        contacts.replaceAll(c -> new TrueContact(
                c.kind(), c.foot(), c.touchdownS(), c.heelOffS(), c.toeOffS(), c.toeAlongM() - boardAlong));
    }

    /** Along of the hips at a time, counted from the take-off line. */
    double hipAlongM(double atS) {
        return hipAlong.at(atS) - boardAlong;
    }

    double endS() {
        return endS;
    }
}
