package org.boardtopit.clips;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CoderResult;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;

/** Reads a text file of the user's: UTF-8, with or without a byte order mark, of a size that a club's sheet can have. */
final class InputText {
    /** About twenty times the sheet of a competition of 400 clips; a first guess, not tuned. */
    static final int MOST_BYTES = 1 << 20;

    private InputText() {}

    static String read(Path file) throws InputException {
        return read(file, MOST_BYTES);
    }

    /** The same for files that programs write, which may be larger. */
    static String read(Path file, int mostBytes) throws InputException {
        return decode(file, bytes(file, mostBytes));
    }

    private static byte[] bytes(Path file, int mostBytes) throws InputException {
        if (!Files.exists(file)) {
            throw new InputException(file, "there is no such file");
        }
        if (!Files.isRegularFile(file)) {
            throw new InputException(file, "this is not a file");
        }
        try {
            if (Files.size(file) > mostBytes) {
                throw new InputException(
                        file, "the file is " + Files.size(file) + " bytes long, at most " + mostBytes + " are read");
            }
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new InputException(
                    file, "the file cannot be read (" + e.getClass().getSimpleName() + ")");
        }
    }

    private static String decode(Path file, byte[] bytes) throws InputException {
        ByteBuffer in = ByteBuffer.wrap(bytes);
        CharBuffer out = CharBuffer.allocate(bytes.length);
        CoderResult result = StandardCharsets.UTF_8
                .newDecoder()
                .onMalformedInput(CodingErrorAction.REPORT)
                .onUnmappableCharacter(CodingErrorAction.REPORT)
                .decode(in, out, true);
        out.flip();
        if (startsLikeUtf16(bytes)) {
            throw new InputException(file, "the file is UTF-16; save it with the encoding UTF-8");
        }
        if (result.isError()) {
            throw new InputException(
                    file, lineOf(out), "", "a character is not UTF-8; save the file with the encoding UTF-8");
        }
        boolean marked = out.length() > 0 && out.charAt(0) == '\uFEFF';
        return (marked ? out.subSequence(1, out.length()) : out).toString();
    }

    /** By its byte order mark, or because every other byte of its first letters is zero. */
    private static boolean startsLikeUtf16(byte[] bytes) {
        if (bytes.length < 4) {
            return false;
        }
        int first = ((bytes[0] & 0xff) << 8) | (bytes[1] & 0xff);
        boolean marked = first == 0xfeff || first == 0xfffe;
        boolean everyOther = (bytes[0] == 0 && bytes[2] == 0) || (bytes[1] == 0 && bytes[3] == 0);
        return marked || everyOther;
    }

    private static int lineOf(CharBuffer before) {
        return 1 + (int) before.chars().filter(c -> c == '\n').count();
    }
}
