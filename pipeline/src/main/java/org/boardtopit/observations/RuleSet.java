package org.boardtopit.observations;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.wording.Language;

/**
 * All rules of a file, their texts in one language.
 *
 * @param language of the texts, and of what is said around them
 * @param cautions added to every practice suggestion
 * @param practice suggestions by name
 * @param arms how the action of the arms is told; empty when it is not
 * @param notVisible sentences for topics none of whose measures is known, by topic
 * @param rules in the order of the file
 */
public record RuleSet(
        Language language,
        Cautions cautions,
        Map<String, String> practice,
        Optional<Arms> arms,
        Map<String, String> notVisible,
        List<Rule> rules) {

    /**
     * What goes with every suggestion.
     *
     * @param all for everybody
     * @param junior added for juniors, and where the level is not stated
     * @param masters added for masters, and where the level is not stated
     */
    public record Cautions(String all, String junior, String masters) {
        String of(AthleteLevel level) {
            boolean open = level == AthleteLevel.NOT_STATED;
            String text = all;
            text += open || level == AthleteLevel.JUNIOR ? " " + junior : "";
            text += open || level == AthleteLevel.MASTERS ? " " + masters : "";
            return text.strip();
        }
    }

    /** The sentence on the arms, which are described and not judged. */
    public record Arms(String text, String basis) {}

    public RuleSet {
        practice = Map.copyOf(practice);
        notVisible = java.util.Collections.unmodifiableMap(new LinkedHashMap<>(notVisible));
        rules = List.copyOf(rules);
    }
}
