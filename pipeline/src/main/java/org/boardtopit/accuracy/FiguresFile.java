package org.boardtopit.accuracy;

import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.clips.InputException;
import org.boardtopit.report.tables.WholeFile;

/** The report's numbers as JSON, so that two runs can be compared: every line of a table is one object. */
public final class FiguresFile {
    private static final String FORMAT = "boardtopit accuracy 1";
    /** Four decimals of a millisecond, a centimetre or a degree are more than anybody wants, and do not flicker. */
    private static final double STEPS = 1e4;

    private FiguresFile() {}

    /** Writes the file; an earlier one is replaced as a whole. */
    public static void write(Path file, AccuracyFigures figures, String programVersion) throws IOException {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("format", FORMAT);
        content.put("program", programVersion);
        content.put("clips", figures.clips());
        content.put("figures", figures.list().stream().map(FiguresFile::line).toList());
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentArraysWith(new DefaultIndenter("  ", "\n"));
        printer.indentObjectsWith(new DefaultIndenter("", ""));
        String json = JsonMapper.builder().build().writer(printer).writeValueAsString(content);
        WholeFile.write(file, out -> out.append(json).append('\n'));
    }

    private static Map<String, Object> line(Figure figure) {
        Map<String, Object> line = new LinkedHashMap<>();
        line.put("clip", figure.clip());
        line.put("section", figure.section().label());
        line.put("name", figure.name());
        line.put("unit", figure.unit());
        figure.values()
                .forEach((statistic, value) ->
                        line.put(statistic.key(), Double.isFinite(value) ? Math.round(value * STEPS) / STEPS : null));
        return line;
    }

    /** Reads such a file; an InputException says what is wrong in it. */
    public static AccuracyFigures read(Path file) throws InputException {
        TruthNode top = TruthNode.read(file);
        if (!top.text("format").equals(FORMAT)) {
            throw top.problem("format", "must be " + FORMAT);
        }
        List<Figure> figures = new ArrayList<>();
        for (TruthNode line : top.objects("figures")) {
            Map<Statistic, Double> values = new LinkedHashMap<>();
            for (Statistic statistic : Statistic.values()) {
                if (line.has(statistic.key())) {
                    values.put(statistic, line.number(statistic.key()));
                }
            }
            figures.add(new Figure(line.text("clip"), section(line), line.text("name"), line.text("unit"), values));
        }
        List<String> clips = figures.stream()
                .map(Figure::clip)
                .filter(c -> !c.equals(Figure.ALL))
                .distinct()
                .toList();
        return new AccuracyFigures(clips, figures);
    }

    private static Figure.Section section(TruthNode line) throws InputException {
        String text = line.text("section");
        for (Figure.Section section : Figure.Section.values()) {
            if (section.label().equals(text)) {
                return section;
            }
        }
        throw line.problem("section", "is none of this program's, was " + InputException.quoted(text));
    }
}
