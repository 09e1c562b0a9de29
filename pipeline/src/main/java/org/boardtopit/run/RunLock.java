package org.boardtopit.run;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import org.boardtopit.clips.InputException;

/**
 * One run at a time in an output folder. The operating system holds the lock and gives it up when the process ends,
 * however it ends; the file work/.lock stays and says which process had it last.
 */
public final class RunLock implements AutoCloseable {
    /** Far behind the text, which others may read while the lock is held, also on Windows. */
    private static final long LOCKED_BYTE = 1L << 40;

    /** In the folder work. */
    static final String FILE_NAME = ".lock";

    private final FileChannel channel;
    private final Path file;
    private final StoredResults results;

    private RunLock(FileChannel channel, Path file, Path out) {
        this.channel = channel;
        this.file = file;
        this.results = new StoredResults(out);
    }

    /**
     * Takes the lock of a folder.
     *
     * @param out output folder, which exists
     * @throws InputException when another run has it
     */
    public static RunLock take(Path out) throws InputException, IOException {
        Path work = out.resolve("work");
        Files.createDirectories(work);
        Path file = work.resolve(FILE_NAME);
        FileChannel channel =
                FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
        try {
            if (locked(channel)) {
                sign(channel);
                return new RunLock(channel, file, out);
            }
        } catch (IOException e) {
            channel.close();
            throw e;
        }
        channel.close();
        throw new InputException(
                out,
                "another run is writing into this folder (process " + holder(file) + "); wait for its end or stop it");
    }

    private static boolean locked(FileChannel channel) throws IOException {
        try {
            FileLock lock = channel.tryLock(LOCKED_BYTE, 1, false);
            return lock != null;
        } catch (OverlappingFileLockException e) {
            return false; // another run in this process
        }
    }

    private static void sign(FileChannel channel) throws IOException {
        String text = ProcessHandle.current().pid() + "\n";
        channel.truncate(0);
        channel.write(ByteBuffer.wrap(text.getBytes(StandardCharsets.US_ASCII)), 0);
    }

    private static String holder(Path file) throws IOException {
        String text = Files.readString(file, StandardCharsets.US_ASCII).strip();
        return text.isEmpty() ? "unknown" : text;
    }

    /** Those of the folder, which only the holder of the lock, and its workers, may change. */
    public StoredResults results() {
        return results;
    }

    /** True for the file that the lock is on. */
    boolean isOwn(Path path) {
        return path.equals(file);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
