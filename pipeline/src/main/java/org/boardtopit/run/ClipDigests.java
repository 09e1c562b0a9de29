package org.boardtopit.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.boardtopit.clips.Clip;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.video.VideoException;

/**
 * Digests of clips' bytes, and their frame rates, remembered in the folder work in one file {@code <clip>.known} each: so that
 * it is known without reading all of a clip that it is still the same, and what its results were made from when it is not there
 * any more.
 *
 * <p>A run reads every clip and remembers; what goes on from its results believes the memory while size and time of change of the
 * file are the same ({@link #trusting}).
 */
public final class ClipDigests {
    /** Grows with every change of what is remembered. */
    private static final String LAYOUT = "boardtopit known 1";

    private final Optional<Path> folder;
    private final boolean trusting;
    private final Bytes bytes;

    /** SHA-256 in hexadecimal of the bytes of a file. */
    @FunctionalInterface
    public interface Bytes {
        String of(Path file) throws IOException;
    }

    private record Known(
            String layout, long bytes, long changedMs, Optional<Double> nominalFps, Map<String, String> digests) {
        Known {
            digests = new TreeMap<>(digests);
        }

        boolean isOf(Path clip) throws IOException {
            return bytes == Files.size(clip) && changedMs == changedMs(clip);
        }

        static Known of(Path clip) throws IOException {
            return new Known(LAYOUT, Files.size(clip), changedMs(clip), Optional.empty(), Map.of());
        }

        private static long changedMs(Path clip) throws IOException {
            return Files.getLastModifiedTime(clip).toMillis();
        }
    }

    private ClipDigests(Optional<Path> folder, boolean trusting) {
        this(folder, trusting, FileDigests::of);
    }

    private ClipDigests(Optional<Path> folder, boolean trusting, Bytes bytes) {
        this.folder = folder;
        this.trusting = trusting;
        this.bytes = bytes;
    }

    /** Always read, remembered nowhere. */
    static ClipDigests unremembered() {
        return new ClipDigests(Optional.empty(), false);
    }

    /** Always read, and remembered for those who trust. */
    public static ClipDigests reading(Path out) {
        return new ClipDigests(Optional.of(out.resolve("work")), false);
    }

    /** The same for a whole night, where somebody tells the bytes who need not read gigabytes ({@link RememberedDigests}). */
    public static ClipDigests reading(Path out, Bytes bytes) {
        return new ClipDigests(Optional.of(out.resolve("work")), false, bytes);
    }

    /** As remembered by an earlier run, also of clips that are gone; read where nothing is remembered. */
    public static ClipDigests trusting(Path out) {
        return new ClipDigests(Optional.of(out.resolve("work")), true);
    }

    /** Reads the frame rate from a clip. */
    @FunctionalInterface
    interface Reading {
        double read() throws VideoException;
    }

    /**
     * SHA-256 in hexadecimal of the bytes of a clip and of what follows them.
     *
     * @param after what else is digested
     */
    String of(Clip clip, byte[] after) throws IOException {
        String key = HexFormat.of().formatHex(FileDigests.sha256().digest(after));
        Known known = known(clip);
        String remembered = known.digests().get(key);
        if (remembered != null && trusting) {
            return remembered;
        }
        String read = after.length == 0 ? bytes.of(clip.file()) : read(clip.file(), after);
        if (!read.equals(remembered)) {
            Map<String, String> digests = new TreeMap<>(known.digests());
            digests.put(key, read);
            remember(clip, new Known(LAYOUT, known.bytes(), known.changedMs(), known.nominalFps(), digests));
        }
        return read;
    }

    private static String read(Path file, byte[] after) throws IOException {
        MessageDigest digest = FileDigests.sha256();
        FileDigests.add(digest, file);
        return HexFormat.of().formatHex(digest.digest(after));
    }

    /** Frames a second that the file states, as read now or remembered. */
    double nominalFps(Clip clip, Reading reading) throws IOException {
        Known known = known(clip);
        if (known.nominalFps().isPresent() && trusting) {
            return known.nominalFps().get();
        }
        double fps = reading.read();
        if (!known.nominalFps().equals(Optional.of(fps))) {
            remember(clip, new Known(LAYOUT, known.bytes(), known.changedMs(), Optional.of(fps), known.digests()));
        }
        return fps;
    }

    /** What is remembered of the file as it is, or of one that is gone; else nothing but its size. */
    private Known known(Clip clip) throws IOException {
        Optional<Known> known = find(clip);
        if (!Files.exists(clip.file())) {
            return known.filter(k -> trusting)
                    .orElseThrow(() -> new NoSuchFileException(clip.file().toString()));
        }
        return known.isPresent() && known.get().isOf(clip.file()) ? known.get() : Known.of(clip.file());
    }

    private Optional<Known> find(Clip clip) {
        if (folder.isEmpty()) {
            return Optional.empty();
        }
        try {
            Known known = RecordJson.mapperOfRecords().readValue(Files.readAllBytes(file(clip)), Known.class);
            return known != null && LAYOUT.equals(known.layout) ? Optional.of(known) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty(); // none, cut off or damaged: all the same
        }
    }

    private void remember(Clip clip, Known known) throws IOException {
        if (folder.isPresent()) {
            Files.createDirectories(folder.get());
            String json = json(known);
            WholeFile.write(file(clip), out -> out.append(json).append('\n'));
        }
    }

    private Path file(Clip clip) {
        return folder.orElseThrow().resolve(clip.name() + ".known");
    }

    private static String json(Known known) {
        try {
            return RecordJson.mapperOfRecords().writeValueAsString(known);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a record that cannot be written as JSON", e);
        }
    }
}
