package org.boardtopit.cli;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** What the commands about a whole competition are given: its clips and its sheet. */
final class ClipOptions {
    @Parameters(arity = "1..*", paramLabel = "CLIPS", description = "Folders of clips and single clips.")
    private List<Path> clips;

    @Option(names = "--meet", paramLabel = "FILE", description = "The competition's meet.yaml.")
    private Path meetFile;

    /** Folders and files, as the user named them. */
    List<Path> clips() {
        return clips;
    }

    Optional<Path> meetFile() {
        return Optional.ofNullable(meetFile);
    }

    /** Reads the sheet; without one a run knows of its clips only. */
    MeetSheet meet() throws InputException {
        return meetFile == null ? MeetSheet.NONE : MeetSheetReader.read(meetFile);
    }
}
