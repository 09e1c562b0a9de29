package org.boardtopit.accuracy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.BodyPoint;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class FiguresTest {
    @TempDir
    private Path folder;

    private static ClipScore score(String clip, double... touchdownMs) {
        List<MeasuredError> errors = new ArrayList<>();
        for (double error : touchdownMs) {
            errors.add(new MeasuredError(Measure.TOUCHDOWN, error, 4));
        }
        return new ClipScore(
                clip,
                Optional.empty(),
                "good",
                new ContactScore(1, 1, 3, 2, 1, 0),
                errors,
                List.of(
                        new PointError(BodyPoint.LEFT_KNEE, Part.FLIGHT, PointError.Stage.SEEN, 2, 1, 0.5),
                        new PointError(BodyPoint.RIGHT_KNEE, Part.FLIGHT, PointError.Stage.SEEN, 4, 3, 1.5)),
                new LegExchanges(50, 2),
                new LegExchanges(50, 0),
                Optional.of(new GroundErrors(true, List.of(1.0, -3.0), List.of(0.0, 4.0))));
    }

    private static Figure figure(AccuracyFigures figures, String clip, Figure.Section section, String name) {
        return figures.of(clip, section).stream()
                .filter(f -> f.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void poolsTheErrorsOfAllClipsAndKeepsEachClipsOwn() {
        AccuracyFigures figures = AccuracyFigures.of(List.of(score("a", 2, -4), score("b", 6, Double.NaN)));

        Figure all = figure(figures, Figure.ALL, Figure.Section.MEASURES, "touchdown");
        assertEquals(3, all.value(Statistic.N));
        assertEquals(1, all.value(Statistic.MISSING));
        assertEquals(4, all.value(Statistic.MAE));
        assertEquals(4.0 / 3, all.value(Statistic.BIAS), 1e-12);
        assertEquals(
                3, figure(figures, "a", Figure.Section.MEASURES, "touchdown").value(Statistic.MAE));
        Figure found = figure(figures, Figure.ALL, Figure.Section.CONTACTS, "approach contacts");
        assertEquals(6, found.value(Statistic.N));
        assertEquals(4, found.value(Statistic.FOUND));
        Figure knee = figure(figures, "a", Figure.Section.POINTS, "knee, flight, as seen");
        assertEquals(2, knee.value(Statistic.MEDIAN_PCT));
        assertEquals(3, knee.value(Statistic.MEAN_PX));
        Figure legs = figure(figures, Figure.ALL, Figure.Section.LEGS, "legs exchanged, as seen");
        assertEquals(4, legs.value(Statistic.SHARE_PCT));
        Figure ground = figure(figures, "a", Figure.Section.GROUND, "along, moving camera");
        assertEquals(2, ground.value(Statistic.MEDIAN));
    }

    @Test
    void readsBackWhatItWrote() throws IOException, InputException {
        AccuracyFigures figures = AccuracyFigures.of(List.of(score("a", 2, -4), score("b", 6.25, Double.NaN)));
        Path file = folder.resolve("numbers.json");

        FiguresFile.write(file, figures, "0.1.0");
        AccuracyFigures read = FiguresFile.read(file);

        assertEquals(figures.clips(), read.clips());
        assertEquals(figures.list().size(), read.list().size());
        assertEquals(List.of("no number differs by more than a hundredth"), FiguresComparison.lines(figures, read));
    }

    @Test
    void refusesNumbersOfAnotherFormat() throws IOException {
        Path file = folder.resolve("numbers.json");
        Files.writeString(file, "{\"format\": \"something else\"}");

        InputException e = assertThrows(InputException.class, () -> FiguresFile.read(file));

        assertEquals(file + ": format must be boardtopit accuracy 1", e.getMessage());
    }

    @Test
    void saysWhatBecameBetterAndWhatWorse() {
        // MAE 6, bias +4, largest 10, one of two within 1.645 sd; then MAE 8, bias 0, largest 8, none within.
        AccuracyFigures before = AccuracyFigures.of(List.of(score("a", 10, -2)));
        AccuracyFigures now = AccuracyFigures.of(List.of(score("a", 8, -8)));

        List<String> lines = FiguresComparison.lines(before, now);

        int worse = lines.indexOf(
                lines.stream().filter(l -> l.startsWith("worse: ")).findFirst().orElseThrow());
        assertTrue(position(lines, " bias ") < worse, lines.toString());
        assertTrue(position(lines, " max ") < worse, lines.toString());
        assertTrue(position(lines, " mae ") > worse, lines.toString());
        assertTrue(position(lines, "within_90_pct") > worse, lines.toString());
        assertFalse(lines.stream().anyMatch(l -> l.contains("missing")), lines.toString());
    }

    private static int position(List<String> lines, String part) {
        for (int i = 0; i < lines.size(); i++) {
            if (lines.get(i).contains(part) && lines.get(i).contains("touchdown")) {
                return i;
            }
        }
        throw new AssertionError(part + " is not in " + lines);
    }

    @Test
    void takesCoverageAsBetterWhenItIsNearerToNinety() {
        assertTrue(Statistic.WITHIN_90_PCT.badness(91) < Statistic.WITHIN_90_PCT.badness(100));
        assertTrue(Statistic.WITHIN_90_PCT.badness(88) < Statistic.WITHIN_90_PCT.badness(80));
        assertTrue(Statistic.FOUND.badness(5) < Statistic.FOUND.badness(4));
        assertTrue(Double.isNaN(Statistic.N.badness(4)));
    }

    @Test
    void warnsWhenTheClipsAreOthers() {
        AccuracyFigures before = AccuracyFigures.of(List.of(score("a", 10)));
        AccuracyFigures now = AccuracyFigures.of(List.of(score("b", 5)));

        assertEquals(
                "careful: the two are not of the same clips",
                FiguresComparison.lines(before, now).get(0));
    }
}
