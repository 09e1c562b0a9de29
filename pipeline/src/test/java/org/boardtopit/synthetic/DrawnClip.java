package org.boardtopit.synthetic;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.boardtopit.clips.Mark;
import org.boardtopit.contacts.Foot;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.ground.CalibrationException;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.RunwayView;
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
 * A drawn jumper as a landmark network would see it through a drawn camera: points with errors that are correlated in time,
 * outliers, exchanged legs, missing frames, second modes; and the truth beside it.
 */
public final class DrawnClip {
    private static final double CORRELATION_S = 0.040;
    private static final double[][] MARKS = {
        {0, -.61}, {0, .61}, {11, -1.375}, {11, 1.375}, {-4, -.72}, {4, .72}, {8, -.72}, {-9, .72}, {-9, -.72}
    };

    /**
     * What is to be drawn.
     *
     * @param fps frames a second
     * @param unevenShare largest deviation of a time stamp, as a share of the time between frames
     * @param panned true for a camera that follows the athlete
     * @param leftOfRunway true for a camera on the athlete's left: the run goes to the left
     * @param errorStature standard deviation of a point per axis, as a share of the standing height
     * @param exchangeRate runs of frames a second in which the network takes one leg for the other
     * @param outlierShare share of points that are far off
     * @param missingShare share of frames without any point
     */
    public record Setup(
            long seed,
            double fps,
            double unevenShare,
            boolean panned,
            boolean leftOfRunway,
            double errorStature,
            double exchangeRate,
            double outlierShare,
            double missingShare) {

        /** A clip as a club films it, everything by lot. */
        public static Setup ordinary(long seed) {
            Random random = new Random(seed * 7919 + 17);
            double[] rates = {50, 60, 60, 100, 120, 240};
            double fps = rates[random.nextInt(rates.length)];
            return new Setup(
                    seed,
                    fps,
                    random.nextInt(3) == 0 ? 0.15 : 0,
                    random.nextBoolean(),
                    random.nextBoolean(),
                    0.006 + 0.004 * random.nextDouble(),
                    0.5,
                    0.01,
                    0.005);
        }

        /** The same without any error. */
        public Setup perfect() {
            return new Setup(seed, fps, unevenShare, panned, leftOfRunway, 0, 0, 0, 0);
        }

        public Setup atFps(double newFps) {
            return new Setup(
                    seed,
                    newFps,
                    unevenShare,
                    panned,
                    leftOfRunway,
                    errorStature,
                    exchangeRate,
                    outlierShare,
                    missingShare);
        }

        public Setup withStillCamera() {
            return new Setup(
                    seed,
                    fps,
                    unevenShare,
                    false,
                    leftOfRunway,
                    errorStature,
                    exchangeRate,
                    outlierShare,
                    missingShare);
        }

        public Setup withExchanges(double ratePerS) {
            return new Setup(
                    seed, fps, unevenShare, panned, leftOfRunway, errorStature, ratePerS, outlierShare, missingShare);
        }

        public Setup withOutliers(double share) {
            return new Setup(
                    seed, fps, unevenShare, panned, leftOfRunway, errorStature, exchangeRate, share, missingShare);
        }

        Foot takeoffFoot() {
            return Math.floorMod(seed, 2) == 0 ? Foot.LEFT : Foot.RIGHT;
        }
    }

    private final Setup setup;
    private final Jumper jumper;
    private final Random random;
    private final long[] timesUs;
    private final DrawnCamera fixedCamera;
    private final DrawnCamera[] cameras;
    private final boolean[] exchanged;
    private final ClipLandmarks landmarks;

    public DrawnClip(Setup setup) {
        this(setup, new DrawnJumper(setup.seed(), setup.takeoffFoot()));
    }

    /** Of a drill. */
    public DrawnClip(Setup setup, DrawnDrill drill) {
        this(setup, new DrawnJumper(setup.seed(), drill));
    }

    /** Another jumper seen in the same way. */
    public DrawnClip(Setup setup, Jumper jumper) {
        this.setup = setup;
        this.jumper = jumper;
        this.random = new Random(setup.seed() * 31 + 5);
        this.fixedCamera = fixedCamera();
        this.timesUs = stamps();
        this.cameras = cameras();
        this.exchanged = exchanges();
        this.landmarks = draw();
    }

    public ClipLandmarks landmarks() {
        return landmarks;
    }

    public Jumper jumper() {
        return jumper;
    }

    public List<TrueContact> contacts() {
        return jumper.contacts();
    }

    public Setup setup() {
        return setup;
    }

    public double timeS(int frame) {
        return timesUs[frame] / 1e6;
    }

    /** True when the points of the legs carry each other's names in a frame. */
    public boolean exchanged(int frame) {
        return exchanged[frame];
    }

    /** +1 when the run goes to the right in the picture. */
    public int direction() {
        return setup.leftOfRunway() ? -1 : 1;
    }

    /** The camera of a frame. */
    public DrawnCamera camera(int frame) {
        return cameras[frame];
    }

    /** The camera of the fixed picture. */
    public DrawnCamera referenceCamera() {
        return fixedCamera;
    }

    /** Places on the ground (along, across) that serve as marks. */
    public static double[][] marks() {
        return MARKS.clone();
    }

    /** The view in metres, from marks in the fixed picture. */
    public RunwayView calibratedView() {
        List<Mark> marks = new ArrayList<>();
        for (double[] m : MARKS) {
            Point2 px = fixedCamera.project(m[0], m[1], 0);
            marks.add(new Mark("m" + marks.size(), m[0], m[1], px));
        }
        try {
            return RunwayView.calibrated(
                    landmarks.background(),
                    RunwayCamera.fromMarks(marks, fixedCamera.widthPx(), fixedCamera.heightPx()));
        } catch (CalibrationException e) {
            throw new IllegalStateException(e);
        }
    }

    /** The view without marks; the nominal scale is that of the middle of the run. */
    public RunwayView flatView() {
        return RunwayView.flat(landmarks.background(), direction(), flatMetresPerPixel());
    }

    /** Metres on the runway that a pixel of the fixed picture covers opposite the camera. */
    public double flatMetresPerPixel() {
        return Math.abs(fixedCamera.acrossM()) / fixedCamera.focalPx();
    }

    private double uniform(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    private DrawnCamera fixedCamera() {
        double across = (setup.leftOfRunway() ? 1 : -1) * uniform(15, 22);
        double end = jumper.contacts().get(jumper.contacts().size() - 1).toeAlongM() + 1.5;
        double start = uniform(-6, -4);
        double width = (end - start) / Math.abs(across); // what the picture shows, over the distance
        return new DrawnCamera(
                1280,
                720,
                1280 / width,
                (start + end) / 2,
                across,
                uniform(1.3, 2.6),
                uniform(-0.02, 0.02),
                uniform(0.0, 0.05),
                uniform(-0.01, 0.01));
    }

    private long[] stamps() {
        int n = (int) (jumper.endS() * setup.fps());
        long[] stamps = new long[n];
        for (int i = 1; i < n; i++) {
            double jitter = setup.unevenShare() * (2 * random.nextDouble() - 1);
            stamps[i] = Math.round((i + jitter) * 1e6 / setup.fps());
        }
        return stamps;
    }

    private DrawnCamera[] cameras() {
        DrawnCamera[] out = new DrawnCamera[timesUs.length];
        double wobble = uniform(0.002, 0.006);
        double phase = uniform(0, 6);
        for (int f = 0; f < out.length; f++) {
            double t = timesUs[f] / 1e6;
            double bearing = Math.atan2(jumper.hips(t)[0] - fixedCamera.alongM(), Math.abs(fixedCamera.acrossM()));
            double pan = 0.85 * bearing + wobble * Math.sin(7 * t + phase);
            out[f] = setup.panned() ? fixedCamera.panned(pan, 1.3 * fixedCamera.focalPx()) : fixedCamera;
        }
        return out;
    }

    /** Runs of about 70 ms. */
    private boolean[] exchanges() {
        boolean[] out = new boolean[timesUs.length];
        double step = 1 / setup.fps();
        boolean now = false;
        for (int f = 0; f < out.length; f++) {
            now = random.nextDouble() < (now ? step / 0.07 : step * setup.exchangeRate()) ? !now : now;
            out[f] = now;
        }
        return out;
    }

    private ClipLandmarks draw() {
        int n = timesUs.length;
        List<Long> stamps = new ArrayList<>();
        List<FrameRegistration> registrations = new ArrayList<>();
        List<Optional<Square>> squares = new ArrayList<>();
        List<Optional<FramePose>> poses = new ArrayList<>();
        double[][] drift = new double[BodyPoint.COUNT][2];
        for (int f = 0; f < n; f++) {
            stamps.add(timesUs[f]);
            registrations.add(new FrameRegistration(
                    setup.panned() ? cameras[f].to(fixedCamera) : Homography.IDENTITY, true, 200, 0.2));
            Optional<FramePose> pose = pose(f, drift);
            poses.add(pose);
            squares.add(pose.map(FramePose::square));
        }
        return new ClipLandmarks(
                new VideoInfo(1280, 720, setup.fps(), timesUs[n - 1], n, false, 0, "drawn"),
                stamps,
                0,
                new BackgroundMotion(
                        registrations,
                        true,
                        RegistrationFacts.unknown(setup.panned() ? CameraModel.TURNING : CameraModel.STILL)),
                new SubjectTrack(squares, direction()),
                new PoseTrack(poses));
    }

    private Optional<FramePose> pose(int frame, double[][] drift) {
        DrawnCamera camera = cameras[frame];
        double[][] points = jumper.points(timeS(frame));
        double[] hip = jumper.hips(timeS(frame));
        Point2 centre = camera.project(hip[0], 0, hip[1]);
        double bodyPx = centre.distanceTo(camera.project(hip[0], 0, hip[1] + jumper.statureM()));
        double keep = Math.exp(-1 / setup.fps() / CORRELATION_S);
        Point2[] seen = new Point2[BodyPoint.COUNT];
        for (int i = 0; i < seen.length; i++) {
            Point2 true2 = camera.project(points[i][0], points[i][1], points[i][2]);
            double sd = setup.errorStature() * bodyPx * Math.sqrt(0.5);
            for (int d = 0; d < 2; d++) {
                double push = Math.sqrt(1 - keep * keep) * random.nextGaussian();
                drift[i][d] = frame == 0 ? random.nextGaussian() : keep * drift[i][d] + push;
            }
            seen[i] = new Point2(
                    true2.x() + sd * (drift[i][0] + random.nextGaussian()),
                    true2.y() + sd * (drift[i][1] + random.nextGaussian()));
        }
        float[] numbers = numbers(frame, seen, bodyPx);
        boolean inView = centre.x() > 0 && centre.x() < camera.widthPx();
        boolean missing = random.nextDouble() < setup.missingShare();
        return inView && !missing
                ? Optional.of(new FramePose(new Square(centre.x(), centre.y(), 1.5 * bodyPx), numbers))
                : Optional.empty();
    }

    /** Modes as a heat map gives them: the second often lies at the other side's point. */
    private float[] numbers(int frame, Point2[] seen, double bodyPx) {
        float[] numbers = new float[BodyPoint.COUNT * PoseTrack.NUMBERS];
        double sd = Math.max(0.5, setup.errorStature() * bodyPx / 1.2);
        for (int i = 0; i < seen.length; i++) {
            BodyPoint point = BodyPoint.at(i);
            boolean leg = i >= BodyPoint.LEFT_HIP.index();
            Point2 other = seen[point.otherSide().index()];
            boolean swapped = leg && exchanged[frame];
            Point2 first = swapped ? other : seen[i];
            Point2 second = swapped ? seen[i] : other;
            boolean hasSecond = leg && random.nextDouble() < 0.4;
            double secondMass = hasSecond ? uniform(0.06, 0.3) : 0;
            if (random.nextDouble() < setup.outlierShare()) {
                double angle = uniform(0, 2 * Math.PI);
                Point2 off = new Point2(Math.cos(angle), Math.sin(angle)).times(uniform(0.1, 0.4) * bodyPx);
                second = first;
                first = first.plus(off);
                secondMass = random.nextDouble() < 0.6 ? uniform(0.1, 0.4) : 0;
            }
            put(numbers, i, 0, first, sd * uniform(0.8, 1.25), 0.95 - secondMass);
            put(numbers, i, 1, second, sd * uniform(0.8, 1.25), secondMass);
        }
        return numbers;
    }

    private static void put(float[] numbers, int point, int mode, Point2 at, double sd, double mass) {
        int k = point * PoseTrack.NUMBERS + 4 * mode;
        numbers[k] = mass > 0 ? (float) at.x() : Float.NaN;
        numbers[k + 1] = mass > 0 ? (float) at.y() : Float.NaN;
        numbers[k + 2] = mass > 0 ? (float) sd : Float.NaN;
        numbers[k + 3] = (float) mass;
    }
}
