package org.boardtopit.accuracy;

import java.nio.file.Path;
import org.boardtopit.clips.InputException;

/** The part of a Markdown file that the program writes, between two comments; all else in the file is written by hand. */
final class MeasuredBlock {
    static final String BEGIN = "<!-- measured by boardtopit accuracy: begin -->";
    static final String END = "<!-- measured by boardtopit accuracy: end -->";

    private MeasuredBlock() {}

    /** A file with nothing but the block. */
    static String alone(String measured) {
        return "# Accuracy\n\n" + BEGIN + "\n" + measured + END + "\n";
    }

    /**
     * The text with the measured part replaced.
     *
     * @param file for the message only
     * @throws InputException when the two comments are not there once each, in this order: it may be the wrong file
     */
    static String replace(Path file, String text, String measured) throws InputException {
        int begin = text.indexOf(BEGIN);
        int end = text.indexOf(END);
        boolean sound =
                begin >= 0 && end > begin && text.indexOf(BEGIN, begin + 1) < 0 && text.indexOf(END, end + 1) < 0;
        if (!sound) {
            throw new InputException(
                    file,
                    "is not overwritten: it must hold the lines " + BEGIN + " and " + END
                            + " once each, in this order, around the part that is to be replaced");
        }
        return text.substring(0, begin) + BEGIN + "\n" + measured + text.substring(end);
    }
}
