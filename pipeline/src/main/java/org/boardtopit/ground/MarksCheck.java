package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Mark;
import org.boardtopit.signal.Point2;

/**
 * Whether the marks of a camera agree with one another, so that a mistyped one is found before a clip is measured.
 *
 * <p>Method: leave one out. The camera is fitted to all marks but one and says where that one ought to be. A mark is off when
 * it lies farther from there than clicks explain (3.5 standard deviations of prediction and click together) and by more than
 * 5 cm along the runway or more than 30 cm across it, where a pixel is worth more than ten times as much for a low camera. The
 * 5 cm are those of the error budget of a runway homography (common practice, no source). One wrong mark puts others off as
 * well; the culprit is the one without which all others agree, and the findings of the others are then without it. With four marks there is nothing left to compare, and with
 * five the rest explains itself whichever is left out.
 */
public final class MarksCheck {
    /** Fewer leave nothing to compare with. */
    public static final int FEWEST = 5;

    /** Fewer do not say which one is wrong. */
    public static final int FEWEST_TO_NAME_ONE = 6;

    private static final double MOST_ALONG_M = 0.05;
    private static final double MOST_ACROSS_M = 0.30;
    private static final double MOST_SD = 3.5;
    /** Root mean square distance of marks that agree: two standard deviations of a click on two axes; a first guess. */
    private static final double MOST_AGREEING_PX = 2 * Math.sqrt(2) * RunwayCamera.CLICK_SD_PX;

    /** Without the culprit the others must agree so many times better than without the next best. */
    private static final double CLEARLY_BETTER = 2;

    private final Optional<RunwayCamera> camera;
    private final List<Finding> findings;
    private final boolean agree;
    private final Optional<Culprit> culprit;

    /**
     * One mark against the others; lengths are NaN where they cannot be told.
     *
     * @param residualPx from where the camera of all marks sees it
     * @param predicted where the camera of all others sees it; unknown with too few marks
     * @param leftOutPx from there
     * @param leftOutAlongM how far along the runway its pixel is from where it is said to be, by the others; positive towards
     *     the pit
     * @param leftOutAcrossM the same across
     */
    public record Finding(
            Mark mark,
            double residualPx,
            Point2 predicted,
            double leftOutPx,
            double leftOutAlongM,
            double leftOutAcrossM,
            boolean off) {}

    /**
     * The mark that is wrong.
     *
     * @param withoutIt the camera that the others agree on
     * @param hint what would be right, such as "with x_px and y_px exchanged it would fit"; empty when nothing simple is
     */
    public record Culprit(Mark mark, RunwayCamera withoutIt, String hint) {}

    private MarksCheck(
            Optional<RunwayCamera> camera, List<Finding> findings, boolean agree, Optional<Culprit> culprit) {
        this.camera = camera;
        this.agree = agree;
        this.findings = List.copyOf(findings);
        this.culprit = culprit;
    }

    /** Compares every mark with the others. */
    public static MarksCheck of(List<Mark> marks, int widthPx, int heightPx) {
        return of(marks, Lens.ideal(widthPx, heightPx));
    }

    /** The same for a lens that bends the picture. */
    public static MarksCheck of(List<Mark> marks, Lens lens) {
        Optional<RunwayCamera> all = fitted(marks, lens);
        List<Optional<RunwayCamera>> without = leftOut(marks, lens);
        List<Finding> findings = findings(marks, all, without);
        boolean agree = all.isPresent()
                && all.get().residualPx() <= MOST_AGREEING_PX
                && findings.stream().noneMatch(Finding::off);
        if (agree) {
            return new MarksCheck(all, findings, true, Optional.empty());
        }
        Optional<Culprit> culprit = culprit(marks, without);
        if (culprit.isEmpty()) {
            return new MarksCheck(all, findings, false, culprit);
        }
        int wrong = marks.indexOf(culprit.get().mark());
        return new MarksCheck(all, clearedOf(wrong, marks, findings.get(wrong), lens), false, culprit);
    }

    /** One wrong mark makes others look bad: these are compared once more, without it. */
    private static List<Finding> clearedOf(int wrong, List<Mark> marks, Finding ofWrong, Lens lens) {
        List<Mark> others = new ArrayList<>(marks);
        others.remove(wrong);
        List<Finding> cleared = new ArrayList<>(findings(others, fitted(others, lens), leftOut(others, lens)));
        cleared.add(
                wrong,
                new Finding(
                        ofWrong.mark(),
                        ofWrong.residualPx(),
                        ofWrong.predicted(),
                        ofWrong.leftOutPx(),
                        ofWrong.leftOutAlongM(),
                        ofWrong.leftOutAcrossM(),
                        true));
        return cleared;
    }

    /** For each mark the camera of all others. */
    private static List<Optional<RunwayCamera>> leftOut(List<Mark> marks, Lens lens) {
        List<Optional<RunwayCamera>> without = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            List<Mark> others = new ArrayList<>(marks);
            others.remove(i);
            without.add(marks.size() < FEWEST ? Optional.empty() : fitted(others, lens));
        }
        return without;
    }

    private static List<Finding> findings(
            List<Mark> marks, Optional<RunwayCamera> all, List<Optional<RunwayCamera>> without) {
        List<Finding> findings = new ArrayList<>();
        for (int i = 0; i < marks.size(); i++) {
            findings.add(finding(marks.get(i), all, without.get(i)));
        }
        return findings;
    }

    private static Optional<RunwayCamera> fitted(List<Mark> marks, Lens lens) {
        try {
            return Optional.of(RunwayCamera.fromMarks(marks, lens));
        } catch (CalibrationException e) {
            return Optional.empty();
        }
    }

    private static Finding finding(Mark mark, Optional<RunwayCamera> all, Optional<RunwayCamera> others) {
        double residual = all.map(c -> seen(c, mark).distanceTo(mark.pixel())).orElse(Double.NaN);
        if (others.isEmpty()) {
            return new Finding(mark, residual, Point2.UNKNOWN, Double.NaN, Double.NaN, Double.NaN, false);
        }
        RunwayCamera camera = others.get();
        Point2 predicted = seen(camera, mark);
        double across = camera.marksAcrossSign() * mark.acrossM();
        Point2 ground = camera.onGround(mark.pixel());
        double alongError = ground.x() - mark.alongM();
        double acrossError = camera.marksAcrossSign() * (ground.y() - across);
        double[] sd = camera.pixelSdPx(mark.alongM(), across);
        double click = RunwayCamera.CLICK_SD_PX;
        double inSd = Math.hypot(
                (predicted.x() - mark.pixel().x()) / Math.hypot(click, sd[0]),
                (predicted.y() - mark.pixel().y()) / Math.hypot(click, sd[1]));
        // Not "greater than", so that a mark above the horizon or behind the camera counts as far off.
        boolean near = Math.abs(alongError) <= MOST_ALONG_M && Math.abs(acrossError) <= MOST_ACROSS_M;
        boolean off = !(inSd <= MOST_SD) && !near;
        return new Finding(mark, residual, predicted, predicted.distanceTo(mark.pixel()), alongError, acrossError, off);
    }

    private static Point2 seen(RunwayCamera camera, Mark mark) {
        return camera.project(mark.alongM(), camera.marksAcrossSign() * mark.acrossM(), 0);
    }

    private static Optional<Culprit> culprit(List<Mark> marks, List<Optional<RunwayCamera>> without) {
        if (marks.size() < FEWEST_TO_NAME_ONE) {
            return Optional.empty();
        }
        int best = -1;
        double bestPx = Double.POSITIVE_INFINITY;
        double nextPx = Double.POSITIVE_INFINITY;
        for (int i = 0; i < marks.size(); i++) {
            double px = without.get(i).map(RunwayCamera::residualPx).orElse(Double.POSITIVE_INFINITY);
            nextPx = px < bestPx ? bestPx : Math.min(nextPx, px);
            best = px < bestPx ? i : best;
            bestPx = Math.min(bestPx, px);
        }
        if (best < 0 || bestPx > MOST_AGREEING_PX || nextPx < CLEARLY_BETTER * bestPx) {
            return Optional.empty();
        }
        RunwayCamera camera = without.get(best).orElseThrow();
        return Optional.of(new Culprit(marks.get(best), camera, hint(marks.get(best), camera)));
    }

    /** Usual slips of the pen, tried one after the other. */
    private static String hint(Mark m, RunwayCamera camera) {
        double along = m.alongM();
        double across = m.acrossM();
        double x = m.pixel().x();
        double y = m.pixel().y();
        Object[][] slips = {
            {"with x_px and y_px exchanged", along, across, y, x},
            {"with the other sign of across_m", along, -across, x, y},
            {"with the other sign of along_m", -along, across, x, y},
            {"with along_m and across_m exchanged", across, along, x, y},
            {"with a tenth of along_m", along / 10, across, x, y},
            {"with ten times along_m", along * 10, across, x, y},
            {"with a tenth of across_m", along, across / 10, x, y},
            {"with ten times across_m", along, across * 10, x, y},
            {"with a tenth of x_px", along, across, x / 10, y},
            {"with ten times x_px", along, across, x * 10, y},
            {"with a tenth of y_px", along, across, x, y / 10},
            {"with ten times y_px", along, across, x, y * 10}
        };
        for (Object[] s : slips) {
            Mark other = new Mark(m.name(), (double) s[1], (double) s[2], new Point2((double) s[3], (double) s[4]));
            double[] sd = camera.pixelSdPx(other.alongM(), camera.marksAcrossSign() * other.acrossM());
            double click = Math.hypot(RunwayCamera.CLICK_SD_PX, Math.hypot(sd[0], sd[1]));
            if (seen(camera, other).distanceTo(other.pixel()) < MOST_SD * click) {
                return s[0] + " it would fit";
            }
        }
        return "";
    }

    /** The camera that all marks give; empty when they contradict each other too much for any. */
    public Optional<RunwayCamera> camera() {
        return camera;
    }

    /** In the order of the marks. */
    public List<Finding> findings() {
        return findings;
    }

    /** True when the marks can be used as they are; not contradicted, which with few marks says little. */
    public boolean agree() {
        return agree;
    }

    /** True when there are enough marks to compare them. */
    public boolean isComparable() {
        return findings.size() >= FEWEST;
    }

    /** The one wrong mark; empty when the marks agree, or when it cannot be told which one is wrong. */
    public Optional<Culprit> culprit() {
        return culprit;
    }
}
