package org.boardtopit.accuracy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boardtopit.clips.InputException;
import org.boardtopit.report.tables.WholeFile;

/**
 * The report in Markdown. Holds no time of day and no path, so that the same program on the same clips writes the same text.
 */
public final class AccuracyReport {
    private static final List<Statistic> OF_ERRORS =
            List.of(Statistic.N, Statistic.MISSING, Statistic.BIAS, Statistic.MAE, Statistic.P95, Statistic.MAX);
    private static final List<Statistic> OF_COVERAGE =
            List.of(Statistic.N, Statistic.WITHIN_90_PCT, Statistic.WITHIN_2_SD_PCT, Statistic.MEDIAN_RATIO);
    private static final List<Statistic> OF_POINTS = List.of(
            Statistic.N,
            Statistic.MEDIAN_PCT,
            Statistic.MEAN_PCT,
            Statistic.P90_PCT,
            Statistic.MEDIAN_PX,
            Statistic.MEAN_PX,
            Statistic.P90_PX,
            Statistic.MEDIAN_RATIO,
            Statistic.P90_RATIO);

    private final StringBuilder text = new StringBuilder();
    private final AccuracyFigures figures;

    private AccuracyReport(AccuracyFigures figures) {
        this.figures = figures;
    }

    /**
     * Writes the report: the part between the two marker comments when the file is there, else the whole file.
     *
     * @throws InputException when a file is there that has no place for it
     */
    public static void write(
            Path file, AccuracyFigures figures, List<ClipScore> scores, Gains gains, String programVersion)
            throws IOException, InputException {
        String measured = new AccuracyReport(figures).text(scores, gains, programVersion);
        String whole = Files.exists(file)
                ? MeasuredBlock.replace(file, Files.readString(file, StandardCharsets.UTF_8), measured)
                : MeasuredBlock.alone(measured);
        WholeFile.write(file, out -> out.append(whole));
    }

    /** Makes sure, before anything is measured, that the report can be put there. */
    public static void check(Path file) throws IOException, InputException {
        if (Files.exists(file)) {
            MeasuredBlock.replace(file, Files.readString(file, StandardCharsets.UTF_8), "");
        }
    }

    private String text(List<ClipScore> scores, Gains gains, String programVersion) {
        line("Board to Pit " + programVersion + ", " + scores.size() + (scores.size() == 1 ? " clip." : " clips."));
        scores.forEach(score -> score.notMeasured()
                .ifPresent(reason -> line("Not measured: " + score.clip() + " (" + reason.strip() + ").")));
        contacts(scores);
        heading("Errors over all clips");
        line(
                "Measured less true. p95: 95 % of the absolute errors are no larger. missing: has a truth, was not measured.");
        errors(Figure.ALL);
        matrix();
        coverage();
        table(
                "Legs with each other's names",
                Figure.ALL,
                Figure.Section.LEGS,
                List.of(Statistic.N, Statistic.SHARE_PCT));
        line("n: frames in which the legs are apart.");
        table("Registration", Figure.ALL, Figure.Section.GROUND, List.of(Statistic.N, Statistic.MEDIAN, Statistic.P95));
        line("Known marks of the ground through the true camera and back through the program's own; absolute errors.");
        if (gains.isKnown()) {
            gains(gains);
        }
        points();
        for (String clip : figures.clips()) {
            heading("Errors of " + clip);
            errors(clip);
        }
        return text.toString();
    }

    private void line(String line) {
        text.append('\n').append(line).append('\n');
    }

    private void heading(String heading) {
        line("### " + heading);
    }

    private void row(List<String> cells) {
        text.append("| ").append(String.join(" | ", cells)).append(" |\n");
    }

    private void header(List<String> cells) {
        text.append('\n');
        row(cells);
        row(cells.stream().map(c -> c.equals(cells.get(0)) ? "---" : "---:").toList());
    }

    private void contacts(List<ClipScore> scores) {
        heading("Contacts found");
        header(List.of(
                "clip",
                "quality",
                "sequence",
                "approach contacts found",
                "with the wrong foot",
                "where there is none"));
        ContactScore sum = ContactScore.NOTHING;
        for (ClipScore score : scores) {
            contactRow(score.clip(), score.quality(), score.contacts());
            sum = sum.plus(score.contacts());
        }
        contactRow(Figure.ALL, "", sum);
    }

    private void contactRow(String clip, String quality, ContactScore c) {
        row(List.of(
                clip,
                quality,
                c.sequencesRight() + " of " + c.sequences(),
                c.approachFound() + " of " + c.approachTrue(),
                Integer.toString(c.approachWrongFoot()),
                Integer.toString(c.invented())));
    }

    private void errors(String clip) {
        header(List.of("measure", "unit", "n", "missing", "bias", "MAE", "p95", "max"));
        for (Figure f : figures.of(clip, Figure.Section.MEASURES)) {
            List<String> cells = new ArrayList<>(List.of(f.name(), f.unit()));
            OF_ERRORS.forEach(s -> cells.add(number(f, s)));
            row(cells);
        }
    }

    private void matrix() {
        heading("Mean absolute error by clip");
        List<String> head = new ArrayList<>(List.of("measure", "unit"));
        head.addAll(figures.clips());
        header(head);
        for (Figure all : figures.of(Figure.ALL, Figure.Section.MEASURES)) {
            List<String> cells = new ArrayList<>(List.of(all.name(), all.unit()));
            for (String clip : figures.clips()) {
                cells.add(figures.of(clip, Figure.Section.MEASURES).stream()
                        .filter(f -> f.name().equals(all.name()))
                        .findFirst()
                        .map(f -> number(f, Statistic.MAE))
                        .orElse(""));
            }
            row(cells);
        }
    }

    private void coverage() {
        heading("Coverage");
        line(
                "How often the truth lies within the stated interval. Gaussian errors with the stated standard deviation would give"
                        + " 90, 95.4 and 0.67.");
        header(List.of("measure", "n", "within the 90 % interval, %", "within 2 sd, %", "median of error/sd"));
        for (Figure f : figures.of(Figure.ALL, Figure.Section.COVERAGE)) {
            List<String> cells = new ArrayList<>(List.of(f.name()));
            OF_COVERAGE.forEach(s -> cells.add(number(f, s)));
            row(cells);
        }
    }

    private void gains(Gains gains) {
        heading("What each assumption gains");
        line("Mean absolute errors of the whole-clip fit with one assumption left out.");
        List<String> head = new ArrayList<>(List.of("measure"));
        head.addAll(gains.variants());
        header(head);
        gains.rows().forEach((name, values) -> {
            List<String> cells = new ArrayList<>(List.of(name));
            values.forEach(v -> cells.add(String.format(Locale.ROOT, Math.abs(v) < 0.1 ? "%.3f" : "%.2f", v)));
            row(cells);
        });
    }

    private void points() {
        heading("Points of the body");
        line(
                "Distance from the truth in the picture, in per cent of the standing height and in pixels, and over the stated standard"
                        + " deviation (a Gaussian's: median 1.18, p90 2.15). As seen: the larger mode, as the network names it.");
        header(List.of(
                "points",
                "n",
                "median %",
                "mean %",
                "p90 %",
                "median px",
                "mean px",
                "p90 px",
                "error/sd, median",
                "error/sd, p90"));
        for (Figure f : figures.of(Figure.ALL, Figure.Section.POINTS)) {
            List<String> cells = new ArrayList<>(List.of(f.name()));
            OF_POINTS.forEach(s -> cells.add(number(f, s)));
            row(cells);
        }
    }

    private void table(String heading, String clip, Figure.Section section, List<Statistic> statistics) {
        heading(heading);
        List<String> head = new ArrayList<>(List.of("what", "unit"));
        statistics.forEach(s -> head.add(s == Statistic.SHARE_PCT ? "share" : s.key()));
        header(head);
        for (Figure f : figures.of(clip, section)) {
            List<String> cells = new ArrayList<>(List.of(f.name(), f.unit()));
            statistics.forEach(s -> cells.add(number(f, s)));
            row(cells);
        }
    }

    /** Three figures where they say something; whole numbers are counts. */
    private static String number(Figure figure, Statistic statistic) {
        double value = figure.value(statistic);
        if (!Double.isFinite(value)) {
            return "";
        }
        if (statistic == Statistic.N || statistic == Statistic.MISSING) {
            return Long.toString(Math.round(value));
        }
        boolean speed = figure.unit().equals("m/s");
        int decimals = speed ? 3 : Math.abs(value) >= 10 ? 1 : 2;
        String sign = statistic == Statistic.BIAS ? "+" : "";
        return String.format(Locale.ROOT, "%" + sign + "." + decimals + "f", value);
    }
}
