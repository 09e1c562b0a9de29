package org.boardtopit.clips;

/**
 * Something odd about the sheets and the clips; the run goes on all the same.
 *
 * @param kind what it is about
 * @param text one line for the user: file, place, what is odd
 */
public record ListWarning(Kind kind, String text) {

    /** What a warning is about. */
    public enum Kind {
        /** A row of the attempts sheet names a clip that is not there: an attempt will be missing. */
        ROW_WITHOUT_CLIP,
        /** The same of a clip that must not be shown, and whose name resembles no other. */
        REFUSED_CLIP_GONE,
        CLIP_WITHOUT_ROW,
        CLIP_WITHOUT_CAMERA,
        /** Two rows, or a row and the meet sheet, do not go together, or a row holds what is unusual. */
        ODD_ROW,
        /** Clips of one attempt from several cameras do not go together. */
        VIEWS
    }
}
