package org.boardtopit.clips;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * The video files that a run is to measure.
 *
 * @param clips in the order they were named on the command line, those of a folder by file name; each file once, and no
 *     two of the same file name, because sheets and tables name clips by it
 * @param skipped what else lay in the folders, in the same order
 */
public record ClipFolder(List<Path> clips, List<SkippedFile> skipped) {
    /** Endings of video files, in small letters; capitals are taken too. */
    public static final List<String> EXTENSIONS =
            List.of("mp4", "mov", "mkv", "avi", "mts", "m2ts", "m4v", "webm", "ts", "3gp");

    private static final Comparator<Path> BY_FILE_NAME = Comparator.comparing(
                    (Path file) -> file.getFileName().toString().toLowerCase(Locale.ROOT))
            .thenComparing(file -> file.getFileName().toString());

    public ClipFolder {
        clips = List.copyOf(clips);
        skipped = List.copyOf(skipped);
    }

    /**
     * Looks through folders (not through folders within them) and single files.
     *
     * @param inputs folders and files as the user named them
     * @param out the output folder; nothing in it is a clip, and it must not hold any of the inputs
     * @param inputFiles files of the meet sheet, absolute and normalised: neither clips nor worth a word
     */
    public static ClipFolder list(List<Path> inputs, Path out, Set<Path> inputFiles) throws InputException {
        Path outFolder = absolute(out);
        refuseInputsIn(outFolder, inputs, inputFiles);
        return list(inputs, Optional.of(outFolder), inputFiles);
    }

    /** The same when nothing is to be written. */
    public static ClipFolder list(List<Path> inputs, Set<Path> inputFiles) throws InputException {
        return list(inputs, Optional.empty(), inputFiles);
    }

    private static ClipFolder list(List<Path> inputs, Optional<Path> outFolder, Set<Path> inputFiles)
            throws InputException {
        Listing listing = new Listing(outFolder, inputFiles);
        for (Path input : inputs) {
            listing.add(input);
        }
        if (listing.clips.isEmpty()) {
            throw new InputException(
                    inputs.isEmpty() ? Path.of("") : inputs.get(0),
                    "there are no clips here; clips are files ending in " + String.join(", ", EXTENSIONS));
        }
        return new ClipFolder(listing.clips, listing.skipped);
    }

    /** The output has an attempts.csv of its own: it would be written over the sheet. */
    private static void refuseInputsIn(Path outFolder, List<Path> inputs, Set<Path> inputFiles) throws InputException {
        boolean holdsInputs = inputs.stream().anyMatch(input -> absolute(input).equals(outFolder))
                || inputFiles.stream().anyMatch(file -> outFolder.equals(file.getParent()));
        if (holdsInputs) {
            throw new InputException(
                    outFolder, "the output must go to a folder of its own, not among the clips and sheets");
        }
    }

    private static Path absolute(Path path) {
        return path.toAbsolutePath().normalize();
    }

    /** File name without its ending. */
    static String stem(Path file) {
        String name = file.getFileName().toString();
        int dot = name.lastIndexOf('.');
        return dot > 0 ? name.substring(0, dot) : name;
    }

    private static boolean isVideo(Path file) {
        String name = file.getFileName().toString().toLowerCase(Locale.ROOT);
        return EXTENSIONS.contains(name.substring(name.lastIndexOf('.') + 1)) && name.lastIndexOf('.') > 0;
    }

    private static final class Listing {
        private final Optional<Path> outFolder;
        private final Set<Path> inputFiles;
        private final List<Path> clips = new ArrayList<>();
        private final List<SkippedFile> skipped = new ArrayList<>();
        private final Set<Path> seen = new HashSet<>();
        private final Map<String, Path> byName = new HashMap<>();

        private Listing(Optional<Path> outFolder, Set<Path> inputFiles) {
            this.outFolder = outFolder;
            this.inputFiles = inputFiles;
        }

        private void add(Path input) throws InputException {
            if (Files.isDirectory(input)) {
                addFolder(input);
            } else if (Files.exists(input)) {
                addFile(input);
            } else {
                throw new InputException(input, "there is no such file or folder");
            }
        }

        private void addFolder(Path folder) throws InputException {
            List<Path> content;
            try (Stream<Path> files = Files.list(folder)) {
                content = files.sorted(BY_FILE_NAME).toList();
            } catch (IOException e) {
                throw new InputException(
                        folder, "the folder cannot be read (" + e.getClass().getSimpleName() + ")");
            }
            for (Path file : content) {
                if (Files.isDirectory(file)) {
                    addInnerFolder(file);
                } else {
                    addFile(file);
                }
            }
        }

        private void addInnerFolder(Path folder) {
            if (!outFolder.equals(Optional.of(absolute(folder)))) {
                skipped.add(new SkippedFile(folder, "a folder; name it on the command line to take its clips"));
            }
        }

        private void addFile(Path file) throws InputException {
            if (inputFiles.contains(absolute(file)) || !seen.add(realPath(file))) {
                return;
            }
            if (outFolder.isPresent() && absolute(file).startsWith(outFolder.get())) {
                skipped.add(new SkippedFile(file, "it lies in the output folder"));
            } else if (file.getFileName().toString().startsWith(".")) {
                skipped.add(new SkippedFile(file, "a hidden file"));
            } else if (!isVideo(file)) {
                skipped.add(new SkippedFile(file, "not a video by the ending of its name"));
            } else {
                addClip(file);
            }
        }

        private void addClip(Path file) throws InputException {
            String name = file.getFileName().toString();
            Path earlier = byName.putIfAbsent(name.toLowerCase(Locale.ROOT), file);
            if (earlier != null) {
                throw new InputException(
                        file, "a clip of the same name was given: " + earlier + "; rename one of them");
            }
            clips.add(file);
        }

        private static Path realPath(Path file) throws InputException {
            try {
                return file.toRealPath();
            } catch (IOException e) {
                throw new InputException(file, "the file cannot be found; is it a link to nowhere?");
            }
        }
    }
}
