package org.boardtopit.wording;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Set;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class WarningsTest {

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "no landing in the pit was seen | keine Landung in der Grube gesehen",
                "the take-off foot differs from the sheet's | das Absprungbein ist ein anderes als auf dem Blatt",
                "what runs is not a person: seen in 2 of 9 pictures | was l\u00e4uft, ist kein Mensch: in 2 von 9 Bildern gesehen",
                "two ways to lay the clips beside each other fit alike, 0.25 s apart"
                        + " | zwei Lagen der Clips zueinander passen gleich gut, 0,25 s auseinander",
                "f.mp4 could not be joined: a fault of the program | f.mp4 lie\u00df sich nicht verbinden: ein Fehler des Programms",
                "not joined to a.mp4: the hips rise and fall too little to compare the clocks"
                        + " | nicht mit a.mp4 verbunden: die H\u00fcfte steigt und f\u00e4llt zu wenig, um die Uhren zu vergleichen",
                "f.mp4 could not be joined: something new | f.mp4 lie\u00df sich nicht verbinden: something new",
                "no landing in the pit was seen; the take-off foot differs from the sheet's"
                        + " | keine Landung in der Grube gesehen; das Absprungbein ist ein anderes als auf dem Blatt",
                "something new; no landing in the pit was seen | something new; keine Landung in der Grube gesehen",
                "the disk is full | the disk is full",
            })
    void saysInGermanWhatTheTablesSayInEnglish(String table, String german) {
        assertEquals(german, new Warnings(Language.GERMAN).of(table));
        assertEquals(table, new Warnings(Language.ENGLISH).of(table));
    }

    /** A form that takes in another's sentences would answer for it. */
    @ParameterizedTest
    @EnumSource(Language.class)
    void everySentenceIsRecognisedAsItself(Language language) {
        Words english = Words.of("warnings", Language.ENGLISH);
        Words words = Words.of("warnings", language);
        Warnings warnings = new Warnings(language);
        for (String key : english.keys()) {
            boolean plain = !english.get(key).contains("{0}");
            String table = plain ? english.get(key) : english.format(key, "seven", "eight");
            assertEquals(plain ? words.get(key) : words.format(key, "seven", "eight"), warnings.of(table), key);
        }
    }

    @Test
    void knowsWhatItKnows() {
        assertFalse(new Warnings(Language.GERMAN).knows("the disk is full"));
    }

    /** Put together of pieces in the source; those of the contacts' times are held against it in QualityCausesTest. */
    private static final Set<String> IN_PIECES =
            Set.of("contacts.loose", "contacts.loose.many", "pattern.foot", "pattern.feet");

    /** A sentence that was changed where it arises would stay English on the page. */
    @Test
    void everySentenceStandsInTheSourceAsItStandsHere() throws IOException {
        String source = source();
        Words english = Words.of("warnings", Language.ENGLISH);
        for (String key : english.keys()) {
            String text = english.get(key);
            for (String part : (text.contains("{0}") ? text.replace("''", "'") : text).split("\\{\\d}", -1)) {
                assertTrue(IN_PIECES.contains(key) || source.contains(part), key + ": " + part);
            }
        }
    }

    /** All of it, with pieces of text on several lines joined. */
    private static String source() throws IOException {
        StringBuilder all = new StringBuilder();
        try (Stream<Path> files = Files.walk(Path.of("src", "main", "java"))) {
            for (Path file : files.filter(f -> f.toString().endsWith(".java")).toList()) {
                all.append(Files.readString(file, StandardCharsets.UTF_8));
            }
        }
        return all.toString().replaceAll("\"\\s*\\+\\s*\"", "").replace("%%", "%");
    }
}
