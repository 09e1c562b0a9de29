package org.boardtopit.observations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.boardtopit.clips.InputException;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** The rules of the program are complete in every language; those of a club may be in one. */
class RuleLanguagesTest {
    private static final RuleSet ENGLISH = RuleSetReader.builtIn(Language.ENGLISH);
    private static final RuleSet GERMAN = RuleSetReader.builtIn(Language.GERMAN);

    private static final String RULES = """
            cautions:
              all: Pain means stop.
            practice:
              - {name: skipping, text: Skip.}
            rules:
              - rule: step_trunk
                topic: trunk
                part: step
                measure: trunk_change_deg
                guides: {all: {high: 10}}
                width: 6
                basis: common practice, no source
                strength: practice
                above: {finding: trunk tips forward, text: The trunk tipped forward., practice: [skipping]}
            """;

    @TempDir
    private Path folder;

    private RuleSet read(String text, Language language) throws IOException, InputException {
        Path file = Files.writeString(folder.resolve("rules.yaml"), text, StandardCharsets.UTF_8);
        return RuleSetReader.read(file, language);
    }

    /** Every text that people read, in the order of the file, by where it stands. */
    private static Map<String, String> texts(RuleSet rules) {
        Map<String, String> texts = new HashMap<>();
        texts.put("cautions all", rules.cautions().all());
        texts.put("cautions junior", rules.cautions().junior());
        texts.put("cautions masters", rules.cautions().masters());
        rules.practice().forEach((name, text) -> texts.put("practice " + name, text));
        rules.arms().ifPresent(arms -> texts.put("arms", arms.text()));
        rules.notVisible().forEach((topic, text) -> texts.put("not visible " + topic, text));
        for (Rule rule : rules.rules()) {
            texts.put(rule.name() + " cannot tell", rule.cannotTell());
            for (Statement one : statements(rule)) {
                texts.put(rule.name() + " text of " + one.finding(), one.text());
                texts.put(rule.name() + " heading of " + one.finding(), one.heading());
            }
        }
        texts.values().removeIf(String::isEmpty);
        return texts;
    }

    private static List<Statement> statements(Rule rule) {
        return Stream.of(rule.below(), rule.above(), rule.inside())
                .flatMap(Optional::stream)
                .toList();
    }

    /** Rules and suggestions as grep counts them in the file. */
    @Test
    void everyTextIsThereInEveryLanguageAndNoneIsTheOther() {
        Map<String, String> english = texts(ENGLISH);
        Map<String, String> german = texts(GERMAN);
        assertEquals(60, ENGLISH.rules().size());
        assertEquals(11, ENGLISH.practice().size());
        assertEquals(new TreeSet<>(english.keySet()), new TreeSet<>(german.keySet()));
        english.forEach((where, text) -> assertNotEquals(text, german.get(where), where));
    }

    @Test
    void theNumbersInATextAreThoseOfTheOtherLanguage() {
        Map<String, String> german = texts(GERMAN);
        texts(ENGLISH).forEach((where, text) -> assertEquals(numbers(text), numbers(german.get(where)), where));
    }

    private static List<String> numbers(String text) {
        return Pattern.compile("[0-9]+(?:[.,][0-9]+)?")
                .matcher(text)
                .results()
                .map(MatchResult::group)
                .map(number -> number.replace(',', '.'))
                .toList();
    }

    /** What programs look for stays: topics, findings, sources, names, guides. */
    @Test
    void nothingButTheTextsDependsOnTheLanguage() {
        for (int i = 0; i < ENGLISH.rules().size(); i++) {
            Rule one = ENGLISH.rules().get(i);
            Rule other = GERMAN.rules().get(i);
            assertEquals(one.name(), other.name());
            assertEquals(one.topic(), other.topic());
            assertEquals(one.basis(), other.basis());
            assertEquals(one.guides(), other.guides());
            assertEquals(findings(one), findings(other));
        }
        assertEquals(
                ENGLISH.arms().orElseThrow().basis(),
                GERMAN.arms().orElseThrow().basis());
    }

    private static List<String> findings(Rule rule) {
        return statements(rule).stream().map(Statement::finding).toList();
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void oneFindingHasOneHeadingAndNoTwoShareOne(Language language) {
        Map<String, String> headings = new HashMap<>();
        for (Rule rule : RuleSetReader.builtIn(language).rules()) {
            for (Statement one : statements(rule)) {
                assertEquals(one.heading(), headings.computeIfAbsent(one.finding(), f -> one.heading()), one.finding());
            }
        }
        assertEquals(headings.size(), new TreeSet<>(headings.values()).size());
    }

    @Test
    void headingsInEnglishAreTheFindings() {
        ENGLISH.rules().forEach(rule -> statements(rule).forEach(s -> assertEquals(s.finding(), s.heading())));
    }

    /** Whole sentences, nobody addressed, nothing medical decided, no verdict on a person. */
    @Test
    void theGermanSentencesArePlainAndAddressNobody() {
        Pattern unwanted = Pattern.compile(
                "(?iU)\\b(du|dir|dich|dein\\w*|ihnen|ihre?|euch|euer|diagnos\\w*|verletz\\w*|schwach\\w*|faul\\w*"
                        + "|schlecht\\w*|falsch\\w*|muss|immer|nie)\\b");
        List<String> sentences = new ArrayList<>();
        texts(GERMAN).forEach((where, text) -> {
            assertFalse(unwanted.matcher(text).find(), where + ": " + text);
            if (!where.contains(" heading of ")) {
                sentences.add(text);
            }
        });
        sentences.forEach(text -> assertTrue(text.matches("[A-Z\u00c4\u00d6\u00dc].*\\."), text));
    }

    /** What every suggestion comes with, whatever the language. */
    @Test
    void theGermanCautionsSayStopWithPainAndWhoDecides() {
        String all = GERMAN.cautions().of(AthleteLevel.NOT_STATED);
        assertTrue(GERMAN.cautions().of(AthleteLevel.SENIOR).startsWith("Bei Schmerzen ist Schluss."), all);
        assertTrue(all.contains("entscheiden qualifizierte Trainerinnen und Trainer"), all);
        assertTrue(all.contains("medizinischem Fachpersonal"), all);
        assertTrue(all.contains("Noch im Wachstum"), all);
        assertTrue(all.contains("Masters: "), all);
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void aFileInOneLanguageIsUsedForAll(Language language) throws Exception {
        RuleSet rules = read(RULES, language);
        Statement above = rules.rules().get(0).above().orElseThrow();
        assertEquals("trunk tips forward", above.finding());
        assertEquals("trunk tips forward", above.heading());
        assertEquals("The trunk tipped forward.", above.text());
        assertEquals("Skip.", rules.practice().get("skipping"));
        assertEquals("Pain means stop.", rules.cautions().all());
        assertEquals(language, rules.language());
    }

    @ParameterizedTest
    @CsvSource({"ENGLISH, trunk tips forward, Skip.", "GERMAN, Rumpf kippt nach vorn, Hopserlauf."})
    void aClubMayGiveSomeTextsInEveryLanguageAndOthersOnce(Language language, String heading, String practice)
            throws Exception {
        String text = RULES.replace(
                        "finding: trunk tips forward", "finding: {de: Rumpf kippt nach vorn, en: trunk tips forward}")
                .replace("text: Skip.", "text: {en: Skip., de: Hopserlauf.}");
        RuleSet rules = read(text, language);
        Statement above = rules.rules().get(0).above().orElseThrow();
        assertEquals("trunk tips forward", above.finding());
        assertEquals(heading, above.heading());
        assertEquals("The trunk tipped forward.", above.text());
        assertEquals(practice, rules.practice().get("skipping"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "text: Skip. | text: {en: Skip.} | line 4, column 28: text has no text under de; give it in en and de, or write one text without a language for all of them",
                "text: Skip. | text: {de: Hopserlauf., en: } | line 4, column 28: text has no text under en",
                "text: Skip. | text: {en: Skip., dee: Hopserlauf.} | line 4, column 40: unknown key 'dee'; did you mean 'de'?",
                "text: Skip. | text: [Skip.] | line 4, column 28: text must be a text, was a list",
                "finding: trunk tips forward | finding: {de: Rumpf kippt} | line 14, column 22: finding has no text under en",
                "all: Pain means stop. | all: {en: Pain means stop.} | line 2, column 8: all has no text under de",
            })
    void refusesATextThatIsMissingInALanguage(String right, String wrong, String message) {
        assertTrue(RULES.contains(right), right);
        InputException e =
                assertThrows(InputException.class, () -> read(RULES.replace(right, wrong), Language.ENGLISH));
        assertTrue(e.getMessage().contains(message), e.getMessage());
    }
}
