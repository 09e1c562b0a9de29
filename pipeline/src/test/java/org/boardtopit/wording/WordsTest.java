package org.boardtopit.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.text.MessageFormat;
import java.time.LocalDate;
import java.util.List;
import java.util.MissingResourceException;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class WordsTest {
    private static final Pattern PLACE = Pattern.compile("\\{(\\d+)[^}]*}");

    private static Path folder() throws URISyntaxException {
        return Path.of(Words.class.getResource("page_en.properties").toURI()).getParent();
    }

    static List<String> bundles() throws IOException, URISyntaxException {
        try (Stream<Path> files = Files.list(folder())) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".properties"))
                    .map(name -> name.replaceFirst("_[a-z]+\\.properties$", ""))
                    .distinct()
                    .sorted()
                    .toList();
        }
    }

    private static Properties words(String bundle, Language language) throws IOException, URISyntaxException {
        Properties words = new Properties();
        Path file = folder().resolve(bundle + "_" + language.code() + ".properties");
        try (Reader reader = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
            words.load(reader);
        }
        return words;
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void everyLanguageHasTheSameKeys(String bundle) throws IOException, URISyntaxException {
        Set<Object> first = new TreeSet<>(words(bundle, Language.ENGLISH).keySet());
        assertTrue(!first.isEmpty(), bundle + " is empty");
        for (Language language : Language.values()) {
            assertEquals(first, new TreeSet<>(words(bundle, language).keySet()), bundle + " in " + language);
        }
    }

    @ParameterizedTest
    @MethodSource("bundles")
    void everyLanguageHasWordsWithTheSameValues(String bundle) throws IOException, URISyntaxException {
        Properties first = words(bundle, Language.ENGLISH);
        for (Language language : Language.values()) {
            Properties words = words(bundle, language);
            for (String key : first.stringPropertyNames()) {
                String word = words.getProperty(key, "");
                assertTrue(!word.isBlank(), bundle + " in " + language + " has no word for " + key);
                assertEquals(places(first.getProperty(key)), places(word), bundle + " in " + language + ": " + key);
                if (!places(word).isEmpty()) {
                    new MessageFormat(word, language.locale()); // throws where it cannot be read
                }
            }
        }
    }

    private static Set<String> places(String word) {
        return PLACE.matcher(word)
                .results()
                .map(found -> found.group(1))
                .collect(Collectors.toCollection(TreeSet::new));
    }

    @Test
    void aMissingWordThrows() {
        Words words = Words.of("page", Language.GERMAN);
        assertThrows(MissingResourceException.class, () -> words.get("no such key"));
    }

    /** Decimal signs of the languages: Unicode CLDR, which the JDK ships. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "ENGLISH | 12.345 | 2 | 12.35",
                "GERMAN  | 12.345 | 2 | 12,35",
                "GERMAN  | 1234.5 | 1 | 1234,5",
                "ENGLISH | -3     | 0 | \u22123",
                "ENGLISH | -0.04  | 1 | 0.0",
                "GERMAN  | -0.06  | 1 | \u22120,1",
            })
    void writesNumbersAsTheLanguageDoes(Language language, double value, int decimals, String text) {
        assertEquals(text, Words.of("page", language).number(value, decimals));
    }

    @Test
    void writesDatesAsTheLanguageDoes() {
        assertEquals("14. Juni 2026", Words.of("page", Language.GERMAN).date(LocalDate.of(2026, 6, 14)));
    }
}
