package org.boardtopit.run;

import java.nio.file.Path;
import org.boardtopit.clips.Clip;

/**
 * A clip as it is read.
 *
 * @param slowDown how many times slower it is stored than it was captured
 * @param fingerprint of all that its landmarks are made from, so that its bytes are read for it once
 * @param work the folder of what is kept of clips
 */
record ClipSource(Clip clip, double slowDown, String fingerprint, Path work) {

    /** Where something of this clip is kept. */
    Path kept(String ending) {
        return work.resolve(clip.name() + ending);
    }
}
