package org.boardtopit.cli;

import java.io.PrintWriter;

/**
 * Where the program speaks to its user.
 *
 * @param out for results and progress
 * @param err for errors and warnings
 * @param terminal true when a person watches, so that a line may be written over
 */
record Console(PrintWriter out, PrintWriter err, boolean terminal) {

    void say(String line) {
        out.println(oneLine(line));
        out.flush();
    }

    void error(String line) {
        err.println("error: " + oneLine(line));
        err.flush();
    }

    void warning(String line) {
        err.println("warning: " + oneLine(line));
        err.flush();
    }

    /** File names may hold control characters, which could move the cursor or colour the terminal. */
    static String oneLine(String text) {
        StringBuilder shown = new StringBuilder();
        text.codePoints().forEach(c -> shown.appendCodePoint(Character.isISOControl(c) ? '?' : c));
        return shown.toString();
    }
}
