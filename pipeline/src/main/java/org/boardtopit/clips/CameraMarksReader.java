package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Reads the marks of a camera position; {@code docs/inputs.md} describes the columns. */
public final class CameraMarksReader {
    /** All are needed. */
    public static final List<String> COLUMNS = List.of("name", "along_m", "across_m", "x_px", "y_px");

    private CameraMarksReader() {}

    /** The marks in the order of the file; an InputException says what is wrong and where. */
    public static CameraMarks read(Path file) throws InputException {
        List<Mark> marks = new ArrayList<>();
        List<SheetTable.Row> rows = SheetTable.read(file, COLUMNS, COLUMNS);
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
                row.neededNumber("along_m", -Mark.MOST_ALONG_M, Mark.MOST_ALONG_M, "11.0"),
                row.neededNumber("across_m", -Mark.MOST_ACROSS_M, Mark.MOST_ACROSS_M, "-0.61"),
                row.neededNumber("x_px", -Mark.MOST_PX, Mark.MOST_PX, "329.0"),
                row.neededNumber("y_px", -Mark.MOST_PX, Mark.MOST_PX, "416.7"));
    }

    private static void refuseDuplicate(SheetTable.Row row, Mark mark, Mark earlier, int line) throws InputException {
        if (mark.name().equals(earlier.name())) {
            throw row.problem("name", InputException.quoted(mark.name()) + " is already on line " + line);
        }
        if (mark.alongM() == earlier.alongM() && mark.acrossM() == earlier.acrossM()) {
            throw row.problem("along_m", "this place of the runway is already marked on line " + line);
        }
        if (mark.xPx() == earlier.xPx() && mark.yPx() == earlier.yPx()) {
            throw row.problem("x_px", "this point of the picture is already marked on line " + line);
        }
    }
}
