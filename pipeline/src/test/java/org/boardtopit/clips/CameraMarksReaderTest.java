package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.boardtopit.signal.Point2;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CameraMarksReaderTest {
    private static final String HEADER = "name,along_m,across_m,x_px,y_px\n";
    private static final String THREE = "a,0,-1,0,100\nb,0,1,10,90\nc,10,-1,200,100\n";

    @TempDir
    Path folder;

    private CameraMarks read(String text) throws IOException, InputException {
        return CameraMarksReader.read(Files.writeString(folder.resolve("marks.csv"), text, StandardCharsets.UTF_8));
    }

    private String messageOf(String text) {
        InputException e = assertThrows(InputException.class, () -> read(text));
        return e.getMessage().replace(folder + "/", "");
    }

    @Test
    void readsMarksInTheOrderOfTheFile() throws Exception {
        List<Mark> marks = read(HEADER + THREE + "d,10.5,1,190.25,90\n").marks();
        assertEquals(4, marks.size());
        assertEquals(new Mark("d", 10.5, 1, new Point2(190.25, 90)), marks.get(3));
    }

    @Test
    void readsSemicolonsAndDecimalCommas() throws Exception {
        String text = """
                name;along_m;across_m;x_px;y_px
                a;0;-0,61;0;100
                b;0;0,61;10;90
                c;10;-0,61;200;100
                d;10;0,61;190,5;90
                """;
        assertEquals(
                new Mark("d", 10, 0.61, new Point2(190.5, 90)),
                read(text).marks().get(3));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(
            delimiter = '|',
            quoteCharacter = '`',
            value = {
                "a,10,1,190,90 | marks.csv, line 5, column name: 'a' is already on line 2",
                "d,0,1,190,90 | marks.csv, line 5, column along_m: this place of the runway is already marked on line 3",
                "d,10,1,10,90 | marks.csv, line 5, column x_px: this point of the picture is already marked on line 3",
                "d,,1,190,90 | marks.csv, line 5, column along_m: must not be empty",
                ",10,1,190,90 | marks.csv, line 5, column name: must not be empty",
                "d,10,1,190 | marks.csv, line 5, column y_px: must not be empty",
                "d,1000,1,190,90 | marks.csv, line 5, column along_m: must be from -100 to 100, was 1000",
                "d,10,1,190,1e9 | marks.csv, line 5, column y_px: must be a number such as 416.7, was '1e9'",
                "d,10,1,190,Infinity | marks.csv, line 5, column y_px: must be a number such as 416.7, was 'Infinity'",
            })
    void saysWhatIsWrongAndWhere(String fourth, String message) {
        assertEquals(message, messageOf(HEADER + THREE + fourth + "\n"));
    }

    @Test
    void needsFourMarks() {
        assertEquals("marks.csv: at least 4 marks are needed, there are 3", messageOf(HEADER + THREE));
    }

    @Test
    void needsEveryColumn() {
        assertEquals(
                "marks.csv, line 1: the column 'y_px' is missing", messageOf("name,along_m,across_m,x_px\na,0,0,0\n"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                // All on the near edge of the runway.
                "a,0,-1,0,100\nb,3,-1,50,100\nc,6,-1,120,100\nd,9,-1,200,99\n",
                // All but one.
                "a,0,-1,0,100\nb,3,-1,50,100\nc,6,-1,120,100\nd,9,1,200,90\n",
                // Aslant, and five of them.
                "a,0,0,0,100\nb,1,1,50,90\nc,2,2,120,95\nd,3,3,200,99\ne,4,4,220,99\n",
            })
    void refusesMarksOnOneLineOfTheRunway(String rows) {
        assertEquals(
                "marks.csv: all marks, or all but one, are on one line of the runway; take marks on both sides of it",
                messageOf(HEADER + rows));
    }

    @Test
    void refusesMarksOnOneLineOfThePicture() {
        assertEquals(
                "marks.csv: all marks, or all but one, are on one line of the picture; film from higher up or further"
                        + " to the side, or check x_px and y_px",
                messageOf(HEADER + "a,0,-1,0,100\nb,0,1,10,100.5\nc,10,-1,200,100\nd,10,1,190,100.5\n"));
    }

    @Test
    void twoMarksOnEachOfTwoLinesAreEnough() throws Exception {
        assertEquals(
                4,
                read(HEADER + "a,0,-1,0,100\nb,9,-1,99,100\nc,2,1,20,90\nd,7,1,80,90\n")
                        .marks()
                        .size());
    }
}
