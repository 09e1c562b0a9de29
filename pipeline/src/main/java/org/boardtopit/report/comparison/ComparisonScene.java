package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.PhaseMeasures;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.phases.Phase;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.PhaseSpan;
import org.boardtopit.report.overlay.PosePoint;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoWriter.Chapter;
import org.boardtopit.wording.Words;

/** Everything that is drawn into the video of a comparison, picture by picture. */
public final class ComparisonScene {
    /** A standing athlete takes up 0.62 of the close view; the rest is for raised arms and flights. */
    private static final double CLOSE_STATURES = 1 / 0.62;

    /** Share of the middle view's width by which A may stand beside its middle. */
    private static final double MOST_ASIDE = 0.26;

    private static final double ASIDE_REACH_S = 0.15;

    private static final int SAMPLED_SHOTS = 120;

    /** How long the table stands at the end, in seconds of the video. */
    private static final double TABLE_S = 7;

    private static final double TABLE_FPS = 5;

    private final ComparedAttempt a;
    private final ComparedAttempt b;
    private final TimeAlignment alignment;
    private final boolean trueTime;
    private final int slow;
    private final Words words;
    private final CommonRunway runway;
    private final List<Shot> shots;
    private final ComparisonLayout layout;
    private final CloseViewPath closeA;
    private final CloseViewPath closeB;
    private final DifferencePage page;
    private final double[] apartPx;

    /**
     * One picture.
     *
     * @param frameA the frame of A that is nearest to the moment
     * @param frameB that of B
     * @param playUs when the picture is shown
     */
    public record Shot(int frameA, int frameB, Moment moment, long playUs) {}

    /**
     * A comparison.
     *
     * @param trueTime true when the alignment is of true time
     * @param slow how many times slower than it was the video is, 1 or more
     * @param words of the bundle comparison
     */
    public ComparisonScene(
            ComparedAttempt a,
            ComparedAttempt b,
            TimeAlignment alignment,
            AttemptDifferences differences,
            boolean trueTime,
            int slow,
            Words words) {
        this.a = a;
        this.b = b;
        this.alignment = alignment;
        this.trueTime = trueTime;
        this.slow = slow;
        this.words = words;
        runway = new CommonRunway(a, b);
        shots = shots(TimeAlignment.picturesPerS(a.fps(), b.fps()));
        layout = ComparisonLayout.around(reach());
        double bodyM = Math.max(a.motion().statureM(), b.motion().statureM());
        double pxPerM = ComparisonLayout.CLOSE_HEIGHT_PX / (CLOSE_STATURES * bodyM);
        closeA = new CloseViewPath(a, pxPerM, false, middle(layout.closeA()));
        closeB = new CloseViewPath(b, pxPerM, isMirrored(), middle(layout.closeB()));
        page = new DifferencePage(differences, words);
        apartPx = apartPx();
    }

    private List<Shot> shots(double fps) {
        List<Shot> all = new ArrayList<>();
        for (Moment moment : alignment.moments(1 / fps)) {
            all.add(new Shot(
                    a.landmarks().nearestFrame(moment.aS()),
                    b.landmarks().nearestFrame(moment.bS()),
                    moment,
                    playUs(moment.aS())));
        }
        return all;
    }

    private long playUs(double aS) {
        return Math.round(1e6 * slow * Math.max(0, aS - alignment.startS()));
    }

    private static Point2 middle(Box box) {
        return new Point2(box.centreX(), box.centreY());
    }

    /** What both athletes take up of A's fixed picture. */
    private Box reach() {
        Box all = null;
        int step = Math.max(1, shots.size() / SAMPLED_SHOTS);
        for (int i = 0; i < shots.size(); i += step) {
            for (FramePose pose : List.of(
                    runway.ofA(shots.get(i).frameA()), runway.ofB(shots.get(i).frameB()))) {
                Optional<Box> bounds = pose.bounds();
                if (bounds.isPresent()) {
                    all = all == null ? bounds.get() : all.joined(bounds.get());
                }
            }
        }
        return all == null
                ? Box.at(
                        0,
                        0,
                        a.landmarks().video().widthPx(),
                        a.landmarks().video().heightPx())
                : all;
    }

    /** In time order. */
    public List<Shot> shots() {
        return shots;
    }

    public ComparisonLayout layout() {
        return layout;
    }

    /** True when B ran the other way, and is shown with left and right exchanged. */
    public boolean isMirrored() {
        return a.runsToTheRight() != b.runsToTheRight();
    }

    public CloseWindow closeA(int frame) {
        return closeA.at(frame);
    }

    public CloseWindow closeB(int frame) {
        return closeB.at(frame);
    }

    /**
     * Where A's frame is laid in the middle, under both athletes: half-way between them as long as they fit.
     *
     * @param shot by its number
     */
    public CloseWindow closeBoth(int shot) {
        CloseWindow ofA = closeA.at(shots.get(shot).frameA());
        double most = MOST_ASIDE * layout.both().width() / ofA.zoom();
        double aside = Math.max(-most, Math.min(most, apartPx[shot] / 2));
        return ofA.over(new Point2(aside, 0), middle(layout.both()));
    }

    /** How far B's hips are beside A's in each shot, px of A's frame; smooth, 0 where unknown. */
    private double[] apartPx() {
        double[] apart = new double[shots.size()];
        for (int i = 0; i < apart.length; i++) {
            int frameA = shots.get(i).frameA();
            Point2 hipsA = a.pose(frameA).middle(BodyPoint.LEFT_HIP);
            Point2 hipsB = onFrameOfA(shots.get(i).frameB(), frameA).middle(BodyPoint.LEFT_HIP);
            double x = hipsB.x() - hipsA.x();
            apart[i] = Double.isFinite(x) ? x : i > 0 ? apart[i - 1] : 0;
        }
        return CloseViewPath.mean(apart, (int) Math.round(ASIDE_REACH_S * nominalFps() * slow));
    }

    /** B on the runway of A, px of A's frame. */
    public FramePose onFrameOfA(int frameB, int frameA) {
        Homography toFrame = a.landmarks().background().fromFixed(frameA);
        return moved(runway.ofB(frameB), toFrame);
    }

    /** A's points in px of the frame. */
    public FramePose poseA(int frame) {
        return a.pose(frame);
    }

    /** B's points in px of the frame. */
    public FramePose poseB(int frame) {
        return b.pose(frame);
    }

    /** A on the runway, px of the whole picture. */
    public FramePose onRunwayA(int frame) {
        return inPicture(runway.ofA(frame));
    }

    /** B on the runway of A, px of the whole picture. */
    public FramePose onRunwayB(int frame) {
        return inPicture(runway.ofB(frame));
    }

    private FramePose inPicture(FramePose pose) {
        return moved(pose, layout.toRunway());
    }

    private static FramePose moved(FramePose pose, Homography map) {
        List<PosePoint> points = pose.points().stream()
                .map(p -> p.isKnown() ? new PosePoint(map.apply(p.place()), p.sdPx()) : p)
                .toList();
        return new FramePose(pose.frameIndex(), pose.timestampUs(), points, pose.nearSide(), Optional.empty());
    }

    /** From px of a frame of A to px of the whole picture, for the part that shows the runway. */
    public Homography frameToRunway(int frameA) {
        return layout.toRunway().after(runway.toFixed(frameA));
    }

    /** A place on the ground, px of the whole picture; unknown where metres along the runway are not known. */
    public Point2 ground(double alongM, double acrossM) {
        Point2 fixed = runway.onGround(alongM, acrossM);
        return fixed.isKnown() ? layout.toRunway().apply(fixed) : fixed;
    }

    /**
     * The place of a contact along the runway.
     *
     * @param ofA false for one of B
     * @param atS touchdown, in the time of A
     */
    public record Footprint(boolean ofA, double alongM, double atS) {}

    /** Of both, without those of the approach, in no order. */
    public List<Footprint> footprints() {
        List<Footprint> all = new ArrayList<>();
        for (Contact c : a.contacts()) {
            add(all, c, new Footprint(true, runway.alongOfA(c), c.touchdownS()));
        }
        for (Contact c : b.contacts()) {
            add(all, c, new Footprint(false, runway.alongOfB(c), alignment.aAt(c.touchdownS())));
        }
        return all;
    }

    private static void add(List<Footprint> all, Contact contact, Footprint print) {
        if (contact.kind() != ContactKind.APPROACH && Double.isFinite(print.alongM()) && Double.isFinite(print.atS())) {
            all.add(print);
        }
    }

    /** The phases of A in the time of the video. */
    public List<PhaseSpan> phases() {
        List<PhaseSpan> spans = new ArrayList<>();
        for (PhaseMeasures p : a.measures().phases()) {
            Phase phase = p.phase();
            long start = playUs(phase.startS());
            long end = Math.min(playUs(phase.endS()), lengthUs());
            if (end > start) {
                String number = phase.number() == 0 ? "" : " " + phase.number();
                String text = words.get("phase." + phase.name().label()) + number;
                spans.add(new PhaseSpan(phase.name(), text, start, end, ""));
            }
        }
        return spans;
    }

    /** Up to the table. */
    public long lengthUs() {
        return Math.max(1, playUs(alignment.endS()));
    }

    /** The instants that coincide, in the time of the video. */
    public List<Long> coincidencesUs() {
        return alignment.anchors().stream()
                .filter(anchor -> anchor.aS() >= alignment.startS() && anchor.aS() <= alignment.endS())
                .map(anchor -> playUs(anchor.aS()))
                .toList();
    }

    /** Which attempt it is. */
    public String title(boolean ofA) {
        List<String> lines = (ofA ? a : b).scene().titleLines();
        return String.join("   ", lines);
    }

    /** The attempt's own time since its first contact, and for B what was done to its picture. */
    public String clock(boolean ofA, Moment moment) {
        ComparedAttempt attempt = ofA ? a : b;
        double startS = attempt.first().map(Contact::touchdownS).orElse(0.0);
        double s = (ofA ? moment.aS() : moment.bS()) - startS;
        String text = (s < 0 ? "" : "+") + words.number(s, 3) + " s";
        return text;
    }

    /** A place along the runway in words. */
    public String metres(double alongM) {
        return words.number(alongM, 2) + " m";
    }

    /** What the clocks count from. */
    public String clockStart() {
        boolean board = a.first().filter(c -> c.kind() == ContactKind.BOARD).isPresent()
                && b.first().filter(c -> c.kind() == ContactKind.BOARD).isPresent();
        return words.get(board ? "since.board" : "since.first");
    }

    /** What the user must know of B's picture; empty when it is as it was filmed. */
    public String remarkOfB() {
        return isMirrored() ? words.get("mirrored") : "";
    }

    /** How the two are laid over each other in time. */
    public String mode() {
        return words.get(trueTime ? "mode.true_time" : "mode.stretched");
    }

    /** How much slower it is shown; empty when it is not. */
    public String slowness() {
        return slow == 1 ? "" : words.format("slow", Integer.toString(slow));
    }

    /** True when a metre is as long for both. */
    public boolean hasMetres() {
        return runway.hasMetres();
    }

    /** How the two are laid over each other in place. */
    public String overRemark() {
        return words.get(runway.hasMetres() ? "runway" : "scale.nominal");
    }

    /** What the places along the runway count from; empty where there are none. */
    public String runwayRemark() {
        return footprints().isEmpty() || !ground(0, 0).isKnown() ? "" : words.get("metres");
    }

    public DifferencePage page() {
        return page;
    }

    /** When the pictures of the table are shown, after the last shot. */
    public List<Long> tableUs() {
        long first = shots.get(shots.size() - 1).playUs() + Math.round(1e6 / nominalFps());
        List<Long> times = new ArrayList<>();
        for (int k = 0; k < TABLE_S * TABLE_FPS; k++) {
            times.add(first + Math.round(1e6 * k / TABLE_FPS));
        }
        return times;
    }

    /** Pictures a second of the video. */
    public double nominalFps() {
        return TimeAlignment.picturesPerS(a.fps(), b.fps()) / slow;
    }

    /** The touchdowns that coincide, and the table. */
    public List<Chapter> chapters() {
        List<Chapter> chapters = new ArrayList<>();
        for (TimeAlignment.Anchor anchor : alignment.anchors()) {
            boolean shown = anchor.aS() >= alignment.startS() && anchor.aS() <= alignment.endS();
            if (shown && anchor.instant().beginsPhase()) {
                KeyInstant instant = anchor.instant();
                String name = words.get("contact." + instant.kind().label());
                String title = instant.kind() == ContactKind.DRILL ? name + " " + instant.number() : name;
                chapters.add(new Chapter(capital(title), playUs(anchor.aS())));
            }
        }
        chapters.add(new Chapter(words.get("table.chapter"), tableUs().get(0)));
        return chapters;
    }

    private static String capital(String text) {
        return Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }
}
