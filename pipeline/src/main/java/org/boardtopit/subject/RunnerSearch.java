package org.boardtopit.subject;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.Movement;
import org.boardtopit.ground.Survey;
import org.boardtopit.signal.LocalRegression;
import org.boardtopit.signal.OrderStatistics;
import org.boardtopit.signal.Point2;

/**
 * Finds the one who runs: the path through the clip along which most movement is carried furthest against the background.
 *
 * <p>Method: our own. Track-before-detect by dynamic programming (the idea: Barniv 1985, IEEE Trans. AES 21:144-156, from
 * memory). State: column and speed against the background, in steps of 0.1 s; reward of a step: distance travelled, times
 * the moving share around the path less a quarter, so that a path through still air costs; changes of speed cost. A walker or
 * an official waving carries little movement over little ground and loses against a runner even when seen much longer. No
 * person is recognised here; {@link AthleteTracker} does that. Fails when the athlete crosses the picture in the camera's
 * direction, where nothing moves sideways: {@link OncomingChoice} is for those.
 */
final class RunnerSearch {
    private static final double STEP_S = 0.1;
    /** 1.7 picture widths a second: a close-up of a fast run-up that is panned. */
    private static final double MAX_SPEED_WIDTHS_S = 1.7;
    /** Cells of movement in three columns that count as full; half of what an athlete of 90 px gives. */
    private static final double FULL_MOVEMENT = 4;

    private static final double STILL_AIR_COST = 0.25;
    private static final double SPEED_CHANGE_COST = 0.25;
    private static final int MAX_SPEED_CHANGE = 2;
    /** After the landing the runner stays near; the square follows for this long. */
    private static final double AFTER_S = 0.8;

    private final Survey survey;
    private final Movement movement;
    private final BackgroundMotion background;
    private final int columns;
    private final int maxSpeed;
    private final int[] stepFrames;

    RunnerSearch(Survey survey) {
        this.survey = survey;
        this.movement = survey.movement();
        this.background = survey.background();
        this.columns = movement.columns();
        this.stepFrames = steps();
        this.maxSpeed = (int) Math.ceil(MAX_SPEED_WIDTHS_S * STEP_S * columns);
    }

    /** The path with most running in it, either way; empty when the clip is too short or nothing moves. */
    Optional<RoughPath> find() {
        if (stepFrames.length < 3) {
            return Optional.empty();
        }
        Optional<RoughPath> right = search(1);
        Optional<RoughPath> left = search(-1);
        if (right.isEmpty() || left.isEmpty()) {
            return right.or(() -> left);
        }
        return right.get().score() >= left.get().score() ? right : left;
    }

    private int[] steps() {
        List<Integer> frames = new ArrayList<>();
        long next = 0;
        for (int i = 0; i < survey.frameCount(); i++) {
            if (survey.timestampsUs().get(i) >= next) {
                frames.add(i);
                next = survey.timestampsUs().get(i) + Math.round(STEP_S * 1e6) - 1000;
            }
        }
        return frames.stream().mapToInt(Integer::intValue).toArray();
    }

    private Optional<RoughPath> search(int direction) {
        int n = stepFrames.length;
        double[][] best = new double[columns][maxSpeed + 1];
        int[][][] from = new int[n][][];
        double top = 0;
        int topStep = -1;
        int topState = -1;
        for (int k = 1; k < n; k++) {
            double[][] next = new double[columns][maxSpeed + 1];
            from[k] = new int[columns][maxSpeed + 1];
            for (int[] row : from[k]) {
                Arrays.fill(row, -1);
            }
            double[] carried = carriedColumns(stepFrames[k - 1], stepFrames[k]);
            double[][] energy = energies(stepFrames[k - 1], stepFrames[k]);
            for (int c = 0; c < columns; c++) {
                for (int v = 1; v <= maxSpeed; v++) {
                    int to = (int) Math.round(carried[c] + direction * v);
                    if (to < 0 || to >= columns) {
                        continue;
                    }
                    double reward = v * (alongStep(energy, c, to) - STILL_AIR_COST);
                    int bestFrom = -1; // -1: the path begins here
                    double before = 0;
                    for (int u = Math.max(1, v - MAX_SPEED_CHANGE);
                            u <= Math.min(maxSpeed, v + MAX_SPEED_CHANGE);
                            u++) {
                        double value = best[c][u] - SPEED_CHANGE_COST * Math.abs(u - v);
                        if (best[c][u] > 0 && value > before) {
                            before = value;
                            bestFrom = u;
                        }
                    }
                    double value = before + reward;
                    if (value > next[to][v]) {
                        next[to][v] = value;
                        from[k][to][v] = c * (maxSpeed + 1) + Math.max(bestFrom, 0);
                        if (value > top) {
                            top = value;
                            topStep = k;
                            topState = to * (maxSpeed + 1) + v;
                        }
                    }
                }
            }
            best = next;
        }
        return topStep < 0
                ? Optional.empty()
                : Optional.of(refined(backtrack(from, topStep, topState), direction, top));
    }

    private int[][] backtrack(int[][][] from, int step, int state) {
        List<int[]> path = new ArrayList<>();
        int k = step;
        int s = state;
        while (k > 0) {
            int c = s / (maxSpeed + 1);
            int v = s % (maxSpeed + 1);
            path.add(0, new int[] {k, c});
            int previous = from[k][c][v];
            k--;
            s = previous;
            if (previous % (maxSpeed + 1) == 0) {
                break; // the path began here
            }
        }
        path.add(0, new int[] {k, s / (maxSpeed + 1)});
        return path.toArray(new int[0][]);
    }

    /** Where the background of each column of one frame lies in a later one, in columns. */
    private double[] carriedColumns(int frame, int later) {
        double[] carried = new double[columns];
        double y = movement.rows() * movement.cellPx() / 2;
        for (int c = 0; c < columns; c++) {
            Point2 p = new Point2((c + 0.5) * movement.cellPx(), y);
            Point2 q = background.fromFixed(later).apply(background.toFixed(frame, p));
            carried[c] = q.x() / movement.cellPx() - 0.5;
        }
        return carried;
    }

    private double[][] energies(int first, int last) {
        double[][] energy = new double[last - first + 1][columns];
        for (int f = first; f <= last; f++) {
            for (int i = 0; i < movement.cellCount(f); i++) {
                energy[f - first][movement.column(f, i)] += movement.amount(f, i);
            }
            withoutFlicker(energy[f - first]);
        }
        return energy;
    }

    /** Noise and trembling leaves move in most columns at once: what half of them show is no runner. */
    private static void withoutFlicker(double[] energy) {
        double everywhere = OrderStatistics.median(energy);
        for (int c = 0; c < energy.length; c++) {
            energy[c] = Math.max(0, energy[c] - everywhere);
        }
    }

    private double alongStep(double[][] energy, int fromColumn, int toColumn) {
        double sum = 0;
        int n = energy.length - 1;
        for (int j = 1; j <= n; j++) {
            int c = (int) Math.round(fromColumn + (toColumn - fromColumn) * (j / (double) n));
            double e = 0;
            for (int d = -1; d <= 1; d++) {
                e += c + d >= 0 && c + d < columns ? energy[j][c + d] : 0;
            }
            sum += Math.min(1, e / FULL_MOVEMENT);
        }
        return sum / n;
    }

    /** From steps to frames: the centre of the movement around the path, and its usual height. */
    private RoughPath refined(int[][] path, int direction, double score) {
        int first = stepFrames[path[0][0]];
        int end = stepFrames[path[path.length - 1][0]];
        int last = end;
        long until = survey.timestampsUs().get(end) + Math.round(AFTER_S * 1e6);
        while (last + 1 < survey.frameCount() && survey.timestampsUs().get(last + 1) <= until) {
            last++;
        }
        double[] column = new double[last - first + 1];
        for (int k = 1; k < path.length; k++) {
            int a = stepFrames[path[k - 1][0]];
            int b = stepFrames[path[k][0]];
            for (int f = a; f <= b; f++) {
                column[f - first] = path[k - 1][1] + (path[k][1] - path[k - 1][1]) * (f - a) / (double) (b - a);
            }
        }
        Arrays.fill(column, end - first, column.length, path[path.length - 1][1]);
        return located(
                first,
                column,
                direction,
                score * movement.cellPx() / survey.video().widthPx());
    }

    private RoughPath located(int first, double[] column, int direction, double score) {
        double halfWidth = 6;
        double height = 0;
        double[] x = column;
        double[] y = null;
        for (int pass = 0; pass < 4; pass++) {
            double[] cx = new double[column.length];
            double[] cy = new double[column.length];
            double[] heights = new double[column.length];
            for (int i = 0; i < column.length; i++) {
                double[] blob = blob(first + i, x[i], y == null ? Double.NaN : y[i], halfWidth, height);
                cx[i] = blob[0];
                cy[i] = blob[1];
                heights[i] = blob[2];
            }
            double[] t = times(first, column.length);
            x = smoothed(t, cx, column);
            y = smoothed(t, cy, null);
            height = median(heights);
            halfWidth = Math.max(4, 0.6 * height);
        }
        double cell = movement.cellPx();
        double[] xPx = Arrays.stream(x).map(v -> (v + 0.5) * cell).toArray();
        double[] yPx = Arrays.stream(y).map(v -> (v + 0.5) * cell).toArray();
        return new RoughPath(first, xPx, yPx, height * cell, direction, score);
    }

    private double[] times(int first, int n) {
        double[] t = new double[n];
        for (int i = 0; i < n; i++) {
            t[i] = survey.timestampsUs().get(first + i) / 1e6;
        }
        return t;
    }

    private static double[] smoothed(double[] t, double[] v, double[] fallback) {
        LocalRegression smoother = new LocalRegression(t, v, 0.12, 1);
        double[] out = new double[v.length];
        for (int i = 0; i < v.length; i++) {
            double s = smoother.at(t[i]);
            out[i] = Double.isFinite(s) || fallback == null ? s : fallback[i];
        }
        return out;
    }

    /** Weighted middle (column, row) of the movement near a place, and its height in rows (5th to 95th percentile). */
    private double[] blob(int frame, double column, double row, double halfWidth, double height) {
        double[] rowAmount = new double[movement.rows()];
        double sum = 0;
        double cx = 0;
        for (int i = 0; i < movement.cellCount(frame); i++) {
            int c = movement.column(frame, i);
            int r = movement.row(frame, i);
            boolean nearRow = !Double.isFinite(row) || height <= 0 || Math.abs(r - row) < 0.9 * height;
            if (Math.abs(c - column) <= halfWidth && nearRow) {
                double a = movement.amount(frame, i);
                rowAmount[r] += a;
                cx += a * c;
                sum += a;
            }
        }
        if (sum < 1.5) {
            return new double[] {Double.NaN, Double.NaN, Double.NaN};
        }
        double low = percentile(rowAmount, 0.05 * sum);
        double high = percentile(rowAmount, 0.95 * sum);
        return new double[] {cx / sum, (low + high) / 2, high - low + 1};
    }

    private static double percentile(double[] amounts, double target) {
        double seen = 0;
        for (int i = 0; i < amounts.length; i++) {
            seen += amounts[i];
            if (seen >= target) {
                return i;
            }
        }
        return amounts.length - 1.0;
    }

    private static double median(double[] values) {
        double[] known = Arrays.stream(values).filter(Double::isFinite).sorted().toArray();
        return known.length == 0 ? 0 : known[known.length / 2];
    }
}
