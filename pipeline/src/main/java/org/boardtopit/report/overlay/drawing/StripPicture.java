package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;

import java.util.HashMap;
import java.util.Map;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.report.stills.Framing;
import org.boardtopit.report.stills.Still;
import org.boardtopit.report.stills.StillInstant;
import org.boardtopit.report.stills.StillsScene;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * All stills of an attempt as one picture: a column for each contact, in it touchdown, mid-support and toe-off from top to bottom, and
 * below them, between two columns, the flight that follows.
 */
final class StripPicture implements AutoCloseable {
    private static final int COLUMNS_ABREAST = 6;
    private static final double UNIT = 1.0;
    private static final int GAP_PX = 8;
    private static final int WHO_PX = 64;
    private static final int HEADING_PX = 44;
    private static final int ROWS = StillInstant.values().length;

    private final StillsScene scene;
    private final StillPainter painter;
    private final Mat picture;
    private final Canvas canvas;
    private final Map<Integer, Integer> columns = new HashMap<>();
    private final int abreast;

    StripPicture(StillsScene scene) {
        this.scene = scene;
        painter = new StillPainter(scene, Framing.CELL, 0.9, false);
        abreast = Math.max(1, Math.min(COLUMNS_ABREAST, scene.columns().size()));
        int blocks = (scene.columns().size() + abreast - 1) / abreast;
        int width = GAP_PX + abreast * (Framing.CELL.widthPx() + GAP_PX);
        picture = new Mat(WHO_PX + blocks * blockHeight(), width, CV_8UC3);
        canvas = new Canvas(width, picture.rows());
        canvas.drawOn(picture);
        canvas.fill(new Box(0, 0, width, picture.rows()), Ink.PANEL);
        headings();
        for (int i = 0; i < scene.columns().size(); i++) {
            columns.put(scene.columns().get(i).contact(), i);
        }
    }

    private static int rowHeight() {
        return HEADING_PX + Framing.CELL.heightPx() + GAP_PX;
    }

    private static int blockHeight() {
        return HEADING_PX + ROWS * rowHeight();
    }

    private void headings() {
        String who = PlainText.of(String.join("   ", scene.who()));
        canvas.text(who, 2 * GAP_PX, WHO_PX - 20, 24 * UNIT, Ink.TEXT);
        for (int i = 0; i < scene.columns().size(); i++) {
            int left = left(i, StillInstant.TOUCHDOWN);
            double baseline = WHO_PX + (i / abreast) * blockHeight() + HEADING_PX - 14;
            canvas.text(PlainText.of(scene.columns().get(i).title()), left + 6, baseline, 20 * UNIT, Ink.ANGLE);
        }
    }

    /** Left edge of a cell; a flight stands half a column further on, between the contacts. */
    private int left(int column, StillInstant instant) {
        int step = Framing.CELL.widthPx() + GAP_PX;
        int left = GAP_PX + (column % abreast) * step;
        boolean last = column % abreast == abreast - 1;
        return instant == StillInstant.FLIGHT && !last ? left + step / 2 : left;
    }

    private int top(int column, StillInstant instant) {
        return WHO_PX + (column / abreast) * blockHeight() + HEADING_PX + instant.row() * rowHeight();
    }

    /** Adds a still from its frame. */
    void add(Mat frame, Still still) {
        Integer column = columns.get(still.contact());
        if (column == null) {
            return;
        }
        int left = left(column, still.instant());
        int top = top(column, still.instant()) + HEADING_PX;
        try (Mat cell = painter.painted(frame, still)) {
            canvas.stamp(cell, Box.at(left, top, cell.cols(), cell.rows()));
        }
        canvas.text(PlainText.of(scene.rows().get(still.instant())), left + 6, top - 14, 17 * UNIT, Ink.TEXT);
    }

    Mat picture() {
        return picture;
    }

    @Override
    public void close() {
        painter.close();
        canvas.close();
        picture.close();
    }
}
