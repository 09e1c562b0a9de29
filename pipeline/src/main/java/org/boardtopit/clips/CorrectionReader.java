package org.boardtopit.clips;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.clips.Correction.Field;

/** Reads an analyst's corrections, also as the worksheet of doubtful events that was filled in; {@code docs/corrections.md} describes both. */
public final class CorrectionReader {
    /** The file of an output folder that is looked for when no other is named. */
    public static final String FILE_NAME = "corrections.csv";

    /** The columns of corrections, in the order in which they are best written. */
    public static final List<String> COLUMNS = List.of("clip", "contact", "field", "value", "by", "note");

    /** What the worksheet has beside them. */
    public static final List<String> WORKSHEET_COLUMNS = List.of(
            "doubt", "kind", "foot", "event", "frame", "s", "pm_s", "frame_s", "confidence", "corrected", "why");

    private static final String WORKSHEET_ONLY = "why";

    private static final Map<String, Field> FIELDS = fields();
    private static final Map<String, String> KINDS = words(Correction.KINDS);
    private static final Map<String, String> FEET = words(Correction.FEET);
    private static final Map<String, Boolean> YES = Map.of("yes", Boolean.TRUE);

    private CorrectionReader() {}

    /** The corrections; an InputException names the line and the column of the first thing that cannot be meant. */
    public static CorrectionSheet read(Path file) throws InputException {
        List<String> known = new ArrayList<>(COLUMNS);
        known.addAll(WORKSHEET_COLUMNS);
        List<CorrectionSheet.Row> rows = new ArrayList<>();
        for (SheetTable.Row row : SheetTable.read(file, known, List.of("clip", "contact", "field", "value"))) {
            if (!isLeftOpen(row)) {
                rows.add(new CorrectionSheet.Row(unguarded(row.neededText("clip")), correction(row)));
            }
        }
        return new CorrectionSheet(file, rows);
    }

    /** A row of the worksheet in which nothing is corrected. */
    private static boolean isLeftOpen(SheetTable.Row row) {
        return row.text("value").isEmpty()
                && (row.text("field").isEmpty() || !row.text(WORKSHEET_ONLY).isEmpty());
    }

    private static Correction correction(SheetTable.Row row) throws InputException {
        row.neededText("field");
        Field field = row.oneOf("field", FIELDS);
        row.neededText("value");
        String contact = field.needsContact() ? contact(row, field) : "";
        return switch (field) {
            case TOUCHDOWN_FRAME, TOE_OFF_FRAME -> instant(row, contact, field, true);
            case TOUCHDOWN_S, TOE_OFF_S -> instant(row, contact, field, false);
            case FOOT -> plain(row, contact, field, "", row.oneOf("value", FEET));
            case KIND -> plain(row, contact, field, row.oneOf("value", KINDS), "");
            case REMOVE -> {
                row.oneOf("value", YES);
                yield plain(row, contact, field, "", "");
            }
            case REJECT -> plain(row, contact, field, "", "");
            case NOT_THE_ATHLETE -> span(row, field);
            case ADD -> added(row, field);
        };
    }

    private static String contact(SheetTable.Row row, Field field) throws InputException {
        String contact = row.text("contact");
        boolean known = contact.matches("[0-9]{1,4}") || (KINDS.containsKey(contact) && !contact.equals("approach"));
        if (!known) {
            throw row.problem(
                    "contact",
                    field.label()
                            + " is about one contact: its number, or board, hop_landing, step_landing or pit; was "
                            + (contact.isEmpty() ? "empty" : InputException.quoted(contact)));
        }
        return contact;
    }

    private static Correction instant(SheetTable.Row row, String contact, Field field, boolean inFrames)
            throws InputException {
        String text = row.text("value");
        boolean bare = !inFrames && !text.endsWith("s");
        CorrectionValue value = parsed(row, () -> CorrectionValue.parse(bare ? text + "s" : text));
        if (value.isFrame() != inFrames) {
            throw row.problem(
                    "value",
                    "must be the number of a frame, was " + InputException.quoted(text)
                            + "; for seconds write the field " + field.label().replace("_frame", "_s"));
        }
        return made(row, contact, field, "", "", value.value(), Double.NaN, inFrames);
    }

    private static Correction span(SheetTable.Row row, Field field) throws InputException {
        List<CorrectionValue> ends = parsed(row, () -> CorrectionValue.span(row.text("value")));
        CorrectionValue first = ends.get(0);
        return made(row, "", field, "", "", first.value(), ends.get(1).value(), first.isFrame());
    }

    private static Correction added(SheetTable.Row row, Field field) throws InputException {
        String text = row.text("value");
        List<String> words = List.of(text.split(" +"));
        String kind = words.get(0);
        String foot = words.size() > 1 ? words.get(1) : "";
        if (!KINDS.containsKey(kind) || !FEET.containsKey(foot) || kind.equals("pit") != foot.equals("both")) {
            throw row.problem(
                    "value",
                    "must be a kind, a foot, the touchdown and the toe-off, such as step_landing R 131 139, or for the"
                            + " landing pit both 180; was " + InputException.quoted(text));
        }
        List<CorrectionValue> ends = parsed(row, () -> CorrectionValue.oneOrTwo(words.subList(2, words.size()), text));
        if (kind.equals("pit") == (ends.size() == 2)) {
            throw row.problem(
                    "value",
                    kind.equals("pit")
                            ? "the landing in the pit has no toe-off: write only the touchdown, such as pit both 180"
                            : "a toe-off is missing, such as in " + kind + " " + foot + " 131 139");
        }
        double to = ends.size() == 2 ? ends.get(1).value() : Double.NaN;
        return made(
                row, "", field, kind, foot, ends.get(0).value(), to, ends.get(0).isFrame());
    }

    private static Correction plain(SheetTable.Row row, String contact, Field field, String kind, String foot) {
        return made(row, contact, field, kind, foot, Double.NaN, Double.NaN, false);
    }

    private static Correction made(
            SheetTable.Row row,
            String contact,
            Field field,
            String kind,
            String foot,
            double from,
            double to,
            boolean inFrames) {
        return new Correction(
                row.line(),
                contact,
                field,
                kind,
                foot,
                from,
                to,
                inFrames,
                unguarded(row.text("value")),
                unguarded(row.text("by")),
                unguarded(row.text("note")));
    }

    /** A value that explains itself when it cannot be read. */
    @FunctionalInterface
    private interface Parsing<T> {
        T value();
    }

    private static <T> T parsed(SheetTable.Row row, Parsing<T> parsing) throws InputException {
        try {
            return parsing.value();
        } catch (IllegalArgumentException e) {
            throw row.problem("value", e.getMessage());
        }
    }

    /** Without the apostrophe that keeps spreadsheet programs from taking text for a formula. */
    private static String unguarded(String text) {
        boolean guarded = text.length() > 1 && text.charAt(0) == '\'' && "=+-@".indexOf(text.charAt(1)) >= 0;
        return guarded ? text.substring(1) : text;
    }

    private static Map<String, Field> fields() {
        Map<String, Field> fields = new LinkedHashMap<>();
        for (Field field : Field.values()) {
            fields.put(field.label(), field);
        }
        return fields;
    }

    private static Map<String, String> words(List<String> list) {
        Map<String, String> words = new LinkedHashMap<>();
        list.forEach(word -> words.put(word, word));
        return words;
    }
}
