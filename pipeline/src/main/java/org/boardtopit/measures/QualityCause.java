package org.boardtopit.measures;

/**
 * Something measured that lowers the quality of a clip.
 *
 * @param quality the best that the clip can be because of it
 * @param sentence what was wrong, and after a colon what helps the next time
 */
public record QualityCause(Quality quality, String sentence) {

    public QualityCause {
        if (sentence.isBlank()) {
            throw new IllegalArgumentException("a cause of lower quality needs a sentence");
        }
    }
}
