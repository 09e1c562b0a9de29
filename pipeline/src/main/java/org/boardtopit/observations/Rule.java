package org.boardtopit.observations;

import java.util.List;
import java.util.Optional;

/**
 * One thing that is looked at in every attempt.
 *
 * @param name of the rule, unique in its file
 * @param topic what it is about; rules of one topic share one priority
 * @param part and {@code measure} name a number of {@link org.boardtopit.measures.EvidenceTable}
 * @param phase the word for the column phase; empty for the attempt as a whole
 * @param width by how much a value has to miss the guide to be called plainly outside, in its unit, greater than 0: makes
 *     topics comparable
 * @param basis where the guide comes from, with how sure that is
 * @param remarkOnly true for what is told but never made a priority or a strength
 * @param below what is said of a value below the guide; empty when nothing is
 * @param above of one above it
 * @param inside of one clearly inside
 * @param setUpBy names of rules whose finding explains one of this rule
 * @param cannotTell what the number does not show; may be empty
 */
public record Rule(
        String name,
        String topic,
        String part,
        String measure,
        String phase,
        Guides guides,
        double width,
        String basis,
        BasisStrength strength,
        boolean remarkOnly,
        Optional<Statement> below,
        Optional<Statement> above,
        Optional<Statement> inside,
        List<String> setUpBy,
        String cannotTell) {

    public Rule {
        if (!(width > 0)) {
            throw new IllegalArgumentException("width must be greater than 0, was " + width);
        }
        setUpBy = List.copyOf(setUpBy);
    }
}
