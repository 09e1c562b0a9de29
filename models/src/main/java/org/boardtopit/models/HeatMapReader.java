package org.boardtopit.models;

import java.util.Arrays;
import java.util.List;

/**
 * Reads points from heat maps: where each point is, how sure that is, and where it may be instead.
 *
 * <p>The share p of a cell is the soft-max of its logit over the whole map (or its value over the sum of the positive ones).
 * Around the cell of the largest share lies a window that reaches {@value #REACH_CELLS} cells to every side. The mode is the
 * window's mass m = sum p, mean x = sum p x / m and variance v = (var x + var y) / 2 about it, x and y being the centres of
 * the cells in px. The training blurred the posterior, so sd^2 = v - blur^2, at least (1 px)^2. The second mode is the same
 * over the cells outside the first window. It assumes that a posterior is not wider than the window: a wider one gives a mass
 * well under 1, and an sd that is too small.
 *
 * <p>For speed, cells whose share is under e^-{@value #NEGLIGIBLE_LOGIT} of the largest one's are passed over: four fifths of
 * the exponentials. All 4096 cells of a map together would change a mass by less than 0.0035; on crops of jumpers it was less
 * than 1e-4. docs/decisions/0002 has the timings. One thread at a time.
 */
final class HeatMapReader {
    static final int REACH_CELLS = 4;

    private static final int NEGLIGIBLE_LOGIT = 14;
    private static final int STEPS_PER_LOGIT = 64;
    private static final float[] EXPONENTIALS = exponentials();
    private static final double SMALLEST_VARIANCE_PX2 = 1;

    private final int cells;
    private final int area;
    private final double cellPx;
    private final double blurPx;
    private final boolean logits;
    private final List<BodyPoint> points;
    /** Shares of the map being read, times a factor; 0 in every cell that is not in {@link #kept}. */
    private final float[] shares;

    private final int[] kept;
    private int keptCount;

    /**
     * A reader for the maps of one network.
     *
     * @param sizePx side of the crop
     * @param points body point of every map, null for a map to pass over
     */
    HeatMapReader(NetworkCard.HeatMaps output, int sizePx, List<BodyPoint> points) {
        this.cells = output.cells();
        this.area = cells * cells;
        this.cellPx = (double) sizePx / cells;
        this.blurPx = output.blurPx();
        this.logits = output.weights() == NetworkCard.Weights.logits;
        this.points = points;
        this.shares = new float[area];
        this.kept = new int[area];
    }

    /** Numbers that {@link #read} takes. */
    int length() {
        return points.size() * area;
    }

    /** Reads the maps of one crop: one after the other, each row by row. */
    LandmarkReading read(float[] maps) {
        if (maps.length != length()) {
            throw new IllegalArgumentException("the heat maps have " + length() + " numbers, was " + maps.length);
        }
        float[] numbers = LandmarkReading.unknown();
        for (int i = 0; i < points.size(); i++) {
            if (points.get(i) != null) {
                readMap(maps, i * area, numbers, points.get(i).index() * LandmarkReading.NUMBERS_PER_POINT);
            }
        }
        return LandmarkReading.of(numbers);
    }

    private void readMap(float[] maps, int from, float[] into, int at) {
        float largest = largest(maps, from);
        double sum = logits ? keepSoftMax(maps, from, largest) : keepPositive(maps, from);
        if (sum > 0) {
            int first = peak();
            describe(first, sum, into, at);
            clearWindow(first);
            int second = peak();
            if (shares[second] > 0) {
                describe(second, sum, into, at + 4);
            }
        }
        clearKept();
    }

    private float largest(float[] maps, int from) {
        float largest = maps[from];
        for (int i = from + 1; i < from + area; i++) {
            // Not Math.max: its rules for NaN and -0 make the loop several times slower.
            if (maps[i] > largest) {
                largest = maps[i];
            }
        }
        return largest;
    }

    private double keepSoftMax(float[] maps, int from, float largest) {
        float least = largest - NEGLIGIBLE_LOGIT;
        double sum = 0;
        for (int i = 0; i < area; i++) {
            if (maps[from + i] >= least) {
                sum += keep(i, exponential(largest - maps[from + i]));
            }
        }
        return sum;
    }

    /**
     * e^-x for x of 0 to {@value #NEGLIGIBLE_LOGIT}, to 7e-7 of its value: the nearest smaller x in the table and the first
     * terms of the series for the rest.
     */
    private static float exponential(float x) {
        int step = (int) (x * STEPS_PER_LOGIT);
        float rest = step * (1f / STEPS_PER_LOGIT) - x;
        return EXPONENTIALS[step] * (1 + rest * (1 + rest * 0.5f));
    }

    private static float[] exponentials() {
        float[] table = new float[NEGLIGIBLE_LOGIT * STEPS_PER_LOGIT + 1];
        for (int i = 0; i < table.length; i++) {
            table[i] = (float) Math.exp(-(double) i / STEPS_PER_LOGIT);
        }
        return table;
    }

    private double keepPositive(float[] maps, int from) {
        double sum = 0;
        for (int i = 0; i < area; i++) {
            if (maps[from + i] > 0) {
                sum += keep(i, maps[from + i]);
            }
        }
        return sum;
    }

    private float keep(int cell, float share) {
        shares[cell] = share;
        kept[keptCount++] = cell;
        return share;
    }

    /** The kept cell of the largest share, the first one of equals. */
    private int peak() {
        int best = kept[0];
        for (int i = 1; i < keptCount; i++) {
            if (shares[kept[i]] > shares[best]) {
                best = kept[i];
            }
        }
        return best;
    }

    private void clearKept() {
        for (int i = 0; i < keptCount; i++) {
            shares[kept[i]] = 0;
        }
        keptCount = 0;
    }

    /** Moments are taken about the peak, so that no digits are lost. */
    private void describe(int peak, double sum, float[] into, int at) {
        int peakRow = peak / cells;
        int peakColumn = peak % cells;
        double mass = 0;
        double mx = 0;
        double my = 0;
        double squares = 0;
        for (int row = first(peakRow); row <= last(peakRow); row++) {
            double dy = row - peakRow;
            for (int column = first(peakColumn); column <= last(peakColumn); column++) {
                double share = shares[row * cells + column];
                double dx = column - peakColumn;
                mass += share;
                mx += share * dx;
                my += share * dy;
                squares += share * (dx * dx + dy * dy);
            }
        }
        mx /= mass;
        my /= mass;
        double variancePx2 = (squares / mass - mx * mx - my * my) / 2 * cellPx * cellPx - blurPx * blurPx;
        into[at] = (float) ((peakColumn + 0.5 + mx) * cellPx);
        into[at + 1] = (float) ((peakRow + 0.5 + my) * cellPx);
        into[at + 2] = (float) Math.sqrt(Math.max(variancePx2, SMALLEST_VARIANCE_PX2));
        into[at + 3] = (float) (mass / sum);
    }

    private void clearWindow(int peak) {
        int peakRow = peak / cells;
        int peakColumn = peak % cells;
        for (int row = first(peakRow); row <= last(peakRow); row++) {
            Arrays.fill(shares, row * cells + first(peakColumn), row * cells + last(peakColumn) + 1, 0);
        }
    }

    private static int first(int peak) {
        return Math.max(peak - REACH_CELLS, 0);
    }

    private int last(int peak) {
        return Math.min(peak + REACH_CELLS, cells - 1);
    }
}
