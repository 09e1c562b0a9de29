package org.boardtopit.clips;

import java.nio.file.Path;

/** A file or folder that was looked at and left out, and why. */
public record SkippedFile(Path file, String reason) {}
