package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WideTableTest {
    @TempDir
    private Path folder;

    private Path file(String text) throws IOException {
        return Files.writeString(folder.resolve("wide.csv"), text);
    }

    @Test
    void takesColumnsThatItWasNotToldOf() throws IOException, InputException {
        WideTable table = WideTable.read(file("frame,more,x\n0,words,1.5\n1,,-2\n"), List.of("frame"));

        assertEquals(2, table.rowCount());
        assertEquals(1.5, table.number(0, "x"));
        assertEquals("words", table.text(0, "more"));
        assertTrue(Double.isNaN(table.number(1, "more")));
        assertEquals("", table.text(1, "nothing"));
    }

    @Test
    void namesTheCellThatIsNoNumber() throws IOException, InputException {
        WideTable table = WideTable.read(file("frame,x\n0,\n1,far\n"), List.of("frame", "x"));

        assertEquals(
                folder.resolve("wide.csv") + ", line 2, column x: must not be empty",
                assertThrows(InputException.class, () -> table.neededNumber(0, "x"))
                        .getMessage());
        assertEquals(
                folder.resolve("wide.csv") + ", line 3, column x: must be a number such as 1.25, was 'far'",
                assertThrows(InputException.class, () -> table.number(1, "x")).getMessage());
    }
}
