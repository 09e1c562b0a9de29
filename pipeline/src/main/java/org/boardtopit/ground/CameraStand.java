package org.boardtopit.ground;

/**
 * How a camera stands beside a run: the seven numbers of {@link RunwayCamera} less the one that only says where along the
 * run counting starts.
 *
 * @param yawRad turn of the view from square to the run, positive towards the pit
 * @param pitchRad positive upwards
 * @param rollRad turn of the camera about its axis, clockwise as the camera operator sees it
 * @param heightM above the ground
 * @param distanceM from the line of the run
 */
record CameraStand(double focalPx, double yawRad, double pitchRad, double rollRad, double heightM, double distanceM) {

    /**
     * The camera; along counts from where it stands, towards the pit.
     *
     * @param direction +1 when the run goes to the right in the picture: the camera then stands on the athlete's right
     */
    RunwayCamera camera(Lens lens, int direction) {
        double sin = Math.sin(yawRad);
        double cos = Math.cos(yawRad);
        double[] forward = {sin * Math.cos(pitchRad), direction * cos * Math.cos(pitchRad), Math.sin(pitchRad)};
        double[] level = {direction * cos, -sin, 0}; // to the right of the picture, were there no roll
        double[] down = cross(forward, level);
        double[] right = new double[3];
        for (int i = 0; i < 3; i++) {
            right[i] = Math.cos(rollRad) * level[i] + Math.sin(rollRad) * down[i];
        }
        down = cross(forward, right);
        double[] worldToCamera = {
            right[0], right[1], right[2], down[0], down[1], down[2], forward[0], forward[1], forward[2]
        };
        double[] position = {0, -direction * distanceM, heightM};
        return RunwayCamera.at(focalPx, lens, worldToCamera, position);
    }

    private static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }
}
