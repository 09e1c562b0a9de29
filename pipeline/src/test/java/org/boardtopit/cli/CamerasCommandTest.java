package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import javax.imageio.ImageIO;
import org.boardtopit.signal.Point2;
import org.boardtopit.synthetic.DrawnCamera;
import org.boardtopit.synthetic.DrawnScene;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On marks that a drawn pinhole sees (SYN, our own). */
class CamerasCommandTest {
    private static final DrawnCamera CAMERA = new DrawnCamera(800, 450, 640, 5.5, -18, 1.8, 0, 0.04, 0);
    private static final String[] NAMES = {
        "board near", "board far", "pit near", "pit far", "tape near", "tape far", "cone"
    };
    private static final double[][] PLACES = {
        {0, -0.61}, {0, 0.61}, {11, -1.375}, {11, 1.375}, {-4, -0.72}, {-4, 0.72}, {5, -0.72}
    };

    @TempDir
    private Path folder;

    private CommandLineRun program;

    @BeforeEach
    void begin() {
        program = new CommandLineRun(folder);
        new DrawnScene(800, 450, 2).writeBackground(folder.resolve("wide.png"));
        program.file("meet.yaml", """
                cameras:
                  - name: North side
                    reference: wide.png
                    marks: marks.csv
                """);
    }

    private void marks(int count, int wrong) {
        StringBuilder csv = new StringBuilder("name,along_m,across_m,x_px,y_px\n");
        for (int i = 0; i < count; i++) {
            Point2 p = CAMERA.project(PLACES[i][0], PLACES[i][1], 0);
            double across = i == wrong ? -PLACES[i][1] : PLACES[i][1];
            csv.append(String.format(
                    Locale.ROOT, "%s,%.1f,%.3f,%.1f,%.1f%n", NAMES[i], PLACES[i][0], across, p.x(), p.y()));
        }
        program.file("marks.csv", csv.toString());
    }

    @Test
    void marksThatAgreeAreDrawnAndTheCodeIsZero() throws Exception {
        marks(7, -1);
        assertEquals(0, program.run("cameras", "@meet.yaml", "--out", "@out"), program.err());
        assertTrue(program.out().contains("Camera North side: 7 marks on wide.png"), program.out());
        assertTrue(program.out().contains("stands 1.8 m high, 18.0 m right of the runway"), program.out());
        assertTrue(program.out().contains("all marks agree"), program.out());
        assertTrue(program.out().contains("cm at -10 m"), program.out());
        assertEquals("", program.err());
        BufferedImage drawn =
                ImageIO.read(folder.resolve("out/cameras/North_side.jpg").toFile());
        assertEquals(2400, drawn.getWidth());
        assertFalse(Files.exists(folder.resolve("out/cameras/North_side.jpg.part")));
    }

    /** The marks as a lens bends them (formula of docs/inputs.md, solved by repeated substitution): only with k1 they agree. */
    @Test
    void marksThroughABendingLensAgreeWhenTheSheetSaysHowMuchItBends() {
        StringBuilder csv = new StringBuilder("name,along_m,across_m,x_px,y_px\n");
        for (int i = 0; i < PLACES.length; i++) {
            Point2 p = CAMERA.project(PLACES[i][0], PLACES[i][1], 0);
            double by = 1;
            for (int step = 0; step < 40; step++) {
                double r = by * Math.hypot(p.x() - 400, p.y() - 225) / 400;
                by = 1 / (1 + 0.1 * r * r);
            }
            csv.append(String.format(
                    Locale.ROOT,
                    "%s,%.1f,%.3f,%.1f,%.1f%n",
                    NAMES[i],
                    PLACES[i][0],
                    PLACES[i][1],
                    400 + by * (p.x() - 400),
                    225 + by * (p.y() - 225)));
        }
        program.file("marks.csv", csv.toString());
        assertEquals(1, program.run("cameras", "@meet.yaml"));
        program.file("meet.yaml", """
                cameras:
                  - name: North side
                    distortion_k1: 0.1
                    reference: wide.png
                    marks: marks.csv
                """);
        assertEquals(0, program.run("cameras", "@meet.yaml"), program.err());
        assertTrue(program.out().contains("lens: distortion_k1 0.1 is taken out"), program.out());
        assertTrue(program.out().contains("18.0 m right of the runway"), program.out());
    }

    @Test
    void aMistypedMarkIsNamedWithWhatWouldBeRightAndTheCodeIsOne() {
        marks(7, 6);
        assertEquals(1, program.run("cameras", "@meet.yaml"));
        assertTrue(program.err().startsWith("error: marks.csv: mark 'cone' is off; without it"), program.err());
        assertTrue(program.err().contains("with the other sign of across_m it would fit"), program.err());
        assertEquals(1, program.err().lines().count(), program.err());
        assertTrue(program.out().lines().anyMatch(l -> l.startsWith("  cone") && l.endsWith("OFF")), program.out());
    }

    @Test
    void withFourMarksItSaysThatNoneCanBeCompared() {
        marks(4, -1);
        assertEquals(0, program.run("cameras", "@meet.yaml"));
        assertTrue(program.err().contains("with 4 marks none can be compared"), program.err());
    }

    @Test
    void aSheetWithoutMarkedCamerasIsWrongInput() {
        program.file("meet.yaml", "cameras:\n  - name: a\n");
        assertEquals(2, program.run("cameras", "@meet.yaml"));
        assertTrue(program.err().contains("no camera has a reference picture and marks"), program.err());
    }

    @Test
    void aReferenceThatIsNoPictureIsWrongInput() {
        marks(7, -1);
        program.file("wide.png", "no picture");
        assertEquals(2, program.run("cameras", "@meet.yaml"));
        assertTrue(program.err().contains("wide.png: not a picture"), program.err());
    }
}
