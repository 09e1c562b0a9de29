package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;

import java.util.HashMap;
import java.util.List;
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
    private static final double CAP = 17;
    private static final int GAP_PX = 8;
    private static final int WHO_PX = 64;
    private static final int HEADING_PX = 44;
    /** Room below a cell for two lines of values. */
    private static final int VALUES_PX = 56;

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
        return HEADING_PX + Framing.CELL.heightPx() + VALUES_PX;
    }

    private static int blockHeight() {
        return HEADING_PX + ROWS * rowHeight();
    }

    private void headings() {
        String who = PlainText.of(String.join("   ", scene.who()));
        canvas.text(who, 2 * GAP_PX, WHO_PX - 20, 24, Ink.TEXT);
        for (int i = 0; i < scene.columns().size(); i++) {
            int left = left(i, StillInstant.TOUCHDOWN);
            double baseline = WHO_PX + (i / abreast) * blockHeight() + HEADING_PX - 14;
            canvas.text(capital(scene.columns().get(i).title()), left + 6, baseline, 22, Ink.WARNING);
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
        canvas.text(capital(scene.rows().get(still.instant())), left + 6, top - 12, CAP, Ink.TEXT);
        List<String> values = values(still);
        int half = (values.size() + 1) / 2;
        double below = top + Framing.CELL.heightPx() + 8 + CAP;
        line(String.join("   ", values.subList(0, half)), left + 6, below);
        line(String.join("   ", values.subList(half, values.size())), left + 6, below + 8 + CAP);
    }

    /** What was measured: the angles, or where there are none the rest. */
    private static List<String> values(Still still) {
        return still.angles().isEmpty()
                ? still.notes().subList(1, still.notes().size())
                : still.angles().stream().map(a -> a.word() + " " + a.value()).toList();
    }

    private void line(String text, double x, double baseline) {
        String plain = PlainText.of(text);
        double width = canvas.lettering().widthPx(plain, CAP);
        double fitting = Math.min(1, (Framing.CELL.widthPx() - 12) / Math.max(1, width));
        canvas.text(plain, x, baseline, fitting * CAP, Ink.TEXT);
    }

    private static String capital(String text) {
        return StillPainter.capital(PlainText.of(text));
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
