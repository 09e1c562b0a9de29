package org.boardtopit.run;

import java.util.Optional;

/**
 * What became of one clip: its rows, or why there are none for a reason that lies in the clip.
 *
 * @param result rows of a measured clip
 * @param stage where it failed; empty for a measured clip
 * @param reason one line for the volunteer; empty for a measured clip
 * @param seconds the measuring took, or the attempt at it
 */
public record StoredResult(Optional<ClipResult> result, String stage, String reason, double seconds) {

    public StoredResult {
        if (!(seconds >= 0)) {
            throw new IllegalArgumentException("seconds must not be negative, was " + seconds);
        }
    }

    public static StoredResult measured(ClipResult result, double seconds) {
        return new StoredResult(Optional.of(result), "", "", seconds);
    }

    public static StoredResult failed(String stage, String reason, double seconds) {
        return new StoredResult(Optional.empty(), stage, reason, seconds);
    }
}
