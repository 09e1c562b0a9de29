package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** What got better or worse between two runs over the same clips. */
public final class FiguresComparison {
    /** Smaller changes are left out: one part in a hundred, and what rounding alone can do. */
    private static final double LEAST_SHARE = 0.01;

    private static final double LEAST_STEP = 0.005;

    private FiguresComparison() {}

    /** Lines for the console, of all clips together: first what is better, then what is worse; one line when nothing changed. */
    public static List<String> lines(AccuracyFigures before, AccuracyFigures now) {
        List<String> better = new ArrayList<>();
        List<String> worse = new ArrayList<>();
        Map<String, Figure> earlier = new HashMap<>();
        before.list().forEach(f -> earlier.put(f.key(), f));
        for (Figure figure : now.list()) {
            Figure old = earlier.get(figure.key());
            if (figure.clip().equals(Figure.ALL) && old != null) {
                compare(old, figure, better, worse);
            }
        }
        if (better.isEmpty() && worse.isEmpty()) {
            return List.of("no number differs by more than a hundredth");
        }
        List<String> lines = new ArrayList<>();
        if (!before.clips().equals(now.clips())) {
            lines.add("careful: the two are not of the same clips");
        }
        lines.add("better: " + better.size());
        lines.addAll(better);
        lines.add("worse: " + worse.size());
        lines.addAll(worse);
        return lines;
    }

    private static void compare(Figure old, Figure figure, List<String> better, List<String> worse) {
        figure.values().forEach((statistic, value) -> {
            double was = statistic.badness(old.value(statistic));
            double change = statistic.badness(value) - was;
            if (Math.abs(change) > Math.max(LEAST_STEP, LEAST_SHARE * Math.abs(was))) {
                (change < 0 ? better : worse).add(line(figure, statistic, old.value(statistic), value));
            }
        });
    }

    private static String line(Figure figure, Statistic statistic, double was, double is) {
        return String.format(
                Locale.ROOT,
                "  %-14s %-34s %-14s %9.3f -> %9.3f",
                figure.section().label(),
                figure.name(),
                statistic.key(),
                was,
                is);
    }
}
