package org.boardtopit.run.workers;

import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.stream.Stream;

/** A file system of some size in memory (Linux, tmpfs). Only the superuser may mount one: elsewhere the test is skipped. */
public final class SmallDisk implements AutoCloseable {
    private final Path place;

    private SmallDisk(Path place) {
        this.place = place;
    }

    public static SmallDisk mount(Path place, long bytes) throws IOException {
        Files.createDirectories(place);
        assumeTrue(
                runs("mount", "-t", "tmpfs", "-o", "size=" + bytes, "tmpfs", place.toString()),
                "no file system can be mounted here");
        return new SmallDisk(place);
    }

    private static boolean runs(String... words) {
        try {
            Process process = new ProcessBuilder(List.of(words))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            return process.waitFor() == 0;
        } catch (IOException e) {
            return false; // there is no such program
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    public Path path() {
        return place;
    }

    /** Writes a file until so much is free. */
    public void fill(long freeBytes) throws IOException {
        Path filler = place.resolve("filler");
        Files.deleteIfExists(filler);
        byte[] page = new byte[4096];
        try (OutputStream out = Files.newOutputStream(filler)) {
            while (place.toFile().getUsableSpace() > freeBytes) {
                out.write(page);
            }
        }
    }

    public void grow(long bytes) {
        assumeTrue(runs("mount", "-o", "remount,size=" + bytes, place.toString()), "it cannot be made larger here");
    }

    /** From now on it can only be read. */
    public void lock() {
        assumeTrue(runs("mount", "-o", "remount,ro", place.toString()), "it cannot be locked here");
    }

    @Override
    public void close() throws IOException {
        if (!runs("umount", place.toString())) {
            runs("umount", "-l", place.toString());
        }
        try (Stream<Path> left = Files.list(place)) {
            if (left.findAny().isPresent()) {
                throw new IOException(place + " is still mounted");
            }
        }
    }
}
