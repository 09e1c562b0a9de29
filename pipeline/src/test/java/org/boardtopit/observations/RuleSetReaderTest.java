package org.boardtopit.observations;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RuleSetReaderTest {
    private static final Path SAMPLE = Path.of("..", "sample-config", "observations.yaml");

    /** One rule; each case changes one line of it. */
    private static final String RULES = """
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
                set_up_by: []
            """;

    @TempDir
    Path folder;

    private Path write(String text) throws IOException {
        return Files.writeString(folder.resolve("rules.yaml"), text, StandardCharsets.UTF_8);
    }

    private String messageOf(String text) throws IOException {
        Path file = write(text);
        InputException e = assertThrows(InputException.class, () -> RuleSetReader.read(file, Language.ENGLISH));
        assertEquals(1, e.getMessage().lines().count(), "one line: " + e.getMessage());
        return e.getMessage().replace(folder + "/", "");
    }

    @Test
    void readsARule() throws Exception {
        RuleSet rules = RuleSetReader.read(write(RULES), Language.ENGLISH);
        Rule rule = rules.rules().get(0);
        assertEquals("step", rule.phase());
        assertEquals(new Guide(Double.NaN, 10), rule.guides().at(AthleteLevel.SENIOR, Optional.empty()));
        assertEquals(BasisStrength.PRACTICE, rule.strength());
        assertEquals("trunk tips forward", rule.above().orElseThrow().finding());
        assertFalse(rule.remarkOnly());
        assertEquals("Skip.", rules.practice().get("skipping"));
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "topic: trunk | topick: trunk | line 5, column 5: unknown key 'topick'; did you mean 'topic'?",
                "part: step | part: skip | line 6, column 11: part must be one of attempt, approach, hop, step, jump,",
                "trunk_change_deg | trunk_chang_deg | line 7, column 14: step has no measure 'trunk_chang_deg'; did you mean 'trunk_change_deg'?",
                "trunk_change_deg | knee_toe_off_deg | line 7, column 14: step has no measure 'knee_toe_off_deg'",
                "{high: 10} | {low: 12, high: 10} | line 8, column 25: low must not be above high, was 12.0 and 10.0",
                "{high: 10} | {high: ten} | line 8, column 26: high must be a number such as 16",
                "{high: 10} | {} | line 8, column 19: a guide has a low or a high limit or both",
                "all: {high | elderly: {high | line 8, column 14: unknown key 'elderly'; known here are all, senior, senior_men,",
                "all: {high | senior: {high | line 8, column 13: there is no guide for junior; give senior, junior and masters, or all",
                "width: 6 | width: 0 | line 9, column 12: width must be from 0.001 to 1000, was 0",
                "width: 6 | width: | width is missing here",
                "strength: practice | strength: rumour | line 11, column 15: strength must be one of study, centre, practice, memory, was 'rumour'",
                "basis: common practice | basis: [common practice | this is not YAML",
                "above: | below: | line 12, column 12: below is of use only together with a low limit in guides",
                "{high: 10} | {low: 1, high: 10} | the guide has a low limit, but nothing is said for values below it; add below",
                "practice: [skipping] | practice: [skiping] | line 12, column 86: practice: there is no practice 'skiping'; did you mean 'skipping'?",
                "set_up_by: [] | set_up_by: [hop_trunk] | line 13, column 17: set_up_by: there is no rule 'hop_trunk'",
                "set_up_by: [] | set_up_by: [step_trunk] | line 13, column 16: a rule cannot be set up by itself",
                "rule: step_trunk | rule: Step trunk | line 4, column 11: rule must be a word of small letters",
                "set_up_by: [] | remark_only: maybe | line 13, column 18: remark_only must be one of yes, no, was 'maybe'",
            })
    void refusesWhatIsWrongAndSaysWhereAndWhatWouldBeRight(String right, String wrong, String message)
            throws IOException {
        assertTrue(RULES.contains(right), right);
        String said = messageOf(RULES.replace(right, wrong));
        assertTrue(said.contains(message), said);
        assertTrue(said.startsWith("rules.yaml"), said);
    }

    @Test
    void refusesTwoRulesWithOneName() throws IOException {
        String second = RULES.substring(RULES.indexOf("  - rule"));
        String said = messageOf(RULES + second);
        assertTrue(said.contains("line 14, column 11: there are two with the name 'step_trunk'"), said);
    }

    @Test
    void refusesASentenceForATopicThatNoRuleHas() throws IOException {
        String said = messageOf(RULES + "not_visible:\n  - {topic: trunks, text: Not visible.}\n");
        assertTrue(said.contains("line 15, column 13: no rule has the topic 'trunks'; did you mean 'trunk'?"), said);
    }

    @Test
    void refusesRulesThatSetEachOtherUp() throws IOException {
        String second = RULES.substring(RULES.indexOf("  - rule"))
                .replace("step_trunk", "hop_trunk")
                .replace("set_up_by: []", "set_up_by: [step_trunk]");
        String said = messageOf(RULES.replace("set_up_by: []", "set_up_by: [hop_trunk]") + second);
        assertTrue(said.contains("following set_up_by from step_trunk leads back to it"), said);
    }

    @Test
    void theProgramUsesTheVeryRulesThatUsersCopy() throws Exception {
        assertEquals(RuleSetReader.read(SAMPLE, Language.ENGLISH), RuleSetReader.builtIn(Language.ENGLISH));
    }

    @Test
    void aCompetitionMayNameItsOwnRules() throws Exception {
        write(RULES);
        Path sheet = Files.writeString(folder.resolve("meet.yaml"), "observations: rules.yaml\n");
        MeetSheet meet = MeetSheetReader.read(sheet);
        assertEquals(1, RuleSetReader.of(meet).rules().size());
        assertTrue(meet.inputFiles().contains(folder.resolve("rules.yaml").toAbsolutePath()));
        assertEquals(RuleSetReader.builtIn(Language.ENGLISH), RuleSetReader.of(MeetSheet.NONE));
    }

    /** Whole sentences, nobody addressed, nothing medical decided. */
    @Test
    void theSentencesArePlainAndAddressNobody() {
        Pattern unwanted = Pattern.compile(
                "(?i)\\b(you|your|yours|diagnos\\w*|injur\\w*|weak|lazy|bad|wrong|must|always|never)\\b");
        for (String text : sentences(RuleSetReader.builtIn(Language.ENGLISH))) {
            assertTrue(text.matches("[A-Z].*\\."), text);
            assertFalse(unwanted.matcher(text).find(), text);
        }
    }

    private static List<String> sentences(RuleSet rules) {
        Stream<String> said = rules.rules().stream()
                .flatMap(r -> Stream.of(r.below(), r.above(), r.inside()).flatMap(Optional::stream))
                .map(Statement::text);
        return Stream.concat(
                        Stream.concat(said, rules.practice().values().stream()), rules.notVisible().values().stream())
                .toList();
    }

    /** What is looked at, at least: a topic that is lost in an edit of the file is missed here. */
    @Test
    void looksAtEveryTopicACoachAsksFor() {
        List<String> topics = RuleSetReader.builtIn(Language.ENGLISH).rules().stream()
                .map(Rule::topic)
                .distinct()
                .toList();
        List<String> wanted = List.of(
                "approach",
                "push_off",
                "take_off_angle",
                "free_leg_board",
                "free_leg_hop",
                "free_thigh_hold",
                "trunk",
                "head",
                "active_landing",
                "foot_plant",
                "support_yield",
                "support_time",
                "speed_loss",
                "effort_distribution",
                "rhythm",
                "landing_legs",
                "landing_arms",
                "sit_back",
                "sideways_roll",
                "straight_line");
        assertEquals(List.of(), wanted.stream().filter(t -> !topics.contains(t)).toList());
    }

    @Test
    void everyGuideStatesWhatItRestsOn() {
        for (Rule rule : RuleSetReader.builtIn(Language.ENGLISH).rules()) {
            assertTrue(
                    rule.basis().matches(".*(read|remembered|no source|common practice).*"),
                    rule.name() + ": " + rule.basis());
            if (rule.strength() == BasisStrength.STUDY) {
                assertTrue(rule.basis().contains("read"), rule.name());
            }
        }
    }

    /** The document lists every rule with its measure, limits, width, strength and basis, and no other. */
    @Test
    void theDocumentListsTheRulesAsTheyAre() throws IOException {
        List<String> rows = Files.readString(Path.of("..", "docs", "observations.md"), StandardCharsets.UTF_8)
                .lines()
                .dropWhile(line -> !line.startsWith("| rule | measure |"))
                .skip(2)
                .takeWhile(line -> line.startsWith("|"))
                .toList();
        List<Rule> rules = RuleSetReader.builtIn(Language.ENGLISH).rules();
        assertEquals(rules.size(), rows.size());
        for (int i = 0; i < rows.size(); i++) {
            Rule rule = rules.get(i);
            String[] cells = rows.get(i).split(" *\\| *", -1);
            assertEquals("`" + rule.name() + "`" + (rule.remarkOnly() ? " (remark)" : ""), cells[1]);
            assertEquals(rule.part() + " `" + rule.measure() + "`", cells[2]);
            assertEquals(limits(rule), numbers(cells[3]), rule.name());
            assertEquals(rule.width(), Double.parseDouble(cells[4]));
            assertEquals(rule.strength().label(), cells[5]);
            assertEquals(rule.basis(), cells[6]);
        }
    }

    private static Set<Double> limits(Rule rule) {
        Set<Double> limits = new TreeSet<>();
        for (Guide guide : rule.guides().byGroup().values()) {
            Stream.of(guide.low(), guide.high()).filter(Double::isFinite).forEach(limits::add);
        }
        return limits;
    }

    private static Set<Double> numbers(String cell) {
        Set<Double> numbers = new TreeSet<>();
        Pattern.compile("-?[0-9.]+").matcher(cell).results().forEach(m -> numbers.add(Double.valueOf(m.group())));
        return numbers;
    }
}
