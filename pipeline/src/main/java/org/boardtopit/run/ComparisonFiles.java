package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;

/**
 * Where the comparison of two attempts is kept: the video and the table in the folder comparisons, and in work what they were made from.
 *
 * @param out the output folder
 * @param first name of the first clip
 * @param second name of the second
 * @param trueTime true for the video in true time
 */
record ComparisonFiles(Path out, String first, String second, boolean trueTime) {
    static final String FOLDER = "comparisons";
    static final String MADE_FROM = ".compared";
    private static final String TRUE_TIME = "-true_time";
    private static final String BETWEEN = "-";

    private String name() {
        return first + BETWEEN + second;
    }

    Path video() {
        return out.resolve(FOLDER).resolve(name() + (trueTime ? TRUE_TIME : "") + ".mp4");
    }

    /** Below the output folder, with a slash as in an address. */
    String table() {
        return FOLDER + "/" + name() + ".csv";
    }

    /** Holds the fingerprint of what the video and the table were made from. */
    Path madeFrom() {
        return out.resolve("work").resolve(name() + (trueTime ? TRUE_TIME : "") + MADE_FROM);
    }

    /** True when all is there, made from the same things. */
    boolean areMadeFrom(String fingerprint) {
        try {
            return Files.isRegularFile(video())
                    && Files.isRegularFile(out.resolve(table()))
                    && Files.readString(madeFrom()).strip().equals(fingerprint);
        } catch (IOException e) {
            return false; // not there, or not to be read: made anew
        }
    }

    /**
     * True when a file of a comparison shows one of some clips. A name may be parted at any of its hyphens; where two known clips come of it,
     * it is those, else any that fits: rather a comparison too many is removed, for it is soon made again.
     *
     * @param fileName in the folder comparisons, or in work with the ending {@link #MADE_FROM}
     * @param clips the clips looked for
     * @param others the other clips of the run
     */
    static boolean shows(String fileName, Set<String> clips, Set<String> others) {
        boolean any = false;
        boolean innocent = false;
        for (int i = fileName.indexOf(BETWEEN); i > 0; i = fileName.indexOf(BETWEEN, i + 1)) {
            String left = fileName.substring(0, i);
            String right = fileName.substring(i + 1);
            boolean one = clips.contains(left) || clips.stream().anyMatch(name -> begins(right, name));
            boolean known = others.contains(left) && others.stream().anyMatch(name -> begins(right, name));
            any |= one;
            innocent |= known && !one;
        }
        return any && !innocent;
    }

    /** The second name is followed by an ending, perhaps with what kind of video it is before. */
    private static boolean begins(String right, String name) {
        return right.startsWith(name + ".") || right.startsWith(name + TRUE_TIME + ".");
    }
}
