package org.boardtopit.measures;

/**
 * Flight of the centre of mass without air drag.
 *
 * <pre>t = (vy + sqrt(vy^2 + 2 g h)) / g,   range = vx t,   rise = vy^2 / (2 g)</pre>
 *
 * <p>Air drag shortens a real flight by about a per cent, more against the wind.
 *
 * @param vxMs velocity along the runway at toe-off, m/s, + in running direction
 * @param vyMs velocity upwards at toe-off, m/s
 * @param dropM height of the centre of mass at toe-off less at touchdown, m, h above; + when it lands lower
 */
public record Projectile(double vxMs, double vyMs, double dropM) {

    /** Gravity at mid latitudes and low height, m/s^2; the worked examples use this value. */
    public static final double GRAVITY_MS2 = 9.81;

    /**
     * Time to touchdown in s; NaN when the height of touchdown is never reached (it lies above the peak) or a value is
     * unknown. When it is reached twice, the time on the way down.
     */
    public double flightTimeS() {
        double inside = vyMs * vyMs + 2 * GRAVITY_MS2 * dropM;
        return inside >= 0 ? (vyMs + Math.sqrt(inside)) / GRAVITY_MS2 : Double.NaN;
    }

    /** Distance that the centre of mass covers in flight, m. */
    public double rangeM() {
        return vxMs * flightTimeS();
    }

    /** Rise of the centre of mass from toe-off to its peak, m; 0 when it already falls at toe-off. */
    public double riseM() {
        return vyMs < 0 ? 0 : vyMs * vyMs / (2 * GRAVITY_MS2);
    }

    /** Take-off angle from the horizontal in degrees, + up. */
    public double takeoffAngleDeg() {
        return Math.toDegrees(Math.atan2(vyMs, vxMs));
    }

    /** Resultant velocity at toe-off, m/s. */
    public double speedMs() {
        return Math.hypot(vxMs, vyMs);
    }

    /**
     * Angle stated for this take-off less the one its velocities give, in degrees. More than the rounding of the three
     * numbers allows means that one of them is wrong.
     */
    public double angleDisagreementDeg(double statedDeg) {
        return statedDeg - takeoffAngleDeg();
    }

    /** Upward velocity at toe-off, m/s, of a flight of known time and drop: g t / 2 - h / t. NaN unless the time is above 0. */
    public static double vyFromFlightMs(double flightTimeS, double dropM) {
        return flightTimeS > 0 ? GRAVITY_MS2 * flightTimeS / 2 - dropM / flightTimeS : Double.NaN;
    }
}
