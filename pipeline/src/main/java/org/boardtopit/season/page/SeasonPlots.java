package org.boardtopit.season.page;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.report.page.Figures;
import org.boardtopit.report.plot.IntervalPlot;
import org.boardtopit.report.plot.IntervalPlot.Group;
import org.boardtopit.report.plot.IntervalPlot.Row;
import org.boardtopit.report.plot.IntervalPlot.Shape;
import org.boardtopit.report.tables.AthleteMeasure;
import org.boardtopit.season.Series;
import org.boardtopit.season.page.SeasonView.PlotView;
import org.boardtopit.wording.Words;

/** Plots of an athlete's measures, a row for each competition; measures of one kind share an axis. */
final class SeasonPlots {
    private final Words words;
    private final Figures figures;
    private final List<Series> all;
    private final DateTimeFormatter shortDay;

    SeasonPlots(Words words, List<Series> all) {
        this.words = words;
        this.figures = new Figures(words);
        this.all = all;
        this.shortDay = DateTimeFormatter.ofPattern("d.M.", words.language().locale());
    }

    /** Those with more than one competition. */
    List<PlotView> plots() {
        List<PlotView> plots = new ArrayList<>();
        add(plots, "plot_distance", "", AthleteMeasure.OFFICIAL, AthleteMeasure.EFFECTIVE);
        add(plots, "plot_approach", "", AthleteMeasure.APPROACH_SPEED);
        add(plots, "plot_share", "", AthleteMeasure.HOP_SHARE, AthleteMeasure.STEP_SHARE, AthleteMeasure.JUMP_SHARE);
        add(
                plots,
                "plot_support",
                "",
                AthleteMeasure.SUPPORT_TIME_BOARD,
                AthleteMeasure.SUPPORT_TIME_HOP_LANDING,
                AthleteMeasure.SUPPORT_TIME_STEP_LANDING);
        add(
                plots,
                "plot_plant",
                words.get("plot_plant_note"),
                AthleteMeasure.LEG_PLANT_BOARD,
                AthleteMeasure.LEG_PLANT_HOP_LANDING,
                AthleteMeasure.LEG_PLANT_STEP_LANDING);
        add(
                plots,
                "plot_ahead",
                "",
                AthleteMeasure.FOOT_AHEAD_BOARD,
                AthleteMeasure.FOOT_AHEAD_HOP_LANDING,
                AthleteMeasure.FOOT_AHEAD_STEP_LANDING);
        return plots;
    }

    private void add(List<PlotView> plots, String title, String note, AthleteMeasure... measures) {
        String symbol = measures[0].unitSymbol();
        String caption = words.get(title) + " (" + (symbol.equals("deg") ? "°" : symbol) + ")";
        IntervalPlot plot = new IntervalPlot(caption);
        for (AthleteMeasure measure : measures) {
            all.stream()
                    .filter(series ->
                            series.measure() == measure && series.points().size() > 1)
                    .forEach(series -> plot.add(new Group(
                            words.get("measure_" + measure.key()),
                            series.points().stream()
                                    .map(point -> row(series, point))
                                    .toList())));
        }
        if (!plot.isEmpty()) {
            plots.add(new PlotView(caption, plot.markup(words::number), note));
        }
    }

    private Row row(Series series, Series.Point point) {
        double mean = point.mean().mean();
        double half = series.halfInterval(point);
        boolean known = Double.isFinite(half);
        String text = known
                ? figures.withPlusMinus(mean, half)
                : words.number(mean, Math.min(2, series.measure().decimals()));
        return new Row(
                point.date().format(shortDay),
                mean,
                known ? mean - half : mean,
                known ? mean + half : mean,
                text,
                Shape.DOT,
                "pd");
    }
}
