package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Predicate;
import org.boardtopit.signal.OrderStatistics;

/** The numbers of the report, computed from the scores of all clips. */
public final class AccuracyFigures {
    private static final List<String> JOINTS =
            List.of("nose", "ear", "shoulder", "elbow", "wrist", "hip", "knee", "ankle", "heel", "toe");

    private final List<String> clips;
    private final List<Figure> figures;

    AccuracyFigures(List<String> clips, List<Figure> figures) {
        this.clips = List.copyOf(clips);
        this.figures = List.copyOf(figures);
    }

    /** Of all clips together and of each by itself. */
    public static AccuracyFigures of(List<ClipScore> scores) {
        List<Figure> figures = new ArrayList<>(new Scope(Figure.ALL, scores).figures());
        for (ClipScore score : scores) {
            figures.addAll(new Scope(score.clip(), List.of(score)).figures());
        }
        return new AccuracyFigures(scores.stream().map(ClipScore::clip).toList(), figures);
    }

    List<String> clips() {
        return clips;
    }

    List<Figure> list() {
        return figures;
    }

    List<Figure> of(String clip, Figure.Section section) {
        return figures.stream()
                .filter(f -> f.clip().equals(clip) && f.section() == section)
                .toList();
    }

    private static final class Scope {
        private final String clip;
        private final List<ClipScore> scores;
        private final List<MeasuredError> errors;
        private final List<PointError> points;
        private final List<Figure> figures = new ArrayList<>();

        Scope(String clip, List<ClipScore> scores) {
            this.clip = clip;
            this.scores = scores;
            this.errors = scores.stream().flatMap(s -> s.errors().stream()).toList();
            this.points = scores.stream().flatMap(s -> s.points().stream()).toList();
        }

        List<Figure> figures() {
            contacts();
            measures();
            coverage();
            points();
            legs();
            ground();
            return figures;
        }

        private void add(Figure.Section section, String name, String unit, Map<Statistic, Double> values) {
            figures.add(new Figure(clip, section, name, unit, values));
        }

        private void contacts() {
            ContactScore sum =
                    scores.stream().map(ClipScore::contacts).reduce(ContactScore.NOTHING, ContactScore::plus);
            Map<Statistic, Double> sequence = new LinkedHashMap<>();
            sequence.put(Statistic.N, (double) sum.sequences());
            sequence.put(Statistic.RIGHT, (double) sum.sequencesRight());
            add(Figure.Section.CONTACTS, "sequence with the right feet", "", sequence);
            Map<Statistic, Double> approach = new LinkedHashMap<>();
            approach.put(Statistic.N, (double) sum.approachTrue());
            approach.put(Statistic.FOUND, (double) sum.approachFound());
            approach.put(Statistic.WRONG_FOOT, (double) sum.approachWrongFoot());
            approach.put(Statistic.INVENTED, (double) sum.invented());
            add(Figure.Section.CONTACTS, "approach contacts", "", approach);
        }

        private List<MeasuredError> of(Predicate<Measure> wanted) {
            return errors.stream().filter(e -> wanted.test(e.measure())).toList();
        }

        private void measures() {
            for (Measure measure : Measure.all()) {
                double[] values = of(measure::equals).stream()
                        .mapToDouble(MeasuredError::error)
                        .toArray();
                if (values.length > 0) {
                    add(Figure.Section.MEASURES, measure.name(), measure.unit(), values(ErrorStatistics.of(values)));
                }
            }
        }

        private static Map<Statistic, Double> values(ErrorStatistics s) {
            Map<Statistic, Double> values = new LinkedHashMap<>();
            values.put(Statistic.N, (double) s.n());
            values.put(Statistic.MISSING, (double) s.missing());
            values.put(Statistic.BIAS, s.bias());
            values.put(Statistic.MAE, s.mae());
            values.put(Statistic.P95, s.p95());
            values.put(Statistic.MAX, s.max());
            return values;
        }

        private void coverage() {
            addCoverage("all measures", errors);
            for (Measure.Group group : Measure.Group.values()) {
                addCoverage("all " + group.label(), of(m -> m.group() == group));
            }
            for (Measure measure : Measure.all()) {
                addCoverage(measure.name(), of(measure::equals));
            }
        }

        private void addCoverage(String name, List<MeasuredError> some) {
            Coverage c = Coverage.of(some);
            if (c.n() > 0) {
                Map<Statistic, Double> values = new LinkedHashMap<>();
                values.put(Statistic.N, (double) c.n());
                values.put(Statistic.WITHIN_90_PCT, c.within90Pct());
                values.put(Statistic.WITHIN_2_SD_PCT, c.within2SdPct());
                values.put(Statistic.MEDIAN_RATIO, c.medianRatio());
                add(Figure.Section.COVERAGE, name, "", values);
            }
        }

        private void points() {
            for (PointError.Stage stage : PointError.Stage.values()) {
                String when = stage.label();
                addPoints("all, " + when, e -> e.stage() == stage);
                for (Part part : Part.values()) {
                    addPoints("all, " + part.label() + ", " + when, e -> e.stage() == stage && e.part() == part);
                }
                for (String joint : JOINTS) {
                    for (Part part : Part.values()) {
                        addPoints(
                                joint + ", " + part.label() + ", " + when,
                                e -> e.stage() == stage
                                        && e.part() == part
                                        && e.joint().equals(joint));
                    }
                }
            }
        }

        private void addPoints(String name, Predicate<PointError> wanted) {
            List<PointError> some = points.stream().filter(wanted).toList();
            if (some.isEmpty()) {
                return;
            }
            double[] pct = some.stream().mapToDouble(PointError::staturePct).toArray();
            double[] px = some.stream().mapToDouble(PointError::px).toArray();
            double[] ratio = some.stream().mapToDouble(PointError::ratio).toArray();
            Map<Statistic, Double> values = new LinkedHashMap<>();
            values.put(Statistic.N, (double) some.size());
            values.put(Statistic.MEDIAN_PCT, OrderStatistics.median(pct));
            values.put(Statistic.MEAN_PCT, ErrorStatistics.of(pct).mae());
            values.put(Statistic.P90_PCT, OrderStatistics.quantile(0.9, pct));
            values.put(Statistic.MEDIAN_PX, OrderStatistics.median(px));
            values.put(Statistic.MEAN_PX, ErrorStatistics.of(px).mae());
            values.put(Statistic.P90_PX, OrderStatistics.quantile(0.9, px));
            values.put(Statistic.MEDIAN_RATIO, OrderStatistics.median(ratio));
            values.put(Statistic.P90_RATIO, OrderStatistics.quantile(0.9, ratio));
            add(Figure.Section.POINTS, name, "% of stature", values);
        }

        private void legs() {
            addLegs("legs exchanged, as seen", ClipScore::legsBefore);
            addLegs("legs exchanged, repaired", ClipScore::legsAfter);
        }

        private void addLegs(String name, java.util.function.Function<ClipScore, LegExchanges> of) {
            LegExchanges sum = scores.stream().map(of).reduce(LegExchanges.NONE, LegExchanges::plus);
            Map<Statistic, Double> values = new LinkedHashMap<>();
            values.put(Statistic.N, (double) sum.frames());
            values.put(Statistic.SHARE_PCT, sum.sharePct());
            add(Figure.Section.LEGS, name, "%", values);
        }

        private void ground() {
            for (boolean moving : new boolean[] {false, true}) {
                String camera = moving ? "moving camera" : "still camera";
                List<GroundErrors> some = scores.stream()
                        .flatMap(s -> s.ground().stream())
                        .filter(g -> g.cameraMoves() == moving)
                        .toList();
                addGround(
                        "along, " + camera,
                        some.stream().flatMap(g -> g.alongCm().stream()).toList());
                addGround(
                        "across, " + camera,
                        some.stream().flatMap(g -> g.acrossCm().stream()).toList());
            }
        }

        private void addGround(String name, List<Double> errorsCm) {
            double[] sizes = errorsCm.stream().mapToDouble(Math::abs).toArray();
            if (sizes.length > 0) {
                Map<Statistic, Double> values = new LinkedHashMap<>();
                values.put(Statistic.N, (double) sizes.length);
                values.put(Statistic.MEDIAN, OrderStatistics.median(sizes));
                values.put(Statistic.P95, OrderStatistics.quantile(0.95, sizes));
                add(Figure.Section.GROUND, name, "cm", values);
            }
        }
    }
}
