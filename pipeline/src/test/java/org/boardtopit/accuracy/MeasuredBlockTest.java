package org.boardtopit.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import org.boardtopit.clips.InputException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class MeasuredBlockTest {
    private static final Path FILE = Path.of("accuracy.md");

    @Test
    void keepsWhatIsWrittenByHandBeforeAndAfter() throws InputException {
        String text = "# Ours\n\nBefore.\n\n" + MeasuredBlock.BEGIN + "\nold\n" + MeasuredBlock.END + "\n\nAfter.\n";

        String replaced = MeasuredBlock.replace(FILE, text, "new\n");

        assertEquals(text.replace("old", "new"), replaced);
        assertEquals(replaced, MeasuredBlock.replace(FILE, replaced, "new\n"));
    }

    @Test
    void aNewFileCanBeWrittenOverLater() throws InputException {
        assertEquals(
                MeasuredBlock.alone("second\n"),
                MeasuredBlock.replace(FILE, MeasuredBlock.alone("first\n"), "second\n"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "# Another file\n",
                "BEGIN old",
                "old END",
                "END old BEGIN",
                "BEGIN BEGIN END",
                "BEGIN END END"
            })
    void refusesAFileWithoutOnePlaceForIt(String sketch) {
        String text = sketch.replace("BEGIN", MeasuredBlock.BEGIN).replace("END", MeasuredBlock.END);

        InputException e = assertThrows(InputException.class, () -> MeasuredBlock.replace(FILE, text, "new"));

        assertTrue(
                e.getMessage().startsWith("accuracy.md: is not overwritten: it must hold the lines "), e.getMessage());
        assertEquals(1, e.getMessage().lines().count());
    }
}
