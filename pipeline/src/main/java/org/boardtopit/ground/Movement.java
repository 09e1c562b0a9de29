package org.boardtopit.ground;

import java.util.ArrayList;
import java.util.List;

/**
 * Where something moves against the background, on a coarse grid of square cells per frame.
 *
 * <p>Only cells with movement are kept, at most {@link #MAX_CELLS} a frame (those with most of it).
 */
public final class Movement {
    /** An athlete of a third of the picture height covers about 400 cells of 1/120 picture width. */
    public static final int MAX_CELLS = 1500;

    private final int columns;
    private final int rows;
    private final double cellPx;
    private final List<int[]> cells = new ArrayList<>();
    private final List<float[]> amounts = new ArrayList<>();

    /**
     * An empty record of movement; frames are appended in order.
     *
     * @param cellPx side of a cell in pixels of the frame
     */
    public Movement(int columns, int rows, double cellPx) {
        this.columns = columns;
        this.rows = rows;
        this.cellPx = cellPx;
    }

    /** Appends a frame: cell numbers (row * columns + column) and the moving share of each cell, 0 to 1. */
    public void add(int[] cellNumbers, float[] movingShare) {
        if (cellNumbers.length != movingShare.length || cellNumbers.length > MAX_CELLS) {
            throw new IllegalArgumentException(
                    "a frame of movement needs as many shares as cells, at most " + MAX_CELLS);
        }
        cells.add(cellNumbers.clone());
        amounts.add(movingShare.clone());
    }

    public int frameCount() {
        return cells.size();
    }

    public int columns() {
        return columns;
    }

    public int rows() {
        return rows;
    }

    public double cellPx() {
        return cellPx;
    }

    public int cellCount(int frame) {
        return cells.get(frame).length;
    }

    public int column(int frame, int i) {
        return cells.get(frame)[i] % columns;
    }

    public int row(int frame, int i) {
        return cells.get(frame)[i] / columns;
    }

    /** Moving share of the i-th moving cell, 0 to 1. */
    public double amount(int frame, int i) {
        return amounts.get(frame)[i];
    }
}
