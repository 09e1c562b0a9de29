package org.boardtopit.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.clips.Clip;
import org.boardtopit.report.stills.StillNames;
import org.boardtopit.report.tables.WholeFile;

/**
 * The results of clips in the folder work, one file {@code <clip>.result} each: JSON of the {@link ClipResult} behind a
 * fingerprint of everything it was made from.
 *
 * <p>A file is there as a whole or not at all. One of another fingerprint or another layout, or a damaged one, reads as
 * empty: the clip is simply measured again. May be used from several threads and processes, not for the same clip at once.
 */
public final class StoredResults {
    /** Grows with every change of what is stored; the program's own version is part of the fingerprint. */
    private static final String LAYOUT = "boardtopit result 1";

    private final Path folder;

    private record File(String layout, String fingerprint, StoredResult content) {}

    /**
     * The results of one run.
     *
     * @param out its output folder
     */
    public StoredResults(Path out) {
        this.folder = out.resolve("work");
    }

    /** True when there is anything of the clip, whatever it was made from. */
    public boolean hasAny(Clip clip) {
        return Files.isRegularFile(file(clip));
    }

    /** What became of the clip when it was measured from the same things; else empty. */
    public Optional<StoredResult> find(Clip clip, String fingerprint) {
        try {
            File file = RecordJson.mapperOfRecords().readValue(Files.readAllBytes(file(clip)), File.class);
            boolean same = LAYOUT.equals(file.layout) && fingerprint.equals(file.fingerprint);
            return same ? Optional.ofNullable(file.content) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty(); // not there, cut off or damaged: all the same
        }
    }

    /** What the kept result of a clip was made from; empty when there is none. */
    Optional<String> fingerprint(Clip clip) {
        try {
            File file = RecordJson.mapperOfRecords().readValue(Files.readAllBytes(file(clip)), File.class);
            return LAYOUT.equals(file.layout) ? Optional.ofNullable(file.fingerprint) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** What became of the clip when it was measured last, from whatever; for comparing. */
    public Optional<StoredResult> last(Clip clip) {
        try {
            File file = RecordJson.mapperOfRecords().readValue(Files.readAllBytes(file(clip)), File.class);
            return LAYOUT.equals(file.layout) ? Optional.ofNullable(file.content) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty();
        }
    }

    /** On return it is on the disk, also when the power fails. */
    public void write(Clip clip, String fingerprint, StoredResult result) throws IOException {
        Files.createDirectories(folder);
        String json = json(new File(LAYOUT, fingerprint, result));
        WholeFile.write(file(clip), out -> out.append(json).append('\n'));
    }

    private static String json(File file) {
        try {
            return RecordJson.mapperOfRecords().writeValueAsString(file);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a result that cannot be written as JSON", e);
        }
    }

    /** Everything kept of the clip, landmarks too, so that it is measured from its file, and compared anew. */
    public void forget(Clip clip) throws IOException {
        Files.deleteIfExists(file(clip));
        Files.deleteIfExists(folder.resolve(clip.name() + ".landmarks"));
        Files.deleteIfExists(folder.resolve(clip.name() + ".people"));
        forgetComparisons(clip);
        Files.deleteIfExists(folder.resolve(clip.name() + ".known"));
    }

    private void forgetComparisons(Clip clip) throws IOException {
        if (Files.isDirectory(folder)) {
            try (DirectoryStream<Path> all = Files.newDirectoryStream(folder, "*" + ComparisonFiles.MADE_FROM)) {
                for (Path made : all) {
                    if (ComparisonFiles.shows(made.getFileName().toString(), Set.of(clip.name()), Set.of())) {
                        Files.delete(made);
                    }
                }
            }
        }
    }

    /** Removes what a run that was killed had half written, in the folders of work, overlays, stills and comparisons. */
    public void removeHalfWritten() throws IOException {
        for (Path place : new Path[] {
            folder,
            folder.resolveSibling("overlays"),
            folder.resolveSibling(StillNames.FOLDER),
            folder.resolveSibling(ComparisonFiles.FOLDER)
        }) {
            if (Files.isDirectory(place)) {
                try (DirectoryStream<Path> halves = Files.newDirectoryStream(place, "*.part")) {
                    for (Path half : halves) {
                        Files.deleteIfExists(half);
                    }
                }
            }
        }
    }

    private Path file(Clip clip) {
        return folder.resolve(clip.name() + ".result");
    }
}
