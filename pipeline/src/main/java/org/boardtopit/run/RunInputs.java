package org.boardtopit.run;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.clips.SkippedFile;
import org.boardtopit.report.tables.WholeFile;

/**
 * What a run was told, kept in the folder work of its output, for the commands that go on from its results alone.
 *
 * <p>Sheets are kept by their place and not by their content: whoever reads them again sees what they say now. All paths are
 * absolute. Clips may have been taken away since.
 *
 * @param clips in the order of the run
 * @param skipped what else lay among them
 * @param meet the meet sheet
 * @param networks the folder of the user's own networks
 * @param corrections the analyst's corrections, where they are not those of the output folder
 * @param settings those of the sheet with the command line's in their place: with these the landmarks were read
 * @param overlay whether overlay videos were wanted
 */
public record RunInputs(
        List<Path> clips,
        List<SkippedFile> skipped,
        Optional<Path> meet,
        Optional<Path> networks,
        Optional<Path> corrections,
        RunSettings settings,
        boolean overlay) {

    static final String FILE_NAME = "inputs.json";

    /** Grows with every change of the components. */
    private static final String LAYOUT = "boardtopit inputs 1";

    public RunInputs {
        clips = clips.stream().map(RunInputs::absolute).toList();
        skipped = List.copyOf(skipped);
        meet = meet.map(RunInputs::absolute);
        networks = networks.map(RunInputs::absolute);
        corrections = corrections.map(RunInputs::absolute);
    }

    private record Content(String layout, RunInputs inputs) {}

    private static Path absolute(Path path) {
        return path.toAbsolutePath().normalize();
    }

    /** The clips as they were found then, without looking for them. */
    public ClipFolder folder() {
        return new ClipFolder(clips, skipped);
    }

    /** Writes them into an output folder, whose lock the caller holds. */
    public void write(Path out) throws IOException {
        Path file = file(out);
        Files.createDirectories(file.getParent());
        String json = json(new Content(LAYOUT, this));
        WholeFile.write(file, text -> text.append(json).append('\n'));
    }

    /**
     * Those of the last run into an output folder.
     *
     * @throws InputException when there are none, or of another version of the program; says what to do
     */
    public static RunInputs of(Path out) throws InputException {
        if (!Files.isDirectory(out)) {
            throw new InputException(out, "there is no such folder of results");
        }
        return find(out)
                .orElseThrow(() -> new InputException(
                        out,
                        "it is not known how these results were made: not a folder of results, or tidied, or of another"
                                + " version of the program; start process once more with this folder, what was read"
                                + " from the clips is kept"));
    }

    /** The same, empty when there are none. */
    public static Optional<RunInputs> find(Path out) {
        Path file = file(out);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS)) {
            return Optional.empty();
        }
        try {
            Content content = RecordJson.mapperOfRecords().readValue(Files.readAllBytes(file), Content.class);
            boolean ours = content != null && LAYOUT.equals(content.layout);
            return ours ? Optional.ofNullable(content.inputs) : Optional.empty();
        } catch (IOException e) {
            return Optional.empty(); // cut off, damaged or changed by hand: as good as none
        }
    }

    private static Path file(Path out) {
        return out.resolve("work").resolve(FILE_NAME);
    }

    private static String json(Content content) {
        try {
            return RecordJson.mapperOfRecords().writeValueAsString(content);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("inputs that cannot be written as JSON", e);
        }
    }
}
