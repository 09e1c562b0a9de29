package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.report.Difference;
import org.boardtopit.report.page.SeriesView.ComparisonView;
import org.boardtopit.report.page.SeriesView.DifferenceView;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.wording.Words;

/** In what an athlete's best attempt was another one than the mean of the others, beyond what chance in the measuring explains. */
final class BestAgainstOthers {
    private static final List<Compared> COMPARED = List.of(
            Compared.attempt("approach_speed_ms", "m/s"),
            Compared.attempt("last_stride_m", "m"),
            Compared.phase("hop", "distance_m", "m"),
            Compared.phase("step", "distance_m", "m"),
            Compared.phase("jump", "distance_m", "m"),
            Compared.phase("hop", "share_pct", "%"),
            Compared.phase("step", "share_pct", "%"),
            Compared.phase("jump", "share_pct", "%"),
            Compared.phase("hop", "support_time_s", "s"),
            Compared.phase("step", "support_time_s", "s"),
            Compared.phase("jump", "support_time_s", "s"),
            Compared.phase("hop", "takeoff_angle_deg", "°"),
            Compared.phase("step", "takeoff_angle_deg", "°"),
            Compared.phase("jump", "takeoff_angle_deg", "°"),
            Compared.phase("hop", "speed_change_ms", "m/s"),
            Compared.phase("step", "speed_change_ms", "m/s"),
            Compared.phase("jump", "speed_change_ms", "m/s"),
            Compared.contact(ContactKind.HOP_LANDING, "leg_plant_touchdown_deg", "°"),
            Compared.contact(ContactKind.STEP_LANDING, "leg_plant_touchdown_deg", "°"),
            Compared.contact(ContactKind.BOARD, "knee_toe_off_deg", "°"),
            Compared.contact(ContactKind.HOP_LANDING, "trunk_touchdown_deg", "°"),
            Compared.contact(ContactKind.STEP_LANDING, "trunk_touchdown_deg", "°"),
            Compared.phase("step", "free_thigh_hold_pct", "%"));

    /** Of a phase these belong to the support that it begins with. */
    private static final Set<String> ON_THE_GROUND = Set.of("support_time_s", "speed_change_ms");

    private static final Map<String, ContactKind> SUPPORT = Map.of(
            "hop", ContactKind.BOARD,
            "step", ContactKind.HOP_LANDING,
            "jump", ContactKind.STEP_LANDING);

    private final Words words;
    private final Figures figures;
    private final Naming naming;
    private int compared;

    BestAgainstOthers(Words words) {
        this.words = words;
        this.figures = new Figures(words);
        this.naming = new Naming(words);
    }

    /** One measure of an attempt, phase or contact; the two that it does not belong to are null. */
    private record Compared(String phase, ContactKind contact, String measure, String unit) {
        static Compared attempt(String measure, String unit) {
            return new Compared(null, null, measure, unit);
        }

        static Compared phase(String phase, String measure, String unit) {
            return new Compared(phase, null, measure, unit);
        }

        static Compared contact(ContactKind contact, String measure, String unit) {
            return new Compared(null, contact, measure, unit);
        }

        Optional<IntervalRow> of(Attempt attempt) {
            if (phase != null) {
                return attempt.intervals().ofPhase(phase, measure);
            }
            return contact == null
                    ? attempt.intervals().ofAttempt(measure)
                    : attempt.contact(contact)
                            .flatMap(row -> attempt.intervals().ofContact(row.contact(), measure));
        }
    }

    /** Empty when there is no best attempt, or no other to hold it against. */
    Optional<ComparisonView> view(Series series) {
        Optional<Attempt> best = series.best().filter(Attempt::isTripleJump);
        if (best.isEmpty() || series.tripleJumps().size() < 2) {
            return Optional.empty();
        }
        List<Attempt> others = new ArrayList<>(series.tripleJumps());
        others.removeIf(series::isBest);
        List<DifferenceView> differences = new ArrayList<>();
        for (Compared measure : COMPARED) {
            difference(measure, best.get(), others).ifPresent(differences::add);
        }
        String sentence = words.format(
                others.size() == 1 ? "comparison_one" : "comparison_mean",
                naming.shortly(series, best.get()),
                naming.distance(figures, best.get()),
                others.size() == 1 ? naming.shortly(series, others.get(0)) : others.size());
        return Optional.of(new ComparisonView(sentence, differences, note(differences.size())));
    }

    private String note(int shown) {
        // 90 % intervals: one number in ten stands out although nothing was different.
        return words.format("comparison_note", compared, Math.round(0.1 * compared), shown);
    }

    private Optional<DifferenceView> difference(Compared measure, Attempt best, List<Attempt> others) {
        Optional<IntervalRow> one = measure.of(best);
        List<IntervalRow> rest =
                others.stream().map(measure::of).flatMap(Optional::stream).toList();
        if (one.isEmpty() || rest.isEmpty()) {
            return Optional.empty();
        }
        compared++;
        Difference difference = Difference.fromMean(one.get(), rest);
        if (!difference.isBeyondUncertainty()) {
            return Optional.empty();
        }
        int decimals = Figures.decimals(difference.pm90());
        double mean = rest.stream().mapToDouble(IntervalRow::value).average().orElseThrow();
        return Optional.of(new DifferenceView(
                name(measure),
                figures.withUnit(words.number(one.get().value(), decimals), measure.unit()),
                figures.withUnit(words.number(mean, decimals), measure.unit()),
                figures.withUnit(figures.withPlusMinus(difference), measure.unit())));
    }

    private String name(Compared measure) {
        String name = words.get("measure_" + measure.measure());
        if (ON_THE_GROUND.contains(measure.measure())) {
            return naming.word("contact", SUPPORT.get(measure.phase())) + ": " + name;
        }
        if (measure.phase() != null) {
            return words.get("phase_" + measure.phase()) + ": " + name;
        }
        return measure.contact() == null ? name : naming.word("contact", measure.contact()) + ": " + name;
    }
}
