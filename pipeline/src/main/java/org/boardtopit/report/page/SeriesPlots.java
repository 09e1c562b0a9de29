package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.report.plot.IntervalPlot;
import org.boardtopit.report.plot.IntervalPlot.Group;
import org.boardtopit.report.plot.IntervalPlot.Row;
import org.boardtopit.report.plot.IntervalPlot.Shape;
import org.boardtopit.report.plot.RhythmPlot;
import org.boardtopit.report.plot.RhythmPlot.Beat;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.IntervalRow;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.wording.Words;

/** The plots that lay the attempts of one athlete side by side. */
final class SeriesPlots {
    private static final List<String> PHASES = List.of("hop", "step", "jump");
    private static final List<ContactKind> SUPPORTS =
            List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING);

    private final Words words;
    private final Figures figures;
    private final Naming naming;
    private final Series series;
    private final String who;

    SeriesPlots(Words words, Series series) {
        this.words = words;
        this.figures = new Figures(words);
        this.naming = new Naming(words);
        this.series = series;
        this.who = naming.withoutName(series);
    }

    /**
     * A plot with what it shows.
     *
     * @param note below it; empty text where nothing needs to be said
     */
    record Plot(String title, String svg, String note) {}

    /** Those of which something is measured. */
    List<Plot> all() {
        List<Plot> plots = new ArrayList<>();
        shares().ifPresent(plots::add);
        rhythm().ifPresent(plots::add);
        speedLoss().ifPresent(plots::add);
        angles("knee").ifPresent(plots::add);
        angles("trunk").ifPresent(plots::add);
        return plots;
    }

    private Optional<Plot> shares() {
        IntervalPlot plot = new IntervalPlot(label("plot_shares"));
        for (String phase : PHASES) {
            List<Row> rows = new ArrayList<>();
            for (Attempt attempt : series.tripleJumps()) {
                attempt.intervals()
                        .ofPhase(phase, "share_pct")
                        .map(row -> bar(name(attempt, phase), row, phase))
                        .ifPresent(rows::add);
            }
            plot.add(new Group(words.get("phase_" + phase), rows));
        }
        return finished(plot, "plot_shares", "");
    }

    private Optional<Plot> speedLoss() {
        IntervalPlot plot = new IntervalPlot(label("plot_speed"));
        for (int i = 0; i < PHASES.size(); i++) {
            String phase = PHASES.get(i);
            List<Row> rows = new ArrayList<>();
            for (Attempt attempt : series.tripleJumps()) {
                attempt.intervals()
                        .ofPhase(phase, "speed_change_ms")
                        .map(SeriesPlots::negative)
                        .map(row -> bar(name(attempt, phase), row, phase))
                        .ifPresent(rows::add);
            }
            plot.add(new Group(naming.word("contact", SUPPORTS.get(i)), rows));
        }
        return finished(plot, "plot_speed", words.get("plot_speed_note"));
    }

    private static IntervalRow negative(IntervalRow row) {
        return new IntervalRow(
                row.clip(),
                row.of(),
                row.part(),
                row.measure(),
                -row.value(),
                -row.high90(),
                -row.low90(),
                row.remark());
    }

    private Optional<Plot> angles(String joint) {
        IntervalPlot plot = new IntervalPlot(label("plot_" + joint));
        for (ContactKind kind :
                List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING, ContactKind.PIT)) {
            List<Row> rows = new ArrayList<>();
            for (Attempt attempt : series.tripleJumps()) {
                attempt.contact(kind).ifPresent(contact -> rows.addAll(angleRows(attempt, contact, joint)));
            }
            plot.add(new Group(naming.word("contact", kind), rows));
        }
        return finished(plot, "plot_" + joint, words.get("plot_" + joint + "_note"));
    }

    private List<Row> angleRows(Attempt attempt, ContactRow contact, String joint) {
        List<Row> rows = new ArrayList<>();
        Intervals intervals = attempt.intervals();
        String name = name(attempt, Attempt.isCorrected(contact));
        intervals
                .ofContact(contact.contact(), joint + "_touchdown_deg")
                .map(row -> mark(name, row, Shape.DOT, "pd"))
                .ifPresent(rows::add);
        intervals
                .ofContact(contact.contact(), joint + "_toe_off_deg")
                .map(row -> mark(rows.isEmpty() ? name : "", row, Shape.TRIANGLE, "po"))
                .ifPresent(rows::add);
        return rows;
    }

    private Optional<Plot> rhythm() {
        RhythmPlot plot = new RhythmPlot(label("plot_rhythm"));
        for (Attempt attempt : series.tripleJumps()) {
            plot.add(new RhythmPlot.Line(name(attempt), beats(attempt)));
        }
        return plot.isEmpty()
                ? Optional.empty()
                : Optional.of(
                        new Plot(words.get("plot_rhythm"), plot.markup(words::number), words.get("plot_rhythm_note")));
    }

    private List<Beat> beats(Attempt attempt) {
        List<Beat> beats = new ArrayList<>();
        double zero = Double.NaN;
        for (String name : PHASES) {
            Optional<PhaseRow> found = attempt.phase(name);
            if (found.isEmpty() || found.get().startS() == null || found.get().endS() == null) {
                continue;
            }
            PhaseRow phase = found.get();
            zero = Double.isNaN(zero) ? phase.startS() : zero;
            double support = phase.supportTimeS() == null ? Double.NaN : phase.supportTimeS();
            beats.add(new Beat(
                    phase.startS() - zero,
                    support,
                    phase.endS() - zero,
                    time(attempt, name, "support_time_s"),
                    time(attempt, name, "flight_time_s"),
                    name));
        }
        return beats;
    }

    private String time(Attempt attempt, String phase, String measure) {
        return attempt.intervals()
                .ofPhase(phase, measure)
                .map(figures::withPlusMinus)
                .orElse("");
    }

    private Row bar(String name, IntervalRow row, String style) {
        return mark(name, row, Shape.BAR, style);
    }

    private Row mark(String name, IntervalRow row, Shape shape, String style) {
        return new Row(name, row.value(), row.low90(), row.high90(), figures.withPlusMinus(row), shape, style);
    }

    private String name(Attempt attempt) {
        return name(attempt, attempt.isCorrected());
    }

    private String name(Attempt attempt, String phase) {
        return name(attempt, attempt.phase(phase).map(attempt::isCorrected).orElse(false));
    }

    private String name(Attempt attempt, boolean corrected) {
        String best = series.isBest(attempt) ? "★" : "";
        return (corrected ? "✎" : "") + best + naming.shortly(series, attempt);
    }

    private String label(String key) {
        return who + ": " + words.get(key);
    }

    private Optional<Plot> finished(IntervalPlot plot, String key, String note) {
        return plot.isEmpty()
                ? Optional.empty()
                : Optional.of(new Plot(words.get(key), plot.markup(words::number), note));
    }
}
