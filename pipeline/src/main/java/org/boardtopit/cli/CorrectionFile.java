package org.boardtopit.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.CorrectionReader;
import org.boardtopit.clips.CorrectionSheet;
import org.boardtopit.clips.InputException;
import org.boardtopit.run.RunInputs;

/**
 * Which corrections a command goes by: those it is told, else those of the last start, else the file corrections.csv of the
 * output folder. So that nobody's work is lost in silence, a file that the results rest on must be there.
 *
 * @param sheet empty when there are none
 * @param elsewhere its file when that is not the one of the output folder, to be remembered
 */
record CorrectionFile(Optional<CorrectionSheet> sheet, Optional<Path> elsewhere) {

    static CorrectionFile of(Path told, Optional<RunInputs> last, Path out) throws InputException {
        Path own = absolute(out.resolve(CorrectionReader.FILE_NAME));
        Optional<Path> remembered = last.flatMap(RunInputs::corrections);
        Optional<Path> named =
                Optional.ofNullable(told).map(CorrectionFile::absolute).or(() -> remembered);
        Path file = named.orElse(own);
        if (!Files.isRegularFile(file)) {
            if (named.isEmpty()) {
                return new CorrectionFile(Optional.empty(), Optional.empty());
            }
            throw new InputException(
                    file,
                    told != null
                            ? "there is no such file of corrections"
                            : "the corrections that these results rest on are not there any more; put the file back, or"
                                    + " name another with --corrections");
        }
        CorrectionSheet sheet = CorrectionReader.read(file);
        return new CorrectionFile(Optional.of(sheet), file.equals(own) ? Optional.empty() : Optional.of(file));
    }

    /** For run.json; null when there are none. */
    String fileName() {
        return sheet.map(s -> s.file().toString()).orElse(null);
    }

    /** The list with each clip's corrections. */
    ClipList joined(ClipList list) throws InputException {
        return sheet.isEmpty() ? list : sheet.get().joined(list);
    }

    /** A warning when the output folder has corrections that nobody reads; else empty. */
    String warning(Path out) {
        Path own = absolute(out.resolve(CorrectionReader.FILE_NAME));
        return elsewhere.isPresent() && Files.isRegularFile(own)
                ? own + " is not read: the corrections are those of " + elsewhere.get()
                : "";
    }

    private static Path absolute(Path path) {
        return path.toAbsolutePath().normalize();
    }
}
