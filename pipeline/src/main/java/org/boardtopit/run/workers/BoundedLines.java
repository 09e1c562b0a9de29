package org.boardtopit.run.workers;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;

/** Lines of a stream whose writer cannot be trusted to end them: of a longer one only the beginning is kept. */
final class BoundedLines {
    static final int LONGEST = 1 << 16;

    private final InputStream in;
    private final byte[] line = new byte[LONGEST];

    BoundedLines(InputStream in) {
        this.in = in;
    }

    /** The next line without its end, or null at the end of the stream. */
    String next() throws IOException {
        int length = 0;
        int c = in.read();
        if (c < 0) {
            return null;
        }
        for (; c >= 0 && c != '\n'; c = in.read()) {
            if (length < LONGEST) {
                line[length++] = (byte) c;
            }
        }
        return new String(line, 0, length, StandardCharsets.UTF_8);
    }
}
