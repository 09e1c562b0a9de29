package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.signal.Point2;

/** Reads the marks of a camera position; {@code docs/inputs.md} describes the columns. */
public final class CameraMarksReader {
    /** All are needed. */
    public static final List<String> COLUMNS = List.of("name", "along_m", "across_m", "x_px", "y_px");

    /** A runway is 40 to 45 m long and a pit ends 21 m or more after the line (rules of the event); with room to spare. */
    private static final double MOST_ALONG_M = 100;

    /** The runway is 1.22 m wide; cones and fences beside it may be used too. */
    private static final double MOST_ACROSS_M = 50;

    /** Wider than any camera's picture; points a little outside the picture are of use. */
    private static final double MOST_PX = 20_000;

    /** Ten times what anybody measures; the check leaves out each of them in turn. */
    private static final int MOST_MARKS = 100;

    private CameraMarksReader() {}

    /** The marks in the order of the file; an InputException says what is wrong and where. */
    public static CameraMarks read(Path file) throws InputException {
        List<Mark> marks = new ArrayList<>();
        List<SheetTable.Row> rows = SheetTable.read(file, COLUMNS, COLUMNS);
        if (rows.size() > MOST_MARKS) {
            throw rows.get(MOST_MARKS).problem("name", "more than " + MOST_MARKS + " marks; six to ten are enough");
        }
        for (SheetTable.Row row : rows) {
            Mark mark = mark(row);
            for (int i = 0; i < marks.size(); i++) {
                refuseDuplicate(row, mark, marks.get(i), rows.get(i).line());
            }
            marks.add(mark);
        }
        try {
            return new CameraMarks(marks);
        } catch (IllegalArgumentException e) {
            throw new InputException(file, e.getMessage());
        }
    }

    private static Mark mark(SheetTable.Row row) throws InputException {
        return new Mark(
                row.neededText("name"),
                row.neededNumber("along_m", -MOST_ALONG_M, MOST_ALONG_M, "11.0"),
                row.neededNumber("across_m", -MOST_ACROSS_M, MOST_ACROSS_M, "-0.61"),
                new Point2(
                        row.neededNumber("x_px", -MOST_PX, MOST_PX, "329.0"),
                        row.neededNumber("y_px", -MOST_PX, MOST_PX, "416.7")));
    }

    private static void refuseDuplicate(SheetTable.Row row, Mark mark, Mark earlier, int line) throws InputException {
        if (mark.name().equals(earlier.name())) {
            throw row.problem("name", InputException.quoted(mark.name()) + " is already on line " + line);
        }
        if (mark.alongM() == earlier.alongM() && mark.acrossM() == earlier.acrossM()) {
            throw row.problem("along_m", "this place of the runway is already marked on line " + line);
        }
        if (mark.pixel().equals(earlier.pixel())) {
            throw row.problem("x_px", "this point of the picture is already marked on line " + line);
        }
    }
}
