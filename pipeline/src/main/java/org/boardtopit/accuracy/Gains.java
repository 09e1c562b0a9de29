package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Mean absolute errors by what the whole-clip fit assumes: what each assumption gains. */
public final class Gains {
    private static final List<String> MEASURES = List.of(
            "knee at touchdown",
            "hip at touchdown",
            "trunk at touchdown",
            "free thigh at touchdown",
            "knee at toe-off",
            "hip at toe-off",
            "trunk at toe-off",
            "free thigh at toe-off",
            "vx at take-off",
            "vy at take-off",
            "take-off angle");
    private static final List<String> POINTS = List.of("approach", "contact", "flight");

    private final List<String> variants;
    private final Map<String, List<Double>> rows;

    private Gains(List<String> variants, Map<String, List<Double>> rows) {
        this.variants = variants;
        this.rows = rows;
    }

    /** From the scores of all clips by the name of what is assumed. */
    public static Gains of(Map<String, List<ClipScore>> scores) {
        Map<String, List<Double>> rows = new LinkedHashMap<>();
        for (List<ClipScore> some : scores.values()) {
            AccuracyFigures figures = AccuracyFigures.of(some);
            for (Figure f : figures.of(Figure.ALL, Figure.Section.MEASURES)) {
                if (MEASURES.contains(f.name())) {
                    add(rows, f.name() + ", " + f.unit(), f.value(Statistic.MAE));
                }
            }
            for (String part : POINTS) {
                add(rows, "points in " + part + ", mean % of stature", points(figures, part));
            }
        }
        return new Gains(List.copyOf(scores.keySet()), rows);
    }

    /** Of the fitted points, or of the repaired ones where nothing was fitted. */
    private static double points(AccuracyFigures figures, String part) {
        double value = Double.NaN;
        for (Figure f : figures.of(Figure.ALL, Figure.Section.POINTS)) {
            boolean repaired = f.name().equals("all, " + part + ", " + PointError.Stage.REPAIRED.label());
            boolean fitted = f.name().equals("all, " + part + ", " + PointError.Stage.FITTED.label());
            value = repaired || fitted ? f.value(Statistic.MEAN_PCT) : value;
        }
        return value;
    }

    private static void add(Map<String, List<Double>> rows, String name, double value) {
        rows.computeIfAbsent(name, k -> new ArrayList<>()).add(value);
    }

    /** True when there is something to compare. */
    boolean isKnown() {
        return variants.size() > 1;
    }

    List<String> variants() {
        return variants;
    }

    /** One value a variant, by the name of the measure. */
    Map<String, List<Double>> rows() {
        return rows;
    }
}
