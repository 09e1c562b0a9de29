package org.boardtopit.season.page;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.boardtopit.report.page.Figures;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.season.Entrant;
import org.boardtopit.season.MeasuredAttempt;
import org.boardtopit.season.Recurring;
import org.boardtopit.season.SeasonAthlete;
import org.boardtopit.season.Series;
import org.boardtopit.season.Trend;
import org.boardtopit.season.page.SeasonView.AthleteView;
import org.boardtopit.season.page.SeasonView.CompetitionView;
import org.boardtopit.season.page.SeasonView.RecurringView;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/** What a season says of one athlete, in words. */
final class AthleteWords {
    private final Words words;
    private final Words shared;
    private final Figures figures;
    private final SeasonAthlete athlete;
    private final List<List<Entrant>> competitions;
    private final List<Series> all;

    AthleteWords(Words words, Words shared, SeasonAthlete athlete) {
        this.words = words;
        this.shared = shared;
        this.figures = new Figures(words);
        this.athlete = athlete;
        this.competitions = athlete.competitions();
        this.all = Stream.of(AthleteMeasure.values())
                .map(measure -> Series.of(athlete, measure))
                .flatMap(Optional::stream)
                .toList();
    }

    AthleteView view(String id) {
        List<Trend> trends = all.stream().map(Trend::of).toList();
        boolean several = competitions.size() > 1;
        return new AthleteView(
                id,
                athlete.label(),
                lead(),
                best(),
                trendSentences(trends),
                trendNote(trends),
                words.format(
                        "changes_of",
                        dayAndName(competitions.get(competitions.size() - 1).get(0))),
                several ? changes() : List.of(),
                Recurring.of(athlete).stream().map(this::recurring).toList(),
                several ? new SeasonPlots(words, all).plots() : List.of(),
                competitions.stream().map(this::competition).toList());
    }

    private String lead() {
        int attempts = SeasonAthlete.attempts(athlete.appearances()).size();
        return words.format(
                "lead",
                attempts,
                competitions.size(),
                words.get("joined_" + athlete.joinedBy().label()));
    }

    private String best() {
        Entrant at = null;
        double best = Double.NaN;
        for (Entrant entrant : athlete.appearances()) {
            for (MeasuredAttempt attempt : entrant.attempts()) {
                if (attempt.bestM() > best || (Double.isNaN(best) && Double.isFinite(attempt.bestM()))) {
                    best = attempt.bestM();
                    at = entrant;
                }
            }
        }
        return at == null ? "" : words.format("best_of_season", figures.metres(best), dayAndName(at));
    }

    private String dayAndName(Entrant entrant) {
        String day = words.date(entrant.date());
        return entrant.competition().isEmpty() ? day : entrant.competition() + ", " + day;
    }

    private String name(Series series) {
        return words.get("measure_" + series.measure().key());
    }

    private String inUnit(double value, double pm, Series series) {
        return figures.withUnit(
                figures.finer(value, pm), words.get("unit_" + series.measure().unitName()));
    }

    private List<String> trendSentences(List<Trend> trends) {
        List<String> sentences = new ArrayList<>();
        for (int i = 0; i < all.size(); i++) {
            Trend trend = trends.get(i);
            if (trend.direction() == Trend.Direction.RISING || trend.direction() == Trend.Direction.FALLING) {
                sentences.add(words.format(
                        "trend_" + trend.direction().label(),
                        name(all.get(i)),
                        inUnit(Math.abs(trend.perMonth()), trend.pm(), all.get(i)),
                        Integer.toString(trend.competitions())));
            }
        }
        if (sentences.isEmpty()) {
            sentences.add(words.get(isTooFew(trends, true) ? "trend_few" : "trend_none"));
        }
        return sentences;
    }

    private String trendNote(List<Trend> trends) {
        return isTooFew(trends, false) && !isTooFew(trends, true) ? words.get("trend_note_few") : "";
    }

    private static boolean isTooFew(List<Trend> trends, boolean everywhere) {
        Stream<Trend> each = trends.stream();
        return everywhere
                ? each.allMatch(t -> t.direction() == Trend.Direction.TOO_FEW)
                : each.anyMatch(t -> t.direction() == Trend.Direction.TOO_FEW);
    }

    private List<String> changes() {
        Entrant last = competitions.get(competitions.size() - 1).get(0);
        List<String> sentences = new ArrayList<>();
        boolean known = false;
        for (Series series : all) {
            Optional<Series.Change> change =
                    series.last().date().equals(last.date()) ? series.change() : Optional.empty();
            known |= change.map(c -> Double.isFinite(c.pm())).orElse(false);
            change.filter(Series.Change::isBeyondUncertainty)
                    .ifPresent(c -> sentences.add(words.format(
                            c.value() > 0 ? "change_more" : "change_less",
                            name(series),
                            inUnit(Math.abs(c.value()), c.pm(), series))));
        }
        if (sentences.isEmpty()) {
            sentences.add(words.get(known ? "change_none" : "change_unknown"));
        }
        return sentences;
    }

    private RecurringView recurring(Recurring r) {
        String phase = r.phase().isEmpty() ? words.get("whole_attempt") : shared.get("phase_" + r.phase());
        String kind = words.get(r.strength() ? "recurring_strength" : "recurring_work");
        boolean english = words.language() == Language.ENGLISH;
        return new RecurringView(
                english ? r.finding() : r.heading(),
                kind + " · " + phase,
                words.format(
                        "recurring_seen",
                        Integer.toString(r.seen()),
                        Integer.toString(r.competitions()),
                        Integer.toString(r.attemptsSeen()),
                        Integer.toString(r.attempts()),
                        words.date(r.last())));
    }

    private CompetitionView competition(List<Entrant> entrants) {
        List<MeasuredAttempt> attempts = SeasonAthlete.attempts(entrants);
        Optional<MeasuredAttempt> best = attempts.stream()
                .filter(a -> Double.isFinite(a.bestM()))
                .max(Comparator.comparingDouble(MeasuredAttempt::bestM));
        Entrant first = entrants.get(0);
        return new CompetitionView(
                first.competition().isEmpty() ? words.get("no_name") : first.competition(),
                words.date(first.date()),
                Integer.toString(attempts.size()),
                best.map(a -> figures.metres(a.bestM())).orElse(""),
                best.filter(a -> Double.isFinite(a.windMs()))
                        .map(a -> figures.signed(a.windMs(), 1, "m/s"))
                        .orElse(""));
    }
}
