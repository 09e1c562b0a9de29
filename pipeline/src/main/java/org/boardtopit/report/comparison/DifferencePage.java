package org.boardtopit.report.comparison;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.tables.DifferenceRow;
import org.boardtopit.report.tables.Unit;
import org.boardtopit.wording.Words;

/** The table at the end of the video of a comparison: the differences that are largest against their uncertainty, in words. */
public final class DifferencePage {
    /** As many lines as can be read in the seconds that they stand. */
    private static final int MOST_LINES = 11;

    /** Of 100 numbers that do not differ, as many seem to: the intervals are of 90 %. */
    private static final double BY_CHANCE = 0.1;

    private static final String TOUCHDOWN = "_touchdown_";
    private static final String TOE_OFF = "_toe_off_";

    private final AttemptDifferences differences;
    private final Words words;
    private final List<Line> lines;

    /**
     * One line.
     *
     * @param where phase or contact
     * @param what measure
     * @param difference with sign, plus-minus and unit
     */
    public record Line(String where, String what, String a, String b, String difference) {}

    DifferencePage(AttemptDifferences differences, Words words) {
        this.differences = differences;
        this.words = words;
        List<DifferenceRow> named =
                differences.rows().stream().filter(this::isShown).toList();
        List<DifferenceRow> largest = named.stream()
                .sorted(Comparator.comparingDouble(
                        (DifferenceRow row) -> -Math.abs(row.difference()) / row.differencePm90()))
                .limit(MOST_LINES)
                .toList();
        lines = named.stream().filter(largest::contains).map(this::line).toList();
    }

    /** A support time is there for the phase and for its contact: once is enough. */
    private boolean isShown(DifferenceRow row) {
        boolean twice = row.of().equals("contact") && row.measure().equals("support_time_s");
        return !twice && name(row.measure()).isPresent();
    }

    private Optional<String> name(String measure) {
        if (words.has("measure." + measure)) {
            return Optional.of(words.get("measure." + measure));
        }
        return at(measure, TOUCHDOWN, "instant.touchdown").or(() -> at(measure, TOE_OFF, "instant.toe_off"));
    }

    private Optional<String> at(String measure, String instant, String words) {
        int end = measure.indexOf(instant);
        String key = end < 0 ? "" : "angle." + measure.substring(0, end);
        return this.words.has(key) ? Optional.of(this.words.format(words, this.words.get(key))) : Optional.empty();
    }

    private Line line(DifferenceRow row) {
        Optional<Unit> unit = Unit.of(row.measure());
        int decimals = unit.map(DifferencePage::decimals).orElse(2);
        String difference = (row.difference() > 0 ? "+" : "")
                + words.number(row.difference(), decimals)
                + " \u00b1 "
                + words.number(row.differencePm90(), decimals)
                + unit.map(DifferencePage::symbol).orElse("");
        return new Line(
                where(row),
                name(row.measure()).orElseThrow(),
                words.number(row.valueA(), decimals),
                words.number(row.valueB(), decimals),
                difference);
    }

    private static int decimals(Unit unit) {
        return switch (unit) {
            case SECOND -> 3;
            case METRE, METRE_PER_SECOND, ONE -> 2;
            default -> 1;
        };
    }

    private static String symbol(Unit unit) {
        return switch (unit) {
            case DEGREE -> "\u00b0";
            case ONE -> "";
            default -> " " + unit.symbol();
        };
    }

    private String where(DifferenceRow row) {
        if (row.part().isEmpty()) {
            return words.get("part.attempt");
        }
        int number = row.part().lastIndexOf('_');
        boolean numbered = number >= 0 && row.part().substring(number + 1).matches("[0-9]+");
        String word = numbered ? row.part().substring(0, number) : row.part();
        String text = words.get((isPhase(word) ? "phase." : "contact.") + word);
        return numbered ? text + " " + row.part().substring(number + 1) : text;
    }

    private static boolean isPhase(String word) {
        for (PhaseName name : PhaseName.values()) {
            if (name.label().equals(word)) {
                return true;
            }
        }
        return false;
    }

    /** In the order of the movement. */
    public List<Line> lines() {
        return lines;
    }

    public String title() {
        return words.get("table.title");
    }

    public String differenceHeading() {
        return words.get("table.difference");
    }

    /** Sentences below the table. */
    public List<String> remarks() {
        List<String> remarks = new ArrayList<>();
        int all = differences.rows().size();
        if (all == 0) {
            remarks.add(words.get("table.none"));
        }
        if (all > lines.size()) {
            remarks.add(words.format("table.more", Integer.toString(all - lines.size())));
        }
        remarks.add(words.format(
                "table.count",
                Integer.toString(all),
                Integer.toString(differences.compared()),
                Long.toString(Math.round(BY_CHANCE * differences.compared()))));
        remarks.add(words.get("table.caution"));
        return remarks;
    }
}
