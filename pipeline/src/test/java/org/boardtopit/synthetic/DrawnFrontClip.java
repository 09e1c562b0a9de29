package org.boardtopit.synthetic;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Mark;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.ground.CalibrationException;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.PoseTrack;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.VideoInfo;

/**
 * A drawn jumper seen from in front or behind, whose trunk, arms and head roll to the side about the hips as planted: a roll to
 * the athlete's left lowers the left shoulder. The network's habit of drawing the hip of a raised thigh too high is drawn too.
 */
public final class DrawnFrontClip {
    private static final int WIDTH = 1920;
    private static final int HEIGHT = 1080;
    private static final double CORRELATION_S = 0.040;
    /** Of our clip from in front, where the network draws a hip higher by this share of what its knee is higher. */
    private static final double HIP_FOLLOWS_KNEE = 0.063;

    private final Jumper jumper;
    private final DrawnCamera camera;
    private final DoubleUnaryOperator rollDeg;
    private final double errorStature;
    private final double exchangedShare;
    private final ClipLandmarks landmarks;

    /**
     * A clip.
     *
     * @param rollDeg of the upper body against the jumper's time in seconds, + to the athlete's left
     * @param fromS the jumper's time at which the clip begins
     * @param toS and ends
     * @param errorStature standard deviation of a point per axis, as a share of the standing height
     * @param exchangedShare of the frames in which all left points carry the names of the right ones
     */
    public DrawnFrontClip(
            Jumper jumper,
            DrawnCamera camera,
            DoubleUnaryOperator rollDeg,
            double fromS,
            double toS,
            double fps,
            double errorStature,
            double exchangedShare) {
        this.jumper = jumper;
        this.camera = camera;
        this.rollDeg = rollDeg;
        this.errorStature = errorStature;
        this.exchangedShare = exchangedShare;
        this.landmarks = draw(fromS, toS, fps);
    }

    /**
     * A camera on a tripod, 30 m in front of the board or 20 m behind it, that looks along the runway.
     *
     * @param acrossM beside the middle of the runway, to the athlete's left; it is turned so as to show the board in the middle
     */
    public static DrawnCamera camera(Camera.View view, double acrossM, double rollRad) {
        boolean front = view == Camera.View.FRONT;
        double alongM = front ? 30 : -20;
        // Pan is from square to the runway: a quarter turn looks along it, a little less looks at the board from
        // beside.
        double pan = Math.PI / 2 - Math.atan2(Math.abs(acrossM), Math.abs(alongM));
        return new DrawnCamera(
                WIDTH, HEIGHT, front ? 3000 : 1800, alongM, acrossM, 1.8, front ? -pan : pan, 0.02, rollRad);
    }

    public ClipLandmarks landmarks() {
        return landmarks;
    }

    /** The camera as it is found from exact marks. */
    public RunwayCamera runwayCamera() {
        List<Mark> marks = new ArrayList<>();
        for (double[] m : DrawnClip.marks()) {
            marks.add(new Mark("m" + marks.size(), m[0], m[1], camera.project(m[0], m[1], 0)));
        }
        try {
            return RunwayCamera.fromMarks(marks, WIDTH, HEIGHT);
        } catch (CalibrationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** Points of the jumper with the roll: [point][along, across, height]. */
    private double[][] points(double timeS) {
        double[][] points = jumper.points(timeS);
        double roll = Math.toRadians(rollDeg.applyAsDouble(timeS));
        double hips = jumper.hips(timeS)[1];
        for (int i = 0; i <= BodyPoint.RIGHT_HIP.index(); i++) {
            double[] p = points[i];
            double up = p[2] - hips;
            points[i] = new double[] {
                p[0], p[1] * Math.cos(roll) + up * Math.sin(roll), hips + up * Math.cos(roll) - p[1] * Math.sin(roll)
            };
        }
        for (BodyPoint hip : new BodyPoint[] {BodyPoint.LEFT_HIP, BodyPoint.RIGHT_HIP}) {
            BodyPoint knee = hip == BodyPoint.LEFT_HIP ? BodyPoint.LEFT_KNEE : BodyPoint.RIGHT_KNEE;
            points[hip.index()][2] += HIP_FOLLOWS_KNEE * points[knee.index()][2];
        }
        return points;
    }

    private ClipLandmarks draw(double fromS, double toS, double fps) {
        int n = (int) ((toS - fromS) * fps);
        List<Long> stamps = new ArrayList<>();
        List<FrameRegistration> registrations = new ArrayList<>();
        List<Optional<Square>> squares = new ArrayList<>();
        List<Optional<FramePose>> poses = new ArrayList<>();
        Random random = new Random(11);
        double[][] drift = new double[BodyPoint.COUNT][2];
        for (int f = 0; f < n; f++) {
            stamps.add(Math.round(f * 1e6 / fps));
            registrations.add(new FrameRegistration(Homography.IDENTITY, true, 200, 0.2));
            FramePose pose = pose(fromS + f / fps, Math.exp(-1 / fps / CORRELATION_S), random, drift);
            poses.add(Optional.of(pose));
            squares.add(Optional.of(pose.square()));
        }
        return new ClipLandmarks(
                new VideoInfo(WIDTH, HEIGHT, fps, stamps.get(n - 1), n, false, 0, "drawn"),
                stamps,
                0,
                new BackgroundMotion(registrations, true, RegistrationFacts.unknown(CameraModel.STILL)),
                new SubjectTrack(squares, 1),
                new PoseTrack(poses));
    }

    private FramePose pose(double timeS, double keep, Random random, double[][] drift) {
        double[][] points = points(timeS);
        double[] hip = jumper.hips(timeS);
        Point2 centre = camera.project(hip[0], 0, hip[1]);
        double bodyPx = centre.distanceTo(camera.project(hip[0], 0, hip[1] + jumper.statureM()));
        double sd = errorStature * bodyPx * Math.sqrt(0.5);
        boolean exchanged = random.nextDouble() < exchangedShare;
        float[] numbers = new float[BodyPoint.COUNT * PoseTrack.NUMBERS];
        for (int i = 0; i < BodyPoint.COUNT; i++) {
            Point2 seen = camera.project(points[i][0], points[i][1], points[i][2]);
            for (int d = 0; d < 2; d++) {
                drift[i][d] = keep * drift[i][d] + Math.sqrt(1 - keep * keep) * random.nextGaussian();
            }
            BodyPoint named = exchanged ? BodyPoint.at(i).otherSide() : BodyPoint.at(i);
            int at = named.index() * PoseTrack.NUMBERS;
            numbers[at] = (float) (seen.x() + sd * (drift[i][0] + random.nextGaussian()));
            numbers[at + 1] = (float) (seen.y() + sd * (drift[i][1] + random.nextGaussian()));
            numbers[at + 2] = (float) Math.max(0.5, sd);
            numbers[at + 3] = 1;
        }
        return new FramePose(new Square(centre.x(), centre.y(), 1.3 * bodyPx), numbers);
    }
}
