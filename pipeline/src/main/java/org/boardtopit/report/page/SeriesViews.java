package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.report.page.FindingChoice.Found;
import org.boardtopit.report.page.FindingChoice.Seen;
import org.boardtopit.report.page.SeriesView.FindingView;
import org.boardtopit.report.page.SeriesView.First;
import org.boardtopit.report.page.SeriesView.Still;
import org.boardtopit.report.plot.SeriesPlot;
import org.boardtopit.report.stills.StillInstant;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.ObservationRow;
import org.boardtopit.wording.Words;

/** Puts one athlete into words. */
final class SeriesViews {
    private final Words words;
    private final Figures figures;
    private final Naming naming;
    private final PageFiles files;
    private final AttemptViews attempts;
    private final ComparisonVideos comparisons;

    SeriesViews(Words words, PageFiles files, List<Series> all) {
        this.words = words;
        this.figures = new Figures(words);
        this.naming = new Naming(words);
        this.files = files;
        this.attempts = new AttemptViews(words, files);
        this.comparisons = new ComparisonVideos(words, files, all);
    }

    static String id(Series series) {
        return "athlete-" + series.number();
    }

    SeriesView view(Series series) {
        List<FindingView> priorities = findings(series, Kind.PRIORITY);
        List<FindingView> strengths = findings(series, Kind.STRENGTH);
        return new SeriesView(
                id(series),
                naming.athlete(series),
                best(series),
                progress(series).orElse(""),
                progressPlot(series),
                first(priorities, strengths),
                priorities,
                strengths,
                FindingChoice.all(series, Kind.REMARK).stream()
                        .map(found -> finding(series, found))
                        .toList(),
                FindingChoice.all(series, Kind.NOT_VISIBLE).stream()
                        .map(found -> orEmpty(found.plainest().row().text()))
                        .toList(),
                new SeriesPlots(words, series).all(),
                new BestAgainstOthers(words).view(series).orElse(null),
                comparisons.of(series),
                series.attempts().stream()
                        .map(attempt -> attempts.view(series, attempt))
                        .toList());
    }

    private First first(List<FindingView> priorities, List<FindingView> strengths) {
        if (!priorities.isEmpty()) {
            return new First(words.get("first_priority"), priorities.get(0).finding());
        }
        return strengths.isEmpty()
                ? null
                : new First(words.get("first_strength"), strengths.get(0).finding());
    }

    private String progressPlot(Series series) {
        if (series.withDistance().size() < 2) {
            return "";
        }
        SeriesPlot plot = new SeriesPlot(naming.withoutName(series) + ": " + words.get("plot_series"));
        for (Attempt attempt : series.attempts()) {
            double value = attempt.hasDistance() ? attempt.row().officialM() : Double.NaN;
            String text = attempt.hasDistance()
                    ? words.number(attempt.row().officialM(), 2)
                    : attempt.row().result() == null
                            ? ""
                            : attempt.row().result().symbol();
            plot.add(new SeriesPlot.Point(
                    naming.shortly(series, attempt), value, text, series.isBest(attempt) ? "pb" : "pd"));
        }
        return plot.markup();
    }

    private String best(Series series) {
        return series.best()
                .map(best -> words.format("best_of", naming.distance(figures, best), naming.shortly(series, best)))
                .orElse("");
    }

    /** From the first distance to the best; empty with fewer than two distances. Judges' distances are exact to the centimetre. */
    Optional<String> progress(Series series) {
        List<Attempt> measured = series.withDistance();
        if (measured.size() < 2) {
            return Optional.empty();
        }
        Attempt first = measured.get(0);
        Attempt best = series.best().orElseThrow();
        double gain = best.row().officialM() - first.row().officialM();
        if (gain <= 0) {
            return Optional.of(words.get("progress_none"));
        }
        return Optional.of(words.format("progress_better", figures.metres(gain), naming.shortly(series, first)));
    }

    private List<FindingView> findings(Series series, Kind kind) {
        return FindingChoice.first(series, kind).stream()
                .map(found -> finding(series, found))
                .toList();
    }

    private FindingView finding(Series series, Found found) {
        Seen plainest = found.plainest();
        ObservationRow row = plainest.row();
        return new FindingView(
                capital(row.heading()),
                where(series, found),
                orEmpty(row.text()),
                orEmpty(row.causedBy()),
                orEmpty(row.practice()),
                row.confidence() == null ? "" : naming.word("confidence", row.confidence()),
                still(series, plainest).orElse(null),
                chapter(series, plainest).orElse(null));
    }

    private static String orEmpty(String text) {
        return text == null ? "" : text;
    }

    private String capital(String text) {
        return text.isEmpty()
                ? text
                : text.substring(0, 1).toUpperCase(words.language().locale()) + text.substring(1);
    }

    private String where(Series series, Found found) {
        String phase = found.plainest().row().phase() == null
                ? ""
                : naming.word("phase", found.plainest().row().phase()) + " · ";
        String seen = found.seen().stream()
                .map(one -> naming.shortly(series, one.attempt()))
                .collect(Collectors.joining(", "));
        return phase + words.format(found.seen().size() == 1 ? "seen_once" : "seen_in", seen);
    }

    private Optional<AttemptView.Chapter> chapter(Series series, Seen seen) {
        Double atS = seen.row().atS();
        return atS == null
                ? Optional.empty()
                : attempts.chapter(seen.attempt(), atS, naming.attempt(series, seen.attempt()));
    }

    /** The picture nearest in time. */
    private Optional<Still> still(Series series, Seen seen) {
        Double atS = seen.row().atS();
        if (atS == null) {
            return Optional.empty();
        }
        List<Instant> instants = instants(seen.attempt());
        return instants.stream()
                .min((a, b) -> Double.compare(Math.abs(a.atS() - atS), Math.abs(b.atS() - atS)))
                .map(instant -> {
                    String caption = instant.of() == StillInstant.FLIGHT
                            ? naming.flight(instant.contact().kind())
                            : naming.word("contact", instant.contact().kind()) + ", "
                                    + naming.word("instant", instant.of());
                    String who = naming.withoutName(series) + ", " + naming.attempt(series, seen.attempt());
                    return new Still(instant.link(), caption + ". " + who, caption + ". " + who);
                });
    }

    /** Of which there is a picture. */
    private record Instant(ContactRow contact, StillInstant of, double atS, String link) {}

    private List<Instant> instants(Attempt attempt) {
        List<Instant> instants = new ArrayList<>();
        List<ContactRow> contacts = attempt.contacts();
        for (int i = 0; i < contacts.size(); i++) {
            ContactRow contact = contacts.get(i);
            Double next = i + 1 < contacts.size() ? contacts.get(i + 1).touchdownS() : null;
            add(instants, attempt, contact, StillInstant.TOUCHDOWN, contact.touchdownS());
            add(instants, attempt, contact, StillInstant.MID_SUPPORT, middle(contact.touchdownS(), contact.toeOffS()));
            add(instants, attempt, contact, StillInstant.TOE_OFF, contact.toeOffS());
            add(instants, attempt, contact, StillInstant.FLIGHT, middle(contact.toeOffS(), next));
        }
        return instants;
    }

    private static Double middle(Double from, Double to) {
        return from == null || to == null ? null : (from + to) / 2;
    }

    private void add(List<Instant> instants, Attempt attempt, ContactRow contact, StillInstant of, Double atS) {
        if (atS != null) {
            files.still(attempt.file().name(), contact.contact(), of)
                    .ifPresent(link -> instants.add(new Instant(contact, of, atS, link)));
        }
    }
}
