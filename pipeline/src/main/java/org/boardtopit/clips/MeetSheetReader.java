package org.boardtopit.clips;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.Athlete.Sex;
import org.boardtopit.clips.Camera.View;
import org.boardtopit.clips.Safeguards.Consents;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.clips.Safeguards.Names;
import org.boardtopit.wording.Language;

/**
 * Reads a competition's {@code meet.yaml} and the sheets it names, strictly; {@code docs/inputs.md} describes its keys.
 *
 * <p>All of it is read and checked at once, so that a slip of the pen is found in the evening and not by the last clip.
 */
public final class MeetSheetReader {
    private static final List<String> TOP = List.of(
            "competition",
            "date",
            "attempts",
            "cameras",
            "athletes",
            "settings",
            "tables",
            "consent",
            "faces",
            "names",
            "names_key",
            "retention",
            "observations",
            "language",
            "comparisons");
    private static final List<String> CAMERA = List.of("name", "view", "distortion_k1", "reference", "marks");
    private static final List<String> ATHLETE =
            List.of("bib", "name", "sex", "stature_m", "born", "level", "team", "id");
    private static final List<String> SETTINGS = List.of("network", "threads", "workers", "effort");
    private static final List<String> TABLES = List.of("separator", "decimal", "bom", "workbook");

    /** The oldest living person was born after this year. */
    private static final int FIRST_BORN = 1900;

    private static final int LAST_BORN = 2100;

    /** A century: as good as for ever, and still a day of the calendar. */
    private static final int MOST_RETENTION_DAYS = 36_500;

    private static final Map<String, View> VIEWS = new LinkedHashMap<>();
    private static final Map<String, Sex> SEXES = new LinkedHashMap<>();
    private static final Map<String, Effort> EFFORTS = new LinkedHashMap<>();
    private static final Map<String, Consents> CONSENTS = new LinkedHashMap<>();
    private static final Map<String, Faces> FACES = new LinkedHashMap<>();
    private static final Map<String, Names> NAMES = new LinkedHashMap<>();
    private static final Map<String, Language> LANGUAGES = new LinkedHashMap<>();
    private static final Map<String, AutomaticComparison> COMPARISONS = new LinkedHashMap<>();
    private static final Map<String, Character> SEPARATORS = new LinkedHashMap<>();
    private static final Map<String, Character> DECIMALS = new LinkedHashMap<>();
    private static final Map<String, Boolean> TRUTHS = new LinkedHashMap<>();
    private static final Map<String, Boolean> WORKBOOKS = new LinkedHashMap<>();

    static {
        VIEWS.put("side", View.SIDE);
        VIEWS.put("front", View.FRONT);
        VIEWS.put("rear", View.REAR);
        SEXES.put("male", Sex.MALE);
        SEXES.put("female", Sex.FEMALE);
        for (Effort effort : Effort.values()) {
            EFFORTS.put(effort.label(), effort);
        }
        for (Consents consent : Consents.values()) {
            CONSENTS.put(consent.name().toLowerCase(Locale.ROOT), consent);
        }
        for (Faces faces : Faces.values()) {
            FACES.put(faces.name().toLowerCase(Locale.ROOT), faces);
        }
        for (Names names : Names.values()) {
            NAMES.put(names.name().toLowerCase(Locale.ROOT), names);
        }
        for (Language language : Language.values()) {
            LANGUAGES.put(language.code(), language);
        }
        for (AutomaticComparison comparison : AutomaticComparison.values()) {
            COMPARISONS.put(comparison.label(), comparison);
        }
        SEPARATORS.put(",", ',');
        SEPARATORS.put(";", ';');
        SEPARATORS.put("tab", '\t');
        DECIMALS.put(".", '.');
        DECIMALS.put(",", ',');
        TRUTHS.put("true", true);
        TRUTHS.put("false", false);
        WORKBOOKS.put("xlsx", true);
        WORKBOOKS.put("none", false);
    }

    private MeetSheetReader() {}

    /** The sheet with everything it names, and with pseudonyms in place of names where it asks for them; an InputException says what is wrong, where, and what would be right. */
    public static MeetSheet read(Path file) throws InputException {
        YamlKeys top = new YamlKeys(file, YamlReader.read(file), TOP);
        Optional<Path> attempts = top.file("attempts");
        MeetSheet sheet = new MeetSheet(
                Optional.of(file),
                top.text("competition"),
                top.date("date"),
                attempts.isEmpty() ? Optional.empty() : Optional.of(AttemptSheetReader.read(attempts.get())),
                cameras(top.list("cameras", CAMERA)),
                athletes(top.list("athletes", ATHLETE)),
                settings(top.keys("settings", SETTINGS)),
                tables(top.keys("tables", TABLES)),
                safeguards(top),
                top.file("observations"),
                top.oneOf("language", LANGUAGES).orElse(MeetSheet.NONE.language()),
                top.someOf("comparisons", COMPARISONS));
        return Pseudonyms.applied(sheet, top.text("names_key"));
    }

    private static Safeguards safeguards(YamlKeys top) throws InputException {
        return new Safeguards(
                top.oneOf("consent", CONSENTS).orElse(Safeguards.DEFAULT.consent()),
                top.oneOf("faces", FACES).orElse(Safeguards.DEFAULT.faces()),
                top.oneOf("names", NAMES).orElse(Safeguards.DEFAULT.names()),
                retention(top));
    }

    /** A day, or a number of days after the competition. */
    private static Optional<LocalDate> retention(YamlKeys top) throws InputException {
        if (top.text("retention").contains("-")) {
            return top.date("retention");
        }
        OptionalInt days = top.whole("retention", 1, MOST_RETENTION_DAYS, "2027-06-30 or 365");
        if (days.isEmpty()) {
            return Optional.empty();
        }
        Optional<LocalDate> date = top.date("date");
        if (date.isEmpty()) {
            throw top.problem(
                    "retention", "retention in days counts from the key date, which is missing; give it, or a day");
        }
        return Optional.of(date.get().plusDays(days.getAsInt()));
    }

    private static List<Camera> cameras(List<YamlKeys> items) throws InputException {
        List<Camera> cameras = new ArrayList<>();
        for (YamlKeys item : items) {
            String name = item.text("name");
            if (name.isEmpty()) {
                throw item.problem("name", "a camera needs a name");
            }
            if (cameras.stream().anyMatch(other -> other.name().equals(name))) {
                throw item.problem("name", "there are two cameras named " + InputException.quoted(name));
            }
            cameras.add(
                    new Camera(name, item.oneOf("view", VIEWS).orElse(View.SIDE), distortionK1(item), reference(item)));
        }
        return cameras;
    }

    private static double distortionK1(YamlKeys camera) throws InputException {
        double k1 = camera.number("distortion_k1", Camera.LEAST_DISTORTION_K1, Camera.MOST_DISTORTION_K1, "0.02");
        return Double.isNaN(k1) ? 0 : k1;
    }

    private static Optional<ReferencePicture> reference(YamlKeys camera) throws InputException {
        Optional<Path> picture = camera.file("reference");
        Optional<Path> marks = camera.file("marks");
        if (picture.isPresent() != marks.isPresent()) {
            String given = picture.isPresent() ? "reference" : "marks";
            String missing = picture.isPresent() ? "marks" : "reference";
            throw camera.problem(given, given + " is of use only together with " + missing + "; give both, or neither");
        }
        return picture.isEmpty()
                ? Optional.empty()
                : Optional.of(new ReferencePicture(picture.get(), marks.get(), CameraMarksReader.read(marks.get())));
    }

    private static List<Athlete> athletes(List<YamlKeys> items) throws InputException {
        List<Athlete> athletes = new ArrayList<>();
        for (YamlKeys item : items) {
            Athlete athlete = athlete(item);
            if (!athlete.bib().isEmpty()
                    && athletes.stream().anyMatch(other -> other.bib().equals(athlete.bib()))) {
                throw item.problem("bib", "there are two athletes with bib " + InputException.quoted(athlete.bib()));
            }
            if (athlete.bib().isEmpty()
                    && athletes.stream().anyMatch(other -> other.name().equals(athlete.name()))) {
                throw item.problem(
                        "name",
                        "there are two athletes named " + InputException.quoted(athlete.name()) + "; give bibs");
            }
            if (!athlete.id().isEmpty()
                    && athletes.stream().anyMatch(other -> other.id().equals(athlete.id()))) {
                throw item.problem("id", "there are two athletes with id " + InputException.quoted(athlete.id()));
            }
            athletes.add(athlete);
        }
        return athletes;
    }

    private static Athlete athlete(YamlKeys item) throws InputException {
        String bib = item.text("bib");
        String name = item.text("name");
        if (bib.isEmpty() && name.isEmpty()) {
            throw item.problem("name", "an athlete needs a bib or a name");
        }
        return new Athlete(
                bib,
                name,
                item.oneOf("sex", SEXES),
                item.number("stature_m", Athlete.LEAST_STATURE_M, Athlete.MOST_STATURE_M, "1.80"),
                born(item),
                item.text("level"),
                item.text("team"),
                item.text("id"));
    }

    /** A year, or a whole date of which the year is kept: no more of a birthday is needed. */
    private static OptionalInt born(YamlKeys item) throws InputException {
        if (!item.text("born").contains("-")) {
            return item.whole("born", FIRST_BORN, LAST_BORN, "2004");
        }
        Optional<LocalDate> day = item.date("born");
        return day.isEmpty() ? OptionalInt.empty() : OptionalInt.of(day.get().getYear());
    }

    private static RunSettings settings(YamlKeys keys) throws InputException {
        String network = keys.text("network");
        if (!network.isEmpty() && !network.matches(RunSettings.NETWORK_NAME)) {
            throw keys.problem(
                    "network",
                    "network must be the name of a network such as full, was " + InputException.quoted(network));
        }
        return new RunSettings(
                network.isEmpty() ? RunSettings.DEFAULT.network() : network,
                keys.whole("threads", 0, RunSettings.MOST_THREADS, "2").orElse(RunSettings.DEFAULT.threads()),
                keys.whole("workers", 0, RunSettings.MOST_WORKERS, "2").orElse(RunSettings.DEFAULT.workers()),
                keys.oneOf("effort", EFFORTS).orElse(RunSettings.DEFAULT.effort()));
    }

    /** Where numbers have a comma, cells are separated by semicolons unless the sheet says otherwise. */
    private static TableFormat tables(YamlKeys keys) throws InputException {
        char decimal = keys.oneOf("decimal", DECIMALS).orElse(TableFormat.DEFAULT.decimal());
        char separator = keys.oneOf("separator", SEPARATORS).orElse(decimal == ',' ? ';' : ',');
        if (separator == decimal) {
            throw keys.problem("separator", "separator and decimal must not both be a comma; write separator: \";\"");
        }
        return new TableFormat(
                separator,
                decimal,
                keys.oneOf("bom", TRUTHS).orElse(TableFormat.DEFAULT.bom()),
                keys.oneOf("workbook", WORKBOOKS).orElse(TableFormat.DEFAULT.workbook()));
    }
}
