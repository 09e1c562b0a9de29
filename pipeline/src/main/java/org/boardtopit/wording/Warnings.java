package org.boardtopit.wording;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Warnings and reasons of the tables, which stand there in English, in the language of the page.
 *
 * <p>A sentence is recognised by its English form in the bundle {@code warnings}, so that it can be told from the table alone,
 * also one of an earlier run. One that is not there stays as it is: most are technical and rare. May be used from several threads.
 */
public final class Warnings {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d)}");
    private static final Pattern DECIMAL = Pattern.compile("-?\\d+\\.\\d+");
    /** Between the sentences of one cell. */
    private static final String BETWEEN = "; ";

    private final Words words;
    private final List<Known> known = new ArrayList<>();

    /** One sentence of the tables; the groups of its form are the values in their order. */
    private record Known(String key, Pattern form) {}

    /** In this language. */
    public Warnings(Language language) {
        words = Words.of("warnings", language);
        Words english = Words.of("warnings", Language.ENGLISH);
        // The longest first: a short one with a value may fit a longer sentence as well.
        english.keys().stream()
                .sorted(Comparator.comparingInt(
                        (String key) -> -english.get(key).length()))
                .forEach(key -> known.add(new Known(key, form(english.get(key)))));
    }

    /** Values must stand in the order of their numbers. */
    private static Pattern form(String english) {
        Matcher place = PLACE.matcher(english);
        String text = place.find() ? english.replace("''", "'") : english;
        return Pattern.compile(
                Arrays.stream(PLACE.split(text, -1)).map(Pattern::quote).collect(Collectors.joining("(.+?)")));
    }

    /** A sentence, or several of one cell, as people of the language read it; what is not known stays as it is. */
    public String of(String sentence) {
        if (words.language() == Language.ENGLISH) {
            return sentence;
        }
        return translated(sentence)
                .orElseGet(() -> Arrays.stream(sentence.split(BETWEEN))
                        .map(one -> translated(one).orElse(one))
                        .collect(Collectors.joining(BETWEEN)));
    }

    /** True when a sentence as it stands in a table is one of those that are known. */
    public boolean knows(String sentence) {
        return translated(sentence).isPresent();
    }

    private Optional<String> translated(String sentence) {
        for (Known one : known) {
            Matcher found = one.form().matcher(sentence);
            if (found.matches()) {
                return Optional.of(
                        found.groupCount() == 0 ? words.get(one.key()) : words.format(one.key(), values(found)));
            }
        }
        return Optional.empty();
    }

    private Object[] values(Matcher found) {
        Object[] values = new Object[found.groupCount()];
        for (int i = 0; i < values.length; i++) {
            values[i] = value(found.group(i + 1));
        }
        return values;
    }

    /** A number, a name, or a sentence within the sentence. */
    private String value(String text) {
        if (DECIMAL.matcher(text).matches()) {
            return words.number(Double.parseDouble(text), text.length() - text.indexOf('.') - 1);
        }
        return translated(text).orElse(text);
    }
}
