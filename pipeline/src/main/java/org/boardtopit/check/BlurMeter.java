package org.boardtopit.check;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.video.VideoFrame;

/**
 * Estimates from pairs of neighbouring frames how sharp a clip is and how long its shutter stayed open.
 *
 * <p>Method. The width of an edge is the number of pixels over which the brightness rises or falls without turning back, along
 * a row (Marziliano et al. 2002, ICIP, "A no-reference perceptual blur metric", from memory). Blocks of the first frame are
 * looked for in the second, which gives their movement d in pixels a frame. Edges of blocks that stay give the width w0 of
 * lens, focus and coding: the sharpness. A shutter that is open for a share s of the time between frames smears an edge that
 * moves along the row over s d pixels more, so
 *
 * <pre>s = (width of moving edges - w0) / d,   the shutter's time = s x the time between frames.</pre>
 *
 * It does not matter whether the athlete moves or, in a panned clip, the background.
 *
 * <p>Limits. It counts whole pixels: with d below some 8 pixels the shutter cannot be told from w0, and only an upper bound
 * comes out; so it is for blur that matters, not for good shutters. Strong coding and noise hide edges. Only movement along the
 * picture's rows counts. Limbs move faster than the blocks that tell d, so the blur of hands and feet is larger than
 * {@link Blur#smearPx}. Use from one thread.
 */
final class BlurMeter {
    private static final int WORKING_WIDTH_PX = 640;
    private static final int BLOCK = 16;
    private static final int FARTHEST_X = 40;
    private static final int FARTHEST_Y = 2;

    /** Brightness by which an edge must rise: above noise and coding (a first guess, not tuned). */
    private static final int LEAST_CONTRAST = 40;

    private static final int WIDEST_EDGE_PX = 80;

    /** In working pixels: what moves less is neither still nor fast. */
    private static final double LEAST_MOVE = 3;

    private static final double MOST_STILL_MOVE = 0.5;
    private static final int FEWEST_EDGES = 12;
    private static final int FEWEST_BLOCKS = 3;

    /** The block must fit so many times better where it went than where it was. */
    private static final double CLEARLY_BETTER = 0.5;

    private final List<Double> stillWidths = new ArrayList<>();
    private final List<double[]> moved = new ArrayList<>(); // displacement and width of moving blocks

    /**
     * What was seen.
     *
     * @param edgePx width of edges that stand still, in pixels; NaN when there were too few
     * @param openShare share of the time between frames that the shutter is open, 0 to 1; NaN when nothing moved fast enough
     * @param smearPx by how much the fastest tenth of what moved is smeared; NaN as before
     */
    record Blur(double edgePx, double openShare, double smearPx) {}

    /** Looks at two frames that follow one another. */
    void add(VideoFrame first, VideoFrame second) {
        GreyPicture a = GreyPicture.of(first);
        GreyPicture b = GreyPicture.of(second);
        int step = Math.max(1, a.widthPx() / WORKING_WIDTH_PX);
        GreyPicture smallA = a.shrunk(step);
        GreyPicture smallB = b.shrunk(step);
        for (int y = FARTHEST_Y; y + BLOCK + FARTHEST_Y < smallA.heightPx(); y += BLOCK) {
            for (int x = 0; x + BLOCK < smallA.widthPx(); x += BLOCK) {
                if (hasEdge(smallA, x, y)) {
                    addBlock(a, b, step, x, y, moveOf(smallA, smallB, x, y));
                }
            }
        }
    }

    private static boolean hasEdge(GreyPicture p, int x0, int y0) {
        for (int y = y0 + 2; y < y0 + BLOCK; y += 4) {
            int least = 255;
            int most = 0;
            for (int x = x0; x < x0 + BLOCK; x++) {
                least = Math.min(least, p.at(x, y));
                most = Math.max(most, p.at(x, y));
            }
            if (most - least > LEAST_CONTRAST) {
                return true;
            }
        }
        return false;
    }

    /** Along the row, in working pixels; NaN when the block is not clearly found again. */
    private static double moveOf(GreyPicture a, GreyPicture b, int x0, int y0) {
        double still = difference(a, b, x0, y0, 0, 0, Integer.MAX_VALUE);
        int best = (int) still;
        int bestX = 0;
        for (int dy = -FARTHEST_Y; dy <= FARTHEST_Y; dy++) {
            for (int dx = -FARTHEST_X; dx <= FARTHEST_X; dx++) {
                if (x0 + dx < 0 || x0 + dx + BLOCK > a.widthPx()) {
                    continue;
                }
                int here = difference(a, b, x0, y0, dx, dy, best);
                if (here < best) {
                    best = here;
                    bestX = dx;
                }
            }
        }
        return bestX == 0 || best < CLEARLY_BETTER * still ? bestX : Double.NaN;
    }

    /** Sum of absolute differences; stops above the limit. */
    private static int difference(GreyPicture a, GreyPicture b, int x0, int y0, int dx, int dy, int limit) {
        int sum = 0;
        for (int y = y0; y < y0 + BLOCK; y++) {
            for (int x = x0; x < x0 + BLOCK; x++) {
                sum += Math.abs(a.at(x, y) - b.at(x + dx, y + dy));
            }
            if (sum >= limit) {
                return sum;
            }
        }
        return sum;
    }

    private void addBlock(GreyPicture a, GreyPicture b, int step, int x, int y, double move) {
        boolean still = Math.abs(move) <= MOST_STILL_MOVE;
        if (!still && !(Math.abs(move) >= LEAST_MOVE)) {
            return;
        }
        List<Double> widths = edgeWidths(a, b, x * step, y * step, BLOCK * step, still);
        if (still) {
            stillWidths.addAll(widths);
        } else if (!widths.isEmpty()) {
            moved.add(new double[] {Math.abs(move) * step, median(widths)});
        }
    }

    /** Widths of the edges that rise or fall within a block: of those that stay where they are, or of those that do not. */
    private static List<Double> edgeWidths(GreyPicture a, GreyPicture b, int x0, int y0, int side, boolean still) {
        List<Double> widths = new ArrayList<>();
        for (int y = y0; y < y0 + side; y += 2) {
            int x = x0;
            while (x < x0 + side) {
                int end = monotonicEnd(a, x, y);
                int change = Math.abs(a.at(end, y) - a.at(x, y));
                int middle = (x + end) / 2;
                boolean stays = Math.abs(a.at(middle, y) - b.at(middle, y)) < LEAST_CONTRAST / 4;
                if (change >= LEAST_CONTRAST && stays == still && x > x0) {
                    widths.add((double) (end - x));
                }
                x = Math.max(end, x + 1);
            }
        }
        return widths;
    }

    /** Where the brightness turns back, from x to the right; a slope of one level does not count as one. */
    private static int monotonicEnd(GreyPicture p, int x, int y) {
        int last = Math.min(p.widthPx() - 1, x + WIDEST_EDGE_PX);
        if (x + 1 > last) {
            return x;
        }
        int sign = sign(p.at(x + 1, y) - p.at(x, y));
        int end = x;
        while (sign != 0 && end < last && sign(p.at(end + 1, y) - p.at(end, y)) == sign) {
            end++;
        }
        return end;
    }

    private static int sign(int slope) {
        return Math.abs(slope) <= 1 ? 0 : Integer.signum(slope);
    }

    private static double median(List<Double> values) {
        return OrderStatistics.median(values.stream().mapToDouble(v -> v).toArray());
    }

    /** Of all pairs so far. */
    Blur blur() {
        double edge = stillWidths.size() < FEWEST_EDGES ? Double.NaN : median(stillWidths);
        if (moved.size() < FEWEST_BLOCKS) {
            return new Blur(edge, Double.NaN, Double.NaN);
        }
        double sharp =
                Double.isNaN(edge) ? moved.stream().mapToDouble(m -> m[1]).min().orElseThrow() : edge;
        double[] shares = moved.stream()
                .mapToDouble(m -> Math.max(0, Math.min(1, (m[1] - sharp) / m[0])))
                .toArray();
        double share = OrderStatistics.median(shares);
        double fast = OrderStatistics.quantile(
                0.9, moved.stream().mapToDouble(m -> m[0]).toArray());
        return new Blur(edge, share, share * fast);
    }
}
