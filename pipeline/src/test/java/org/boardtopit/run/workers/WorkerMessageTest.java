package org.boardtopit.run.workers;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Optional;
import org.boardtopit.run.workers.WorkerMessage.Kind;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WorkerMessageTest {
    private static final String TOKEN = "6e1c1f0e-6a53-4f39-9a61-0c3a4fb5d4a8";

    /** POSIX: a write of up to PIPE_BUF bytes is not mixed with others'; Linux has 4096 (MEM-H). */
    @ParameterizedTest
    @ValueSource(strings = {"a", "ü", "\"", "\\", "\n", "😀"})
    void aLineIsWrittenInOnePieceHoweverLongTheFault(String letter) {
        WorkerMessage message = WorkerMessage.of(Kind.FAULT, "landmarks", letter.repeat(9000), letter.repeat(9000));
        byte[] line = message.line(TOKEN);

        assertTrue(line.length <= 4096, "bytes " + line.length);
        String text = new String(line, StandardCharsets.US_ASCII);
        assertTrue(text.startsWith("\n" + TOKEN) && text.endsWith("\n"), text);
        assertEquals(Optional.of(message), WorkerMessage.parse(text.strip(), TOKEN));
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "[h264] error while decoding", "6e1c {}", TOKEN + " {\"kind\":\"STO", TOKEN + "{}"})
    void linesOfOthersAreNoMessages(String line) {
        assertEquals(Optional.empty(), WorkerMessage.parse(line, TOKEN));
    }

    @Test
    void ofALineThatDoesNotEndOnlyTheBeginningIsKept() throws IOException {
        String text = "short\n" + "x".repeat(BoundedLines.LONGEST + 5) + "\n\nlast";
        BoundedLines lines = new BoundedLines(new ByteArrayInputStream(text.getBytes(StandardCharsets.UTF_8)));

        assertEquals("short", lines.next());
        assertEquals(BoundedLines.LONGEST, lines.next().length());
        assertEquals("", lines.next());
        assertEquals("last", lines.next());
        assertNull(lines.next());
    }
}
