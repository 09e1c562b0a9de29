package org.boardtopit.observations;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.measures.Evidence;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.wording.Language;

/**
 * Holds an attempt's numbers against rules.
 *
 * <p>A finding is a number whose whole 90 % interval lies outside the guide; where the interval straddles a limit nothing is said. At
 * most three findings are priorities, one for each topic, causes before what they set up ({@link CauseOrder}); at most three
 * strengths are named, of topics without findings; the other findings stay remarks.
 */
public final class Observer {
    private static final int MOST_PRIORITIES = 3;
    private static final int MOST_STRENGTHS = 3;
    /** What is less far out is no priority unless it explains one, what is less far in no strength. A first guess. */
    private static final double LEAST_WIDTHS = 0.25;

    /** Deeper inside a guide is not better: beyond this many widths the confidence of a strength grows no more. */
    private static final double MOST_INSIDE = 1.5;

    /** Findings stand in the tables as they are in English: other programs look for them. */
    private static final Sentences IN_TABLES = new Sentences(Language.ENGLISH);

    private final RuleSet rules;
    private final Sentences said;

    /** By these rules and in their language. */
    public Observer(RuleSet rules) {
        this.rules = rules;
        this.said = new Sentences(rules.language());
    }

    /** Priorities in their order, then strengths, then other remarks, then what is not visible; nothing of what is no jump. */
    public List<Observation> observe(ObservedAttempt attempt) {
        if (attempt.contacts().isEmpty()) {
            return List.of();
        }
        return new Sight(attempt).observations();
    }

    private final class Sight {
        private final ObservedAttempt attempt;
        private final List<Finding> outside = new ArrayList<>();
        private final List<Finding> inside = new ArrayList<>();
        private final CauseOrder order;
        private final List<Observation> result = new ArrayList<>();

        Sight(ObservedAttempt attempt) {
            this.attempt = attempt;
            rules.rules().forEach(this::hold);
            order = new CauseOrder(outside);
        }

        private void hold(Rule rule) {
            Optional<Evidence> evidence = attempt.evidence().of(rule.part(), rule.measure());
            // Without a stated uncertainty it cannot be told whether the value straddles the guide.
            if (evidence.isEmpty() || !Double.isFinite(evidence.get().reading().sd())) {
                return;
            }
            Interval interval = Interval.of(evidence.get().reading());
            Guide guide = rule.guides().at(attempt.level(), attempt.sex());
            double below = guide.below(interval);
            double above = guide.above(interval);
            if (below > 0) {
                add(outside, rule, rule.below(), evidence.get(), below);
            } else if (above > 0) {
                add(outside, rule, rule.above(), evidence.get(), above);
            } else if (guide.inside(interval) > 0) {
                add(inside, rule, rule.inside(), evidence.get(), guide.inside(interval));
            }
        }

        private void add(
                List<Finding> to, Rule rule, Optional<Statement> statement, Evidence evidence, double distance) {
            if (statement.isEmpty()) {
                return;
            }
            double widths = distance / rule.width();
            double counted = to == inside ? Math.min(widths, MOST_INSIDE) : widths;
            double score = Confidence.score(
                    counted, rule.strength(), attempt.quality(), attempt.contactConfidence(rule.part()));
            Guide guide = rule.guides().at(attempt.level(), attempt.sex());
            to.add(new Finding(rule, statement.get(), evidence, Interval.of(evidence.reading()), guide, widths, score));
        }

        List<Observation> observations() {
            List<Finding> sorted = order.sorted(outside);
            List<Finding> priorities = firstOfTopics(sorted, MOST_PRIORITIES, Set.of());
            priorities.forEach(f -> add(Kind.PRIORITY, f));
            Set<String> faulty = new HashSet<>();
            outside.forEach(f -> faulty.add(f.rule().topic()));
            inside.sort(Comparator.comparingDouble(Finding::weight).reversed());
            firstOfTopics(inside, MOST_STRENGTHS, faulty).forEach(f -> add(Kind.STRENGTH, f));
            sorted.stream().filter(f -> !priorities.contains(f)).forEach(f -> add(Kind.REMARK, f));
            arms();
            rules.notVisible().forEach(this::notVisible);
            return List.copyOf(result);
        }

        private List<Finding> firstOfTopics(List<Finding> sorted, int most, Set<String> without) {
            List<Finding> chosen = new ArrayList<>();
            Set<String> topics = new HashSet<>(without);
            for (Finding f : sorted) {
                boolean counts = !f.rule().remarkOnly() && (f.widths() >= LEAST_WIDTHS || order.explainsAHeavierOne(f));
                if (counts && chosen.size() < most && topics.add(f.rule().topic())) {
                    chosen.add(f);
                }
            }
            return chosen;
        }

        private void add(Kind kind, Finding f) {
            Rule rule = f.rule();
            Optional<Finding> cause = kind == Kind.STRENGTH ? Optional.empty() : order.cause(f);
            result.add(new Observation(
                    result.size() + 1,
                    kind,
                    rule.topic(),
                    rule.phase(),
                    f.statement().finding(),
                    f.statement().heading(),
                    Optional.of(measured(f)),
                    basis(rule.basis()),
                    Confidence.of(f.score()),
                    f.widths(),
                    cause.map(Sight::named).orElse(""),
                    attempt.level(),
                    text(f, cause),
                    practice(f.statement())));
        }

        private Observation.Measured measured(Finding f) {
            Evidence e = f.evidence();
            return new Observation.Measured(
                    e.part(),
                    e.measure(),
                    e.atS(),
                    e.reading().value(),
                    f.interval(),
                    MeasureUnit.of(e.measure()),
                    f.guide());
        }

        private static String named(Finding f) {
            String phase = f.rule().phase();
            return (phase.isEmpty() ? "" : phase + ": ") + f.statement().finding();
        }

        private String text(Finding f, Optional<Finding> cause) {
            List<String> texts = new ArrayList<>(List.of(f.statement().text(), said.measured(f)));
            cause.ifPresent(c -> texts.add(said.setUpBy(c)));
            texts.add(f.rule().cannotTell());
            return String.join(" ", texts).strip();
        }

        private String basis(String basis) {
            return basis
                    + switch (attempt.level()) {
                        case MASTERS -> "; no published reference for masters, compare with own earlier attempts";
                        case NOT_STATED -> "; level not stated: the widest guide of senior, junior and masters";
                        case SENIOR, JUNIOR -> "";
                    };
        }

        private String practice(Statement statement) {
            if (statement.practice().isEmpty()) {
                return "";
            }
            List<String> texts = new ArrayList<>(
                    statement.practice().stream().map(rules.practice()::get).toList());
            texts.add(rules.cautions().of(attempt.level()));
            return String.join(" ", texts);
        }

        private void arms() {
            String finding = IN_TABLES.arms(attempt.arms());
            if (rules.arms().isPresent() && !finding.isEmpty()) {
                RuleSet.Arms arms = rules.arms().get();
                told(Kind.REMARK, "arms", finding, said.arms(attempt.arms()), arms.basis(), arms.text());
            }
        }

        private void notVisible(String topic, String text) {
            boolean seen = rules.rules().stream()
                    .filter(r -> r.topic().equals(topic))
                    .anyMatch(r -> attempt.evidence().of(r.part(), r.measure()).isPresent());
            if (!seen) {
                told(Kind.NOT_VISIBLE, topic, IN_TABLES.notVisible(), said.notVisible(), "", text);
            }
        }

        private void told(Kind kind, String topic, String finding, String heading, String basis, String text) {
            result.add(new Observation(
                    result.size() + 1,
                    kind,
                    topic,
                    "",
                    finding,
                    heading,
                    Optional.empty(),
                    basis,
                    Confidence.LOW,
                    Double.NaN,
                    "",
                    attempt.level(),
                    text,
                    ""));
        }
    }
}
