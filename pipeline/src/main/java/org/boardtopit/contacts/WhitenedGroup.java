package org.boardtopit.contacts;

import java.util.Arrays;
import java.util.HashMap;
import java.util.Map;
import java.util.function.DoubleFunction;
import java.util.function.DoubleUnaryOperator;

/**
 * The whitened samples of one or two points of a foot that share coefficients, and the products of model columns with them.
 *
 * <p>Along and height have the same covariance and the same columns, so every product A'A serves both.
 */
final class WhitenedGroup {
    /** More instants than any search looks at; keys stay apart in the hash too, which ids side by side in a long do not. */
    private static final int MOST_BLOCKS = 30_011;

    private final double[][] timesS;
    private final Whitener[] whiteners;
    private final double[][] data = new double[2][];
    private final double[] squares = new double[2];
    private final double[][] origin;
    private final int rows;
    private final Map<Integer, double[][]> crossProducts = new HashMap<>();
    private int blocks;

    /** Some columns that belong to one instant, with their products. */
    static final class Block {
        private final int id;
        private final double[][] columns;
        private final double[][] own;
        private final double[][] projected; // [dimension][column]

        private Block(int id, double[][] columns, double[][] data) {
            this.id = id;
            this.columns = columns;
            this.own = products(columns, columns);
            this.projected = new double[2][columns.length];
            for (int d = 0; d < 2; d++) {
                for (int i = 0; i < columns.length; i++) {
                    projected[d][i] = dot(columns[i], data[d]);
                }
            }
        }
    }

    /** Blocks of one kind, made once per instant. */
    static final class Blocks {
        private final Map<Long, Block> made = new HashMap<>();
        private final DoubleFunction<Block> make;

        Blocks(DoubleFunction<Block> make) {
            this.make = make;
        }

        Block at(double instantS) {
            return made.computeIfAbsent(Math.round(instantS * 1e7), key -> make.apply(instantS));
        }
    }

    /**
     * Takes the known samples of the points.
     *
     * @param weights robust weight of each sample, [point][sample]
     */
    WhitenedGroup(FootSamples samples, double[][] weights, int... points) {
        timesS = new double[points.length][];
        whiteners = new Whitener[points.length];
        origin = new double[points.length][2];
        rows = Arrays.stream(points).map(samples::known).sum();
        data[0] = new double[rows];
        data[1] = new double[rows];
        int offset = 0;
        for (int i = 0; i < points.length; i++) {
            take(samples, weights[points[i]], points[i], i, offset);
            offset += timesS[i].length;
        }
        squares[0] = dot(data[0], data[0]);
        squares[1] = dot(data[1], data[1]);
    }

    private void take(FootSamples samples, double[] weights, int point, int i, int offset) {
        int n = samples.known(point);
        double[] times = new double[n];
        double[] sd = new double[n];
        double[][] values = new double[2][n];
        int m = 0;
        for (int f = 0; f < samples.count(); f++) {
            if (samples.isKnown(point, f)) {
                times[m] = samples.timeS(f);
                sd[m] = samples.sd(point, f) / Math.sqrt(weights[f]);
                values[0][m] = samples.along(point, f);
                values[1][m++] = samples.height(point, f);
            }
        }
        timesS[i] = times;
        whiteners[i] = new Whitener(times, sd);
        for (int d = 0; d < 2; d++) {
            double[] sorted = values[d].clone();
            Arrays.sort(sorted);
            origin[i][d] = n == 0 ? 0 : sorted[n / 2];
            for (int j = 0; j < n; j++) {
                values[d][j] -= origin[i][d];
            }
            whiteners[i].whiten(values[d], data[d], offset);
        }
    }

    /** Value from which the data of a point (by its place in this group) are counted. */
    double origin(int i, int dimension) {
        return origin[i][dimension];
    }

    Block block(double[]... columns) {
        return new Block(blocks++, columns, data);
    }

    /** The whitened column of a function of time for all points, or for one (by its place in this group). */
    double[] column(DoubleUnaryOperator shape, int onlyPoint) {
        double[] out = new double[rows];
        int offset = 0;
        for (int i = 0; i < timesS.length; i++) {
            int n = timesS[i].length;
            if (onlyPoint < 0 || onlyPoint == i) {
                double[] raw = new double[n];
                for (int j = 0; j < n; j++) {
                    raw[j] = shape.applyAsDouble(timesS[i][j]);
                }
                whiteners[i].whiten(raw, out, offset);
            }
            offset += n;
        }
        return out;
    }

    /** Log evidence of the model whose columns are those of the blocks, in one dimension (0 along, 1 height). */
    double evidence(LinearEvidence evidence, int dimension, Block... model) {
        int k = 0;
        for (Block b : model) {
            k += b.columns.length;
        }
        double[][] gram = new double[k][k];
        double[] projected = new double[k];
        int row = 0;
        for (int a = 0; a < model.length; a++) {
            System.arraycopy(model[a].projected[dimension], 0, projected, row, model[a].columns.length);
            int column = 0;
            for (int b = 0; b <= a; b++) {
                double[][] products = a == b ? model[a].own : cross(model[a], model[b]);
                for (int i = 0; i < products.length; i++) {
                    System.arraycopy(products[i], 0, gram[row + i], column, products[i].length);
                }
                column += model[b].columns.length;
            }
            row += model[a].columns.length;
        }
        return evidence.compute(gram, projected, squares[dimension]);
    }

    private double[][] cross(Block a, Block b) {
        return crossProducts.computeIfAbsent(a.id * MOST_BLOCKS + b.id, key -> products(a.columns, b.columns));
    }

    private static double[][] products(double[][] a, double[][] b) {
        double[][] p = new double[a.length][b.length];
        for (int i = 0; i < a.length; i++) {
            for (int j = 0; j < b.length; j++) {
                p[i][j] = dot(a[i], b[j]);
            }
        }
        return p;
    }

    private static double dot(double[] a, double[] b) {
        double s = 0;
        for (int i = 0; i < a.length; i++) {
            s += a[i] * b[i];
        }
        return s;
    }
}
