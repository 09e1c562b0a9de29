package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.List;

/** The attempts sheet of a competition, in the order of its rows; no two rows have the same clip. */
public record AttemptSheet(Path file, List<AttemptEntry> entries) {
    public AttemptSheet {
        entries = List.copyOf(entries);
    }
}
