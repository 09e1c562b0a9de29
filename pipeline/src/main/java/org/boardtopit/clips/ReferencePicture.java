package org.boardtopit.clips;

import java.nio.file.Path;

/**
 * One picture of a camera position, without the athlete, and the runway marks on it; clips are matched to it.
 *
 * @param marksFile the table the marks were read from
 */
public record ReferencePicture(Path picture, Path marksFile, CameraMarks marks) {}
