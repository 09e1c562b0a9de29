package org.boardtopit.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.boardtopit.report.tables.WholeFile;

/**
 * SHA-256 of files, which a later start need not read again as long as they are the same files: a night's clips are gigabytes.
 *
 * <p>A file is the same when its device, its number on it, its size, its time of modification and its time of change are, to
 * the last digit. The last of these (POSIX {@code st_ctime}) is set by the system whenever content, name or attributes change, and
 * no program can set it; copies that keep the time of modification get a new one. A digest is remembered only when the file was
 * left alone for some seconds before it was read and did not change meanwhile, because a file system tells times apart by its own
 * ticks only. Systems without such a time (Windows) remember nothing. A worker reads every clip anew before it measures it.
 *
 * <p>May be used from several threads.
 */
public final class RememberedDigests {
    static final String FILE_NAME = "digests.json";

    /** Coarser than the times of any file system in use: FAT has two seconds. */
    private static final Duration LEFT_ALONE = Duration.ofSeconds(3);

    private static final String ATTRIBUTES = "unix:dev,ino,size,lastModifiedTime,ctime";

    private final Path file;
    private final Clock clock;
    private final Map<String, Entry> earlier = new ConcurrentHashMap<>();
    private final Map<String, Entry> used = new ConcurrentHashMap<>();

    /** By the file's absolute path. */
    private record Entry(String path, String state, String sha256) {}

    private record Content(List<Entry> files) {}

    /**
     * Those of an output folder; none when there are none, or they cannot be read.
     *
     * @param out output folder, whose lock the caller holds
     */
    public RememberedDigests(Path out) {
        this(out, Clock.systemUTC());
    }

    RememberedDigests(Path out, Clock clock) {
        this.file = out.resolve("work").resolve(FILE_NAME);
        this.clock = clock;
        try {
            Content content = RecordJson.mapperOfRecords().readValue(Files.readAllBytes(file), Content.class);
            content.files().forEach(entry -> earlier.put(entry.path(), entry));
        } catch (IOException | RuntimeException e) {
            earlier.clear(); // not there or damaged: the files are read
        }
    }

    /** In hexadecimal. */
    public String of(Path of) throws IOException {
        String path = of.toAbsolutePath().normalize().toString();
        Optional<String> state = state(of);
        Entry known = used.getOrDefault(path, earlier.get(path));
        if (known != null && state.equals(Optional.of(known.state()))) {
            used.put(path, known);
            return known.sha256();
        }
        Instant before = clock.instant();
        String digest = FileDigests.of(of);
        if (state.isPresent() && state.equals(state(of)) && lastTouched(of).isBefore(before.minus(LEFT_ALONE))) {
            used.put(path, new Entry(path, state.get(), digest));
        }
        return digest;
    }

    /** Empty where the system has no times of change. */
    private static Optional<String> state(Path of) throws IOException {
        try {
            Map<String, Object> now = Files.readAttributes(of, ATTRIBUTES);
            return Optional.of(String.join(
                    " ",
                    now.get("dev").toString(),
                    now.get("ino").toString(),
                    now.get("size").toString(),
                    now.get("lastModifiedTime").toString(),
                    now.get("ctime").toString()));
        } catch (UnsupportedOperationException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static Instant lastTouched(Path of) throws IOException {
        return ((FileTime) Files.getAttribute(of, "unix:ctime")).toInstant();
    }

    /** Writes those that were asked for; nothing when they are the ones that are there. */
    public void store() throws IOException {
        if (used.equals(earlier)) {
            return;
        }
        List<Entry> entries =
                used.values().stream().sorted(Comparator.comparing(Entry::path)).toList();
        String json = json(new Content(entries));
        Files.createDirectories(file.getParent());
        WholeFile.write(file, out -> out.append(json).append('\n'));
        earlier.clear();
        earlier.putAll(used);
    }

    private static String json(Content content) {
        try {
            return RecordJson.mapperOfRecords().writeValueAsString(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("digests that cannot be written as JSON", e);
        }
    }
}
