package org.boardtopit.observations;

import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.YamlKeys;
import org.boardtopit.wording.Language;

/**
 * A text of a file of rules: one for all languages ({@code text: Skip.}), or one for each ({@code text: {en: Skip., de:
 * Hopserlauf.}}). A text that is in some languages only is refused, for it was forgotten in the others.
 *
 * @param byLanguage all languages, or none when nothing was given
 */
record TranslatedText(Map<Language, String> byLanguage) {
    private static final List<String> CODES =
            Arrays.stream(Language.values()).map(Language::code).toList();

    TranslatedText {
        byLanguage = Map.copyOf(byLanguage);
        if (!byLanguage.isEmpty() && byLanguage.size() < Language.values().length) {
            throw new IllegalArgumentException("a text is in all languages or in none, was in " + byLanguage.keySet());
        }
    }

    /** A few words; empty when not given. */
    static TranslatedText words(YamlKeys item, String key) throws InputException {
        return read(item, key, YamlKeys::text);
    }

    /** Some sentences; empty when not given. */
    static TranslatedText sentences(YamlKeys item, String key) throws InputException {
        return read(item, key, YamlKeys::prose);
    }

    private static TranslatedText read(YamlKeys item, String key, Text text) throws InputException {
        Map<Language, String> all = new EnumMap<>(Language.class);
        boolean each = item.holdsKeys(key);
        YamlKeys from = each ? item.keys(key, CODES) : item;
        for (Language language : Language.values()) {
            String one = text.of(from, each ? language.code() : key);
            if (!one.isEmpty()) {
                all.put(language, one);
            } else if (each) {
                throw item.problem(
                        key,
                        key + " has no text under " + language.code() + "; give it in " + String.join(" and ", CODES)
                                + ", or write one text without a language for all of them");
            }
        }
        return new TranslatedText(all);
    }

    boolean isEmpty() {
        return byLanguage.isEmpty();
    }

    /** Empty when nothing was given. */
    String in(Language language) {
        return byLanguage.getOrDefault(language, "");
    }

    @FunctionalInterface
    private interface Text {
        String of(YamlKeys keys, String key) throws InputException;
    }
}
