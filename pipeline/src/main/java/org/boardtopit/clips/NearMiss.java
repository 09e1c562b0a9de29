package org.boardtopit.clips;

import java.util.Collection;
import java.util.Comparator;
import java.util.Locale;
import java.util.Optional;

/** Finds the word that was probably meant: the fewest single-letter changes, at most about a third of the word's letters. */
public final class NearMiss {
    private NearMiss() {}

    /** "; did you mean 'x'?", or nothing when no known word is near. */
    public static String hint(String written, Collection<String> known) {
        return nearest(written, known)
                .map(word -> "; did you mean '" + word + "'?")
                .orElse("");
    }

    static Optional<String> nearest(String written, Collection<String> known) {
        if (written.length() > 60) {
            return Optional.empty();
        }
        String lower = written.toLowerCase(Locale.ROOT);
        return known.stream()
                .filter(word -> changes(lower, word.toLowerCase(Locale.ROOT)) <= Math.max(1, (word.length() + 1) / 3))
                .min(Comparator.<String>comparingInt(word -> changes(lower, word.toLowerCase(Locale.ROOT)))
                        .thenComparing(Comparator.naturalOrder()));
    }

    /** Levenshtein's distance: insertions, deletions and replacements that turn a into b. */
    private static int changes(String a, String b) {
        int[] row = new int[b.length() + 1];
        for (int j = 0; j <= b.length(); j++) {
            row[j] = j;
        }
        for (int i = 1; i <= a.length(); i++) {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= b.length(); j++) {
                int replaced = diagonal + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.min(replaced, 1 + Math.min(row[j], row[j - 1]));
            }
        }
        return row[b.length()];
    }
}
