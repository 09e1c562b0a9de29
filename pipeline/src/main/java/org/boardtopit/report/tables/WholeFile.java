package org.boardtopit.report.tables;

import java.io.BufferedOutputStream;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.ByteBuffer;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.charset.StandardCharsets;
import java.nio.file.AccessDeniedException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/**
 * Writes files that are there as a whole or not at all, whenever the power fails.
 *
 * <p>The content goes to a temporary file in the same folder, is forced to the disk, and the file is moved to its name.
 */
public final class WholeFile {
    private WholeFile() {}

    /** Writes the text; the writer given to it is closed for it. */
    @FunctionalInterface
    public interface Text {
        void writeTo(Writer out) throws IOException;
    }

    /** Writes bytes; the stream given to it is closed for it. */
    @FunctionalInterface
    interface Bytes {
        void writeTo(OutputStream out) throws IOException;
    }

    /** Replaces an earlier file of that name. When the writing fails the earlier file stays as it was. */
    public static void write(Path target, Text text) throws IOException {
        writeBytes(target, bytes -> {
            Writer out = new BufferedWriter(new OutputStreamWriter(bytes, StandardCharsets.UTF_8));
            text.writeTo(out);
            out.flush();
        });
    }

    /** The same of a file that is not text. */
    static void writeBytes(Path target, Bytes bytes) throws IOException {
        Path temporary = target.resolveSibling(target.getFileName() + ".part");
        try {
            writeAndForce(temporary, bytes);
            move(temporary, target);
            forceFolder(target);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    /** The same of bytes. */
    public static void write(Path target, ByteBuffer content) throws IOException {
        writeBytes(target, out -> Channels.newChannel(out).write(content));
    }

    private static void writeAndForce(Path file, Bytes bytes) throws IOException {
        try (FileChannel channel = FileChannel.open(
                        file,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.WRITE,
                        StandardOpenOption.TRUNCATE_EXISTING);
                OutputStream out = new BufferedOutputStream(Channels.newOutputStream(channel))) {
            bytes.writeTo(out);
            out.flush();
            channel.force(true);
        }
    }

    private static void move(Path from, Path to) throws IOException {
        try {
            Files.move(from, to, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
        } catch (AtomicMoveNotSupportedException e) {
            // Some network folders cannot; there the file is missing for a moment.
            Files.move(from, to, StandardCopyOption.REPLACE_EXISTING);
        } catch (AccessDeniedException e) {
            throw new IOException(to + " cannot be replaced; is it open in another program?", e);
        }
    }

    /** On return a file that somebody else has written is on the disk, under its name. */
    public static void force(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
        forceFolder(file);
    }

    /** The name of a file belongs to its folder. Windows opens no folders and needs this not. */
    private static void forceFolder(Path file) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (AccessDeniedException e) {
            // Windows says so of every folder.
        }
    }
}
