package org.boardtopit.observations;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.NearMiss;
import org.boardtopit.clips.YamlKeys;
import org.boardtopit.measures.EvidenceNames;
import org.boardtopit.wording.Language;

/**
 * Reads a file of rules, strictly; {@code docs/observations.md} describes its keys. An InputException says what is wrong, in
 * which line and column, and what would be right.
 */
public final class RuleSetReader {
    private static final List<String> TOP = List.of("cautions", "practice", "arms", "not_visible", "rules");
    private static final List<String> CAUTIONS = List.of("all", "junior", "masters");
    private static final List<String> PRACTICE = List.of("name", "text");
    private static final List<String> ARMS = List.of("text", "basis");
    private static final List<String> NOT_VISIBLE = List.of("topic", "text");
    private static final List<String> RULE = List.of(
            "rule",
            "topic",
            "part",
            "measure",
            "phase",
            "guides",
            "width",
            "basis",
            "strength",
            "remark_only",
            "below",
            "above",
            "inside",
            "set_up_by",
            "cannot_tell");
    private static final List<String> GUIDE = List.of("low", "high");
    private static final List<String> STATEMENT = List.of("finding", "text", "practice");

    private static final String NAME = "[a-z][a-z0-9_]*";
    private static final double MOST = 1000;
    private static final double LEAST_WIDTH = 0.001;
    private static final String RESOURCE = "observations.yaml";

    private static final Map<String, BasisStrength> STRENGTHS = new LinkedHashMap<>();
    private static final Map<String, Boolean> YES_NO = new LinkedHashMap<>();
    private static final Map<String, String> PHASES = new LinkedHashMap<>();
    /** Phase that a part belongs to, as in phases.csv: a support belongs to the flight after it. */
    private static final Map<String, String> PHASE_OF_PART = Map.of(
            "approach", "approach",
            "hop", "hop",
            "step", "step",
            "jump", "jump",
            "landing", "landing",
            "board", "hop",
            "hop_landing", "step",
            "step_landing", "jump",
            "pit", "landing");

    static {
        for (BasisStrength strength : BasisStrength.values()) {
            STRENGTHS.put(strength.label(), strength);
        }
        YES_NO.put("yes", true);
        YES_NO.put("no", false);
        for (String phase : List.of("approach", "hop", "step", "jump", "landing")) {
            PHASES.put(phase, phase);
        }
    }

    private final YamlKeys top;
    private final Language language;
    private final Map<String, Set<String>> measures = EvidenceNames.byPart();
    private final Map<String, String> practice = new LinkedHashMap<>();
    private final Set<String> ruleNames = new LinkedHashSet<>();

    private RuleSetReader(YamlKeys top, Language language) {
        this.top = top;
        this.language = language;
    }

    /** The rules of a competition, in its language: of the file it names, else those of the program. */
    public static RuleSet of(MeetSheet meet) throws InputException {
        return meet.observationRules().isPresent()
                ? read(meet.observationRules().get(), meet.language())
                : builtIn(meet.language());
    }

    /** The rules of a file. */
    public static RuleSet read(Path file, Language language) throws InputException {
        return new RuleSetReader(YamlKeys.read(file, TOP), language).rules();
    }

    /** The rules that come with the program: those of {@code sample-config/observations.yaml}. */
    public static RuleSet builtIn(Language language) {
        try (InputStream in = RuleSetReader.class.getResourceAsStream(RESOURCE)) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return new RuleSetReader(YamlKeys.read(Path.of(RESOURCE), text, TOP), language).rules();
        } catch (IOException | InputException e) {
            throw new IllegalStateException("the rules of the program itself cannot be read", e);
        }
    }

    private RuleSet rules() throws InputException {
        for (YamlKeys item : top.list("practice", PRACTICE)) {
            String name = newName(item, "name", practice.keySet());
            practice.put(name, sentences(item, "text"));
        }
        List<YamlKeys> items = top.list("rules", RULE);
        for (YamlKeys item : items) {
            ruleNames.add(newName(item, "rule", ruleNames));
        }
        List<Rule> rules = new ArrayList<>();
        for (YamlKeys item : items) {
            rules.add(rule(item));
        }
        refuseCircles(items, rules);
        return new RuleSet(language, cautions(), practice, arms(), notVisible(rules), rules);
    }

    private static String newName(YamlKeys item, String key, Set<String> taken) throws InputException {
        String name = needed(item, key, false);
        if (!name.matches(NAME)) {
            throw item.problem(
                    key,
                    key + " must be a word of small letters, digits and _ such as step_trunk, was "
                            + InputException.quoted(name));
        }
        if (taken.contains(name)) {
            throw item.problem(key, "there are two with the name " + InputException.quoted(name));
        }
        return name;
    }

    private static String needed(YamlKeys item, String key, boolean prose) throws InputException {
        String text = prose ? item.prose(key) : item.text(key);
        if (text.isEmpty()) {
            throw missing(item, key);
        }
        return text;
    }

    private RuleSet.Cautions cautions() throws InputException {
        YamlKeys keys = top.keys("cautions", CAUTIONS);
        return new RuleSet.Cautions(caution(keys, "all"), caution(keys, "junior"), caution(keys, "masters"));
    }

    private String caution(YamlKeys keys, String key) throws InputException {
        return TranslatedText.sentences(keys, key).in(language);
    }

    private Optional<RuleSet.Arms> arms() throws InputException {
        YamlKeys keys = top.keys("arms", ARMS);
        return top.has("arms")
                ? Optional.of(new RuleSet.Arms(sentences(keys, "text"), needed(keys, "basis", true)))
                : Optional.empty();
    }

    private Map<String, String> notVisible(List<Rule> rules) throws InputException {
        List<String> topics = rules.stream().map(Rule::topic).toList();
        Map<String, String> texts = new LinkedHashMap<>();
        for (YamlKeys item : top.list("not_visible", NOT_VISIBLE)) {
            String topic = needed(item, "topic", false);
            if (!topics.contains(topic)) {
                throw item.problem(
                        "topic",
                        "no rule has the topic " + InputException.quoted(topic) + NearMiss.hint(topic, topics));
            }
            texts.put(topic, sentences(item, "text"));
        }
        return texts;
    }

    private Rule rule(YamlKeys item) throws InputException {
        String part = part(item);
        Guides guides = guides(item);
        boolean low = guides.byGroup().values().stream().anyMatch(g -> !Double.isNaN(g.low()));
        boolean high = guides.byGroup().values().stream().anyMatch(g -> !Double.isNaN(g.high()));
        double width = item.number("width", LEAST_WIDTH, MOST, "5");
        if (Double.isNaN(width)) {
            throw item.problem("width", "width is missing here; by how much is a value plainly outside? such as 5");
        }
        String phase = item.oneOf("phase", PHASES).orElse(PHASE_OF_PART.getOrDefault(part, ""));
        return new Rule(
                needed(item, "rule", false),
                topic(item),
                part,
                measure(item, part),
                phase,
                guides,
                width,
                needed(item, "basis", true),
                item.oneOf("strength", STRENGTHS)
                        .orElseThrow(() -> item.problem(
                                "strength",
                                "strength is missing here; one of " + String.join(", ", STRENGTHS.keySet()))),
                item.oneOf("remark_only", YES_NO).orElse(false),
                side(item, "below", "low", low),
                side(item, "above", "high", high),
                item.has("inside") ? Optional.of(statement(item, "inside")) : Optional.empty(),
                item.words("set_up_by", ruleNames, "rule"),
                TranslatedText.sentences(item, "cannot_tell").in(language));
    }

    private static String topic(YamlKeys item) throws InputException {
        String topic = needed(item, "topic", false);
        if (!topic.matches(NAME)) {
            throw item.problem(
                    "topic",
                    "topic must be a word of small letters, digits and _ such as free_leg, was "
                            + InputException.quoted(topic));
        }
        return topic;
    }

    private String part(YamlKeys item) throws InputException {
        String part = needed(item, "part", false);
        if (!measures.containsKey(part)) {
            throw item.problem(
                    "part",
                    "part must be one of " + String.join(", ", measures.keySet()) + ", was "
                            + InputException.quoted(part));
        }
        return part;
    }

    private String measure(YamlKeys item, String part) throws InputException {
        String measure = needed(item, "measure", false);
        Set<String> known = measures.get(part);
        if (!known.contains(measure)) {
            String hint = NearMiss.hint(measure, known);
            throw item.problem(
                    "measure",
                    part + " has no measure " + InputException.quoted(measure)
                            + (hint.isEmpty() ? "; it has " + String.join(", ", known) : hint));
        }
        return measure;
    }

    private static Guides guides(YamlKeys item) throws InputException {
        YamlKeys groups = item.keys("guides", Guides.GROUPS);
        Map<String, Guide> byGroup = new LinkedHashMap<>();
        for (String group : Guides.GROUPS) {
            if (groups.has(group)) {
                byGroup.put(group, guide(groups, group));
            }
        }
        Optional<String> missing = Guides.missing(byGroup);
        if (missing.isPresent()) {
            throw item.problem(
                    "guides", "there is no guide for " + missing.get() + "; give senior, junior and masters, or all");
        }
        return new Guides(byGroup);
    }

    private static Guide guide(YamlKeys groups, String group) throws InputException {
        YamlKeys limits = groups.keys(group, GUIDE);
        double low = limits.number("low", -MOST, MOST, "12");
        double high = limits.number("high", -MOST, MOST, "16");
        if (Double.isNaN(low) && Double.isNaN(high)) {
            throw groups.problem(group, "a guide has a low or a high limit or both, such as {low: 12, high: 16}");
        }
        if (low > high) {
            throw limits.problem("low", "low must not be above high, was " + low + " and " + high);
        }
        return new Guide(low, high);
    }

    /** What is said on one side is there when, and only when, the guide has a limit on it. */
    private Optional<Statement> side(YamlKeys item, String key, String limit, boolean limited) throws InputException {
        if (limited != item.has(key)) {
            throw item.problem(
                    key,
                    limited
                            ? "the guide has a " + limit + " limit, but nothing is said for values " + key + " it; add "
                                    + key + " with finding and text"
                            : key + " is of use only together with a " + limit + " limit in guides");
        }
        return limited ? Optional.of(statement(item, key)) : Optional.empty();
    }

    private Statement statement(YamlKeys item, String key) throws InputException {
        YamlKeys keys = item.keys(key, STATEMENT);
        TranslatedText finding = given(keys, "finding", TranslatedText.words(keys, "finding"));
        return new Statement(
                finding.in(Language.ENGLISH), // in every language, so that tables of several competitions can be joined
                finding.in(language),
                sentences(keys, "text"),
                keys.words("practice", practice.keySet(), "practice"));
    }

    private String sentences(YamlKeys item, String key) throws InputException {
        return given(item, key, TranslatedText.sentences(item, key)).in(language);
    }

    private static TranslatedText given(YamlKeys item, String key, TranslatedText text) throws InputException {
        if (text.isEmpty()) {
            throw missing(item, key);
        }
        return text;
    }

    private static InputException missing(YamlKeys item, String key) {
        return item.problem(key, key + " is missing here");
    }

    private static void refuseCircles(List<YamlKeys> items, List<Rule> rules) throws InputException {
        Map<String, Rule> byName = new LinkedHashMap<>();
        rules.forEach(r -> byName.put(r.name(), r));
        for (int i = 0; i < rules.size(); i++) {
            Set<String> before = new HashSet<>();
            if (leadsTo(rules.get(i).name(), rules.get(i), byName, before)) {
                throw items.get(i)
                        .problem(
                                "set_up_by",
                                "a rule cannot be set up by itself, but following set_up_by from "
                                        + rules.get(i).name() + " leads back to it");
            }
        }
    }

    private static boolean leadsTo(String goal, Rule from, Map<String, Rule> byName, Set<String> seen) {
        for (String name : from.setUpBy()) {
            if (name.equals(goal) || (seen.add(name) && leadsTo(goal, byName.get(name), byName, seen))) {
                return true;
            }
        }
        return false;
    }
}
