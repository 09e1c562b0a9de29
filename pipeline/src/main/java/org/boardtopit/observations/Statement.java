package org.boardtopit.observations;

import java.util.List;

/**
 * What a rule says on one side of its guide.
 *
 * @param finding a few words such as {@code trunk tips forward}, the same in every language: by them findings of several
 *     competitions are laid side by side
 * @param heading the same in the language of the rules
 * @param text a sentence or two, without "you"
 * @param practice names of suggestions, may be none
 */
public record Statement(String finding, String heading, String text, List<String> practice) {
    public Statement {
        if (finding.isBlank() || heading.isBlank() || text.isBlank()) {
            throw new IllegalArgumentException("a statement has a finding and a text");
        }
        practice = List.copyOf(practice);
    }
}
