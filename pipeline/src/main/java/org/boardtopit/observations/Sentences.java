package org.boardtopit.observations;

import java.text.DecimalFormatSymbols;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.boardtopit.measures.ArmAction;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/** What is said around the texts of the rules, in one language: numbers, guides, causes. */
final class Sentences {
    private final Words words;
    private final Words terms;
    private final char decimal;

    Sentences(Language language) {
        words = Words.of("observations", language);
        terms = Words.of("terms", language);
        decimal = DecimalFormatSymbols.getInstance(language.locale()).getDecimalSeparator();
    }

    /** What was measured, and the guide it was held against. */
    String measured(Finding f) {
        MeasureUnit unit = MeasureUnit.of(f.evidence().measure());
        return words.format(
                "measured",
                spoken(f.evidence().reading().value(), unit),
                number(f.interval().low(), unit),
                number(f.interval().high(), unit),
                guide(f.guide(), unit));
    }

    private String guide(Guide guide, MeasureUnit unit) {
        if (Double.isNaN(guide.low())) {
            return words.format("guide.most", spoken(guide.high(), unit));
        }
        return Double.isNaN(guide.high())
                ? words.format("guide.least", spoken(guide.low(), unit))
                : words.format("guide.between", number(guide.low(), unit), spoken(guide.high(), unit));
    }

    /** As in the column of the value, but for the decimal sign: a sentence is read, not counted with. */
    private String number(double value, MeasureUnit unit) {
        return unit.number(value).replace('.', decimal);
    }

    private String spoken(double value, MeasureUnit unit) {
        String name = unit == MeasureUnit.DEGREES ? words.get("degrees") : unit.label();
        return (number(value, unit) + " " + name).strip();
    }

    String setUpBy(Finding cause) {
        return words.format("set_up", named(cause));
    }

    private String named(Finding f) {
        String phase = f.rule().phase();
        return (phase.isEmpty() ? "" : terms.get("phase." + phase) + ": ")
                + f.statement().heading();
    }

    /** How the arms went in each flight in which they were seen; empty when in none. */
    String arms(Map<PhaseName, ArmAction> arms) {
        List<String> seen = new ArrayList<>();
        for (PhaseName phase : List.of(PhaseName.HOP, PhaseName.STEP, PhaseName.JUMP)) {
            ArmAction action = arms.getOrDefault(phase, ArmAction.NOT_SEEN);
            if (action != ArmAction.NOT_SEEN) {
                seen.add(words.format(
                        "arms.in", words.get("arms." + action.label()), terms.get("phase." + phase.label())));
            }
        }
        return String.join(", ", seen);
    }

    String notVisible() {
        return words.get("not_visible");
    }
}
