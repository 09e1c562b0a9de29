package org.boardtopit.report.page;

import org.boardtopit.clips.Label;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.wording.Words;

/** What the page calls athletes, attempts and the words of the tables. */
final class Naming {
    private final Words words;

    Naming(Words words) {
        this.words = words;
    }

    /** With the name where the tables have one. */
    String athlete(Series series) {
        if (series.bib().isBlank()) {
            return series.athlete().isBlank() ? words.format("athlete_number", series.number()) : series.athlete();
        }
        boolean named = !series.athlete().isBlank() && !series.athlete().equals(series.bib());
        return named ? series.bib() + " " + series.athlete() : words.format("bib_number", series.bib());
    }

    /** For what stands with a picture: never a name. */
    String withoutName(Series series) {
        return series.bib().isBlank()
                ? words.format("athlete_number", series.number())
                : words.format("bib_number", series.bib());
    }

    /** Short, for the rows of a plot. */
    String shortly(Series series, Attempt attempt) {
        Integer number = attempt.row().attempt();
        return number != null ? number.toString() : "#" + (series.attempts().indexOf(attempt) + 1);
    }

    String attempt(Series series, Attempt attempt) {
        return words.format("attempt_number", shortly(series, attempt));
    }

    /** A word of the tables in the page's language, such as {@code contact_hop_landing}. */
    String word(String kind, Label label) {
        return words.get(kind + "_" + label.label());
    }

    /** The same where a drill may number its phases: {@code hop_2}. */
    String phase(Label label) {
        String name = label.label();
        int end = name.length();
        while (end > 0 && Character.isDigit(name.charAt(end - 1))) {
            end--;
        }
        if (end == name.length()) {
            return word("phase", label);
        }
        return words.get("phase_" + name.substring(0, end - 1)) + " " + name.substring(end);
    }

    /** The flight after a contact. */
    String flight(ContactKind before) {
        return switch (before) {
            case BOARD -> words.format("flight_of", words.get("phase_hop"));
            case HOP_LANDING -> words.format("flight_of", words.get("phase_step"));
            case STEP_LANDING -> words.format("flight_of", words.get("phase_jump"));
            case APPROACH, PIT, DRILL -> words.get("instant_flight");
        };
    }

    /** The distance, or what the judges said instead of one; empty text when nothing is known. */
    String distance(Figures figures, Attempt attempt) {
        if (attempt.hasDistance()) {
            return figures.metres(attempt.row().officialM());
        }
        if (attempt.row().result() == null) {
            return "";
        }
        return switch (attempt.row().result()) {
            case VALID -> "";
            case FAILED -> words.get("result_failed");
            case PASSED -> words.get("result_passed");
            case RETIRED -> words.get("result_retired");
        };
    }
}
