package org.boardtopit.report.overlay;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Finds room for labels: inside the picture, off the blocked places, never on one another.
 *
 * <p>A greedy search in rings around the anchor, in a fixed order, so that the same picture always gives the same places
 * and a label moves with its anchor. When nothing is free the label is left out. Not thread-safe.
 */
public final class LabelPlacer {
    private static final int RINGS = 6;

    private final Box picture;
    private final List<Box> taken = new ArrayList<>();

    /** On which side of its anchor a label would like to be. */
    public enum Lean {
        BELOW,
        LEFT,
        RIGHT
    }

    private static final int[][] BELOW = {{0, 1}, {1, 1}, {-1, 1}};
    private static final int[][] LEFT = {{-1, 0}, {-1, -1}, {-1, 1}};
    private static final int[][] RIGHT = {{1, 0}, {1, -1}, {1, 1}};
    private static final int[][] ALL_ROUND = {{0, 1}, {-1, 0}, {1, 0}, {0, -1}, {-1, 1}, {1, 1}, {-1, -1}, {1, -1}};

    public LabelPlacer(double widthPx, double heightPx) {
        picture = new Box(0, 0, widthPx, heightPx);
    }

    /** Forgets everything, for the next frame. */
    public void clear() {
        taken.clear();
    }

    /** Keeps labels off a place. */
    public void block(Box box) {
        taken.add(box);
    }

    /**
     * A free place for a label of this size near the anchor, at least gap px away from it; it is taken from then on.
     * Empty when there is none.
     */
    public Optional<Box> place(double anchorX, double anchorY, double width, double height, double gap, Lean lean) {
        Optional<Box> preferred = search(anchorX, anchorY, width, height, gap, directions(lean));
        Optional<Box> found =
                preferred.isPresent() ? preferred : search(anchorX, anchorY, width, height, gap, ALL_ROUND);
        found.ifPresent(taken::add);
        return found;
    }

    private static int[][] directions(Lean lean) {
        return switch (lean) {
            case BELOW -> BELOW;
            case LEFT -> LEFT;
            case RIGHT -> RIGHT;
        };
    }

    private Optional<Box> search(double x, double y, double width, double height, double gap, int[][] directions) {
        for (int ring = 0; ring < RINGS; ring++) {
            double distance = gap + ring * height * 0.6;
            for (int[] d : directions) {
                Box box = Box.centredOn(
                        x + d[0] * (distance + width / 2), y + d[1] * (distance + height / 2), width, height);
                if (isFree(box)) {
                    return Optional.of(box);
                }
            }
        }
        return Optional.empty();
    }

    private boolean isFree(Box box) {
        if (!picture.contains(box)) {
            return false;
        }
        for (Box other : taken) {
            if (box.overlaps(other)) {
                return false;
            }
        }
        return true;
    }
}
