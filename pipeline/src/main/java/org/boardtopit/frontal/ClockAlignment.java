package org.boardtopit.frontal;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.signal.LastingErrors;
import org.boardtopit.signal.LinearFit;
import org.boardtopit.signal.Point2;

/**
 * Finds how the clock of a clip from in front or behind goes against that of the one from the side, by the rise and fall of the
 * hips over supports and flights, which both see.
 *
 * <p>Method: our own. Hips at height z seen by a level camera of height H, horizon v0 and focal length f at distance d lie at
 * the row v = v0 + f (H - z) / d. The length s of the trunk in the picture goes with the distance as f L / d, L being its length, so
 *
 * <pre>v / s = v0 / s + H / L - z(t - o) / L + r u / s</pre>
 *
 * <p>with the height z of the side clip, the column u for a camera that is turned by r, and the offset o: neither marks nor metres
 * are needed on either side. For every offset the other four are fitted linearly; the offset is the one at which z explains most of what
 * the rest leaves. Offsets are tried in steps of {@value #COARSE_S} s over all at which the clips share most of the jump, then of
 * {@value #FINE_S} s with a parabola around the best. A step must not look like the run-up, or hops like steps: another offset that explains
 * nearly as much makes it ambiguous, which is an error and not a guess.
 */
final class ClockAlignment {
    private static final double COARSE_S = 1.0 / 120;
    private static final double FINE_S = 0.001;
    /** Both clips must show this share of the time from the board to the pit. */
    private static final double LEAST_SHARED = 0.7;

    private static final int FEWEST_FRAMES = 25;
    /** The height's place among the explanations of a row. */
    private static final int HEIGHT = 3;

    /** Another offset counts as another one when it is further away than this: half a flight. */
    private static final double APART_S = 0.12;
    /**
     * The height must explain at least this share of the variance at the best offset. Measured: 98 % on our clip from in front,
     * above 99 % on drawn ones; drawn clips of another athlete's attempt have 59 to 97 %.
     */
    private static final double LEAST_EXPLAINED = 0.85;
    /** What is left at any other offset must be this many times what is left at the best (a first guess, not tuned). */
    private static final double LEAST_MARGIN = 1.8;
    /** How long the network's errors stay alike (a first guess, not tuned). */
    private static final double MEMORY_S = 0.06;
    /** Of the model: the hips of one camera are not quite those of the other. */
    private static final double MODEL_SD_S = 0.002;

    private final FrontalTrack front;
    private final SideMotion side;
    private final double boardS;
    private final double pitS;
    private final int[] frames;

    private ClockAlignment(FrontalTrack front, SideMotion side, double boardS, double pitS) {
        this.front = front;
        this.side = side;
        this.boardS = boardS;
        this.pitS = pitS;
        List<Integer> seen = new ArrayList<>();
        for (int f = 0; f < front.frameCount(); f++) {
            if (front.hipsFixed(f).isKnown() && front.trunkPx(f) > 0) {
                seen.add(f);
            }
        }
        this.frames = seen.stream().mapToInt(Integer::intValue).toArray();
    }

    /**
     * The offset of the other clip's clock.
     *
     * @throws ClocksNotAlignedException when the clips share too little of the jump or several offsets explain it
     */
    static ClockOffset find(FrontalTrack front, SideMotion side) throws ClocksNotAlignedException {
        double board = touchdown(side, ContactKind.BOARD);
        double pit = touchdown(side, ContactKind.PIT);
        if (!(pit > board)) {
            throw new ClocksNotAlignedException(
                    "in the clip from the side board and pit were not both found, so the clocks cannot be compared");
        }
        ClockAlignment alignment = new ClockAlignment(front, side, board, pit);
        if (alignment.frames.length < FEWEST_FRAMES) {
            throw new ClocksNotAlignedException("the athlete is seen in too few frames to compare the clocks");
        }
        return alignment.found();
    }

    private static double touchdown(SideMotion side, ContactKind kind) {
        return side.forClock().of(kind).map(Contact::touchdownS).orElse(Double.NaN);
    }

    /**
     * What is left at an offset.
     *
     * @param unexplained share of the variance that the height leaves
     * @param perHeight by how much v / s changes with z
     */
    private record Trial(double offsetS, double unexplained, double perHeight, int frames) {}

    private ClockOffset found() throws ClocksNotAlignedException {
        double first = front.timeS(frames[0]);
        double last = front.timeS(frames[frames.length - 1]);
        List<Trial> trials = new ArrayList<>();
        for (double o = first - pitS; o <= last - boardS; o += COARSE_S) {
            trial(o).ifPresent(trials::add);
        }
        Trial best = best(trials, Double.NaN)
                .orElseThrow(() -> new ClocksNotAlignedException(
                        "the two clips do not share enough of the jump to compare their clocks"));
        if (best.unexplained() > 1 - LEAST_EXPLAINED) {
            throw new ClocksNotAlignedException(String.format(
                    Locale.ROOT,
                    "the hips do not rise and fall as in the clip from the side (%.0f %% alike): is it the same attempt?",
                    100 * (1 - best.unexplained())));
        }
        Optional<Trial> other = best(trials, best.offsetS());
        if (other.isPresent() && other.get().unexplained() < LEAST_MARGIN * best.unexplained()) {
            throw new ClocksNotAlignedException(String.format(
                    Locale.ROOT,
                    "two ways to lay the clips beside each other fit alike, %.2f s apart",
                    Math.abs(other.get().offsetS() - best.offsetS())));
        }
        return refined(best);
    }

    /** The trial that leaves least, among those further than {@value #APART_S} s from a given one. */
    private static Optional<Trial> best(List<Trial> trials, double butNotNear) {
        Trial best = null;
        for (Trial t : trials) {
            boolean allowed = Double.isNaN(butNotNear) || Math.abs(t.offsetS() - butNotNear) > APART_S;
            if (allowed && t.perHeight() < 0 && (best == null || t.unexplained() < best.unexplained())) {
                best = t;
            }
        }
        return Optional.ofNullable(best);
    }

    /** A parabola through what is left around the best: its bottom, and its width for the standard deviation. */
    private ClockOffset refined(Trial coarse) throws ClocksNotAlignedException {
        Trial best = coarse;
        for (double o = coarse.offsetS() - COARSE_S; o <= coarse.offsetS() + COARSE_S; o += FINE_S) {
            Optional<Trial> fine = trial(o);
            best = fine.isPresent() && fine.get().unexplained() < best.unexplained() ? fine.get() : best;
        }
        Optional<Trial> before = trial(best.offsetS() - COARSE_S);
        Optional<Trial> after = trial(best.offsetS() + COARSE_S);
        if (before.isEmpty() || after.isEmpty()) {
            throw new ClocksNotAlignedException("the clips share just too little of the jump to compare their clocks");
        }
        double a = before.get().unexplained();
        double b = best.unexplained();
        double c = after.get().unexplained();
        double bend = (a - 2 * b + c) / (COARSE_S * COARSE_S);
        if (!(bend > 0)) {
            throw new ClocksNotAlignedException("the hips rise and fall too little to compare the clocks");
        }
        double shift = (a - c) / 2 / COARSE_S / bend;
        // The sum of squares n v grows by one variance v where the offset is one standard deviation off.
        double sd = Math.sqrt(2 * b / bend / best.frames()) * LastingErrors.whileTheyStay(MEMORY_S, front.frameStepS());
        return new ClockOffset(
                best.offsetS() + Math.max(-COARSE_S, Math.min(COARSE_S, shift)), Math.hypot(sd, MODEL_SD_S));
    }

    private Optional<Trial> trial(double offsetS) {
        int n = frames.length;
        double[][] rows = new double[n][];
        double[] y = new double[n];
        int m = 0;
        double shared = 0;
        double lastS = Double.NaN;
        for (int f : frames) {
            double sideS = front.timeS(f) - offsetS;
            double z = side.hipsHeight(sideS);
            if (!Double.isFinite(z)) {
                continue;
            }
            Point2 hips = front.hipsFixed(f);
            double s = front.trunkPx(f);
            rows[m] = new double[] {1, 1000 / s, hips.x() / s, z};
            y[m++] = hips.y() / s;
            if (sideS >= boardS && sideS <= pitS) {
                shared += Double.isNaN(lastS) ? 0 : Math.min(0.1, sideS - lastS);
                lastS = sideS;
            }
        }
        if (m < FEWEST_FRAMES || shared < LEAST_SHARED * (pitS - boardS)) {
            return Optional.empty();
        }
        int frameCount = m;
        double[][] without = new double[m][];
        for (int i = 0; i < m; i++) {
            without[i] = Arrays.copyOf(rows[i], HEIGHT);
        }
        double[] known = Arrays.copyOf(y, m);
        Optional<LinearFit> rest = LinearFit.of(without, known);
        return LinearFit.of(Arrays.copyOf(rows, m), known)
                .flatMap(fit ->
                        rest.map(r -> new Trial(offsetS, fit.cost() / r.cost(), fit.coefficient(HEIGHT), frameCount)));
    }
}
