package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.boardtopit.clips.Clip;

/**
 * Stores what another measurer finds, on the disk before it is told: measured clips and those that cannot be measured for a
 * reason of their own. What happens to the program or the machine is not stored.
 */
public final class StoringMeasurer implements ClipMeasurer {
    /** Landmarks, result and tables of the largest clips take a tenth of it, an overlay about as much as its clip. */
    static final long LEAST_FREE_BYTES = 64L << 20;

    /** Gives the fingerprint of a clip's result. */
    @FunctionalInterface
    public interface Fingerprint {
        String of(Clip clip) throws IOException, NotMeasuredNowException;
    }

    private final ClipMeasurer measurer;
    private final StoredResults results;
    private final Fingerprint fingerprint;
    private final LongSupplier freeBytes;
    private final LongSupplier nanoTime;

    /**
     * Around a measurer.
     *
     * @param out output folder, whose disk must have room
     */
    public StoringMeasurer(ClipMeasurer measurer, Path out, Fingerprint fingerprint) {
        this(measurer, out, fingerprint, () -> freeBytes(out), System::nanoTime);
    }

    StoringMeasurer(
            ClipMeasurer measurer, Path out, Fingerprint fingerprint, LongSupplier freeBytes, LongSupplier nanoTime) {
        this.measurer = measurer;
        this.results = new StoredResults(out);
        this.fingerprint = fingerprint;
        this.freeBytes = freeBytes;
        this.nanoTime = nanoTime;
    }

    private static long freeBytes(Path out) {
        try {
            return Files.getFileStore(out).getUsableSpace();
        } catch (IOException e) {
            return Long.MAX_VALUE; // not known; writing will tell
        }
    }

    /** A result that is stored already stays as it is: the clip was measured again for its overlay only. */
    @Override
    public ClipResult measure(Clip clip, StageListener listener) throws ClipNotMeasuredException {
        String made = fingerprint(clip);
        requireRoom(clip);
        long startNs = nanoTime.getAsLong();
        StoredResult result;
        ClipNotMeasuredException failure = null;
        try {
            result = StoredResult.measured(measurer.measure(clip, listener), secondsSince(startNs));
        } catch (NotMeasuredNowException e) {
            throw e;
        } catch (ClipNotMeasuredException e) {
            requireStillThere(clip);
            failure = e;
            result = StoredResult.failed(e.stage(), e.getMessage(), secondsSince(startNs));
        }
        StoredResult stored = store(clip, made, result);
        if (failure != null) {
            throw new ClipNotMeasuredException(stored.stage(), stored.reason(), stored.seconds(), failure);
        }
        return stored.result().orElseThrow().took(stored.seconds());
    }

    private StoredResult store(Clip clip, String made, StoredResult result) throws NotMeasuredNowException {
        Optional<StoredResult> earlier = results.find(clip, made);
        if (earlier.isPresent()
                && earlier.get().result().isPresent() == result.result().isPresent()) {
            return earlier.get();
        }
        try {
            results.write(clip, made, result);
        } catch (IOException e) {
            throw new NotMeasuredNowException("store", cannotWrite(e), e);
        }
        return result;
    }

    /** For the volunteer. */
    static String cannotWrite(IOException e) {
        return "the result cannot be written (" + e.getMessage() + "); free some disk space or check the output folder,"
                + " then start the same command again";
    }

    private String fingerprint(Clip clip) throws NotMeasuredNowException {
        try {
            return fingerprint.of(clip);
        } catch (IOException e) {
            throw cannotRead(clip, e);
        }
    }

    /** A clip, or a file that belongs to it, that was there when the run began. */
    public static NotMeasuredNowException cannotRead(Clip clip, IOException e) {
        String what = Files.exists(clip.file())
                ? "the clip or a file that belongs to it cannot be read (" + e + ")"
                : "the file was taken away while the run went on";
        return new NotMeasuredNowException("open", what, e);
    }

    private static void requireStillThere(Clip clip) throws NotMeasuredNowException {
        if (!Files.exists(clip.file())) {
            throw new NotMeasuredNowException("open", "the file was taken away while the run went on", null);
        }
    }

    private void requireRoom(Clip clip) throws NotMeasuredNowException {
        long needed = LEAST_FREE_BYTES + sizeOf(clip);
        long free = freeBytes.getAsLong();
        if (free < needed) {
            throw new NotMeasuredNowException(
                    "start",
                    "the disk of the output folder is full: " + (free >> 20) + " MB free, " + (needed >> 20)
                            + " MB needed for this clip; free some space, then start the same command again",
                    null);
        }
    }

    private static long sizeOf(Clip clip) {
        try {
            return Files.size(clip.file());
        } catch (IOException e) {
            return 0; // whoever opens it will say what is wrong
        }
    }

    private double secondsSince(long thenNs) {
        return (nanoTime.getAsLong() - thenNs) * 1e-9;
    }
}
