package org.boardtopit.subject;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import org.boardtopit.ground.Movement;

/** Cells that move together in one frame: those no more than two cells apart. */
record MovingArea(double middleColumn, double middleRow, double heightCells, double amount) {
    private static final int REACH = 2;

    /** The areas with most movement, the largest first. */
    static List<MovingArea> largest(Movement movement, int frame, int most) {
        int count = movement.cellCount(frame);
        int[] cellAt = new int[movement.columns() * movement.rows()]; // index + 1, 0 for none
        for (int i = 0; i < count; i++) {
            cellAt[movement.row(frame, i) * movement.columns() + movement.column(frame, i)] = i + 1;
        }
        List<MovingArea> areas = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            if (cellAt[movement.row(frame, i) * movement.columns() + movement.column(frame, i)] > 0) {
                areas.add(gather(movement, frame, i, cellAt));
            }
        }
        areas.sort(Comparator.comparingDouble(MovingArea::amount).reversed());
        return areas.subList(0, Math.min(most, areas.size()));
    }

    /** Collects the area around a cell and takes its cells out of the grid. */
    private static MovingArea gather(Movement movement, int frame, int start, int[] cellAt) {
        Deque<Integer> open = new ArrayDeque<>(List.of(start));
        cellAt[movement.row(frame, start) * movement.columns() + movement.column(frame, start)] = 0;
        int left = Integer.MAX_VALUE;
        int right = 0;
        int top = Integer.MAX_VALUE;
        int bottom = 0;
        double amount = 0;
        while (!open.isEmpty()) {
            int i = open.pop();
            int column = movement.column(frame, i);
            int row = movement.row(frame, i);
            amount += movement.amount(frame, i);
            left = Math.min(left, column);
            right = Math.max(right, column);
            top = Math.min(top, row);
            bottom = Math.max(bottom, row);
            for (int r = Math.max(0, row - REACH); r <= Math.min(movement.rows() - 1, row + REACH); r++) {
                for (int c = Math.max(0, column - REACH); c <= Math.min(movement.columns() - 1, column + REACH); c++) {
                    int at = r * movement.columns() + c;
                    if (cellAt[at] > 0) {
                        open.push(cellAt[at] - 1);
                        cellAt[at] = 0;
                    }
                }
            }
        }
        return new MovingArea((left + right + 1) / 2.0, (top + bottom + 1) / 2.0, bottom - top + 1.0, amount);
    }
}
