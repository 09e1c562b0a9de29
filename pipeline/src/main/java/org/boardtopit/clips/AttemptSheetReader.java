package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.function.Function;
import org.boardtopit.clips.AttemptEntry.Consent;

/** Reads the attempts sheet of a competition; {@code docs/inputs.md} describes its columns. */
public final class AttemptSheetReader {
    /** All columns the sheet may have; only the first must be there. */
    public static final List<String> COLUMNS = List.of(
            "clip",
            "bib",
            "athlete",
            "event",
            "attempt",
            "result",
            "official_m",
            "wind_ms",
            "takeoff_foot",
            "camera",
            "capture_fps",
            "pattern",
            "consent");

    /** The least number above zero that the sheet can mean. */
    private static final double LEAST_OFFICIAL_M = 0.01;

    private static final double LEAST_CAPTURE_FPS = 1;

    private static final Map<String, AttemptResult> RESULTS = words(AttemptResult.values(), AttemptResult::symbol);
    private static final Map<String, TakeoffFoot> FEET = words(TakeoffFoot.values(), TakeoffFoot::letter);
    private static final Map<String, Consent> CONSENTS = words(
            new Consent[] {Consent.YES, Consent.NO}, consent -> consent.name().toLowerCase(Locale.ROOT));

    private AttemptSheetReader() {}

    /** The rows of the sheet; an InputException names the line and the column of the first thing that is wrong. */
    public static AttemptSheet read(Path file) throws InputException {
        List<AttemptEntry> entries = new ArrayList<>();
        Map<String, Integer> lineOfClip = new HashMap<>();
        for (SheetTable.Row row : SheetTable.read(file, COLUMNS, List.of("clip"))) {
            AttemptEntry entry = entry(row);
            Integer earlier = lineOfClip.putIfAbsent(entry.clip().toLowerCase(Locale.ROOT), entry.line());
            if (earlier != null) {
                throw row.problem(
                        "clip", InputException.quoted(entry.clip()) + " already has a row, on line " + earlier);
            }
            entries.add(entry);
        }
        return new AttemptSheet(file, entries);
    }

    private static AttemptEntry entry(SheetTable.Row row) throws InputException {
        return new AttemptEntry(
                row.line(),
                clip(row),
                row.text("bib"),
                row.text("athlete"),
                row.text("event"),
                attempt(row),
                result(row),
                row.number("official_m", LEAST_OFFICIAL_M, AttemptEntry.MOST_OFFICIAL_M, "14.88"),
                wind(row),
                Optional.ofNullable(row.oneOf("takeoff_foot", FEET)),
                row.text("camera"),
                row.number("capture_fps", LEAST_CAPTURE_FPS, AttemptEntry.MOST_CAPTURE_FPS, "240"),
                pattern(row),
                consent(row));
    }

    private static String clip(SheetTable.Row row) throws InputException {
        String clip = row.neededText("clip");
        if (clip.contains("/") || clip.contains("\\")) {
            throw row.problem("clip", "must be a file name without a folder, was " + InputException.quoted(clip));
        }
        return clip;
    }

    private static OptionalInt attempt(SheetTable.Row row) throws InputException {
        double attempt = row.number("attempt", 1, AttemptEntry.MOST_ATTEMPTS, "3");
        if (Double.isNaN(attempt)) {
            return OptionalInt.empty();
        }
        if (attempt != Math.rint(attempt)) {
            throw row.problem("attempt", "must be a whole number such as 3, was " + row.text("attempt"));
        }
        return OptionalInt.of((int) attempt);
    }

    /** Text programs turn the hyphen of a pass into a dash. */
    private static Optional<AttemptResult> result(SheetTable.Row row) throws InputException {
        String text = row.text("result");
        if (text.equals("\u2013") || text.equals("\u2014") || text.equals("\u2212")) {
            return Optional.of(AttemptResult.PASSED);
        }
        return Optional.ofNullable(row.oneOf("result", RESULTS));
    }

    /** NWI, "no wind information", is what result lists print when no gauge stood there. */
    private static double wind(SheetTable.Row row) throws InputException {
        if (row.text("wind_ms").equalsIgnoreCase("NWI")) {
            return Double.NaN;
        }
        return row.number("wind_ms", -AttemptEntry.MOST_WIND_MS, AttemptEntry.MOST_WIND_MS, "+0.8 or -1.2");
    }

    private static Optional<Pattern> pattern(SheetTable.Row row) throws InputException {
        String text = row.text("pattern");
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Pattern pattern;
        try {
            pattern = Pattern.parse(text);
        } catch (IllegalArgumentException e) {
            throw row.problem("pattern", e.getMessage());
        }
        TakeoffFoot foot = row.oneOf("takeoff_foot", FEET);
        if (foot != null && pattern.firstFoot().filter(first -> first != foot).isPresent()) {
            throw row.problem(
                    "takeoff_foot",
                    "must be the first foot of the pattern " + InputException.quoted(text) + " or empty, was "
                            + foot.letter());
        }
        return Optional.of(pattern);
    }

    private static Consent consent(SheetTable.Row row) throws InputException {
        Consent consent = row.oneOf("consent", CONSENTS);
        return consent == null ? Consent.NOT_SAID : consent;
    }

    /** In the order of the values, so that messages list them so. */
    private static <T> Map<String, T> words(T[] values, Function<T, String> word) {
        Map<String, T> words = new LinkedHashMap<>();
        for (T value : values) {
            words.put(word.apply(value), value);
        }
        return words;
    }
}
