package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.boardtopit.clips.InputException;
import org.boardtopit.report.tables.FinishedFolder;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.season.Season;
import org.boardtopit.season.SeasonTables;
import org.boardtopit.season.page.SeasonPage;
import org.boardtopit.wording.Language;
import picocli.CommandLine.Command;
import picocli.CommandLine.ITypeConverter;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.TypeConversionException;

/** Joins the results of several competitions. */
@Command(
        name = "season",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Joins the results of several competitions by athlete: trends, changes, what comes back.",
        description = {
            "",
            "Reads the tables of finished folders, which stay as they are, and writes a page",
            "(index.html) and tables into a folder of its own. Athletes are known again by",
            "athletes.id of meet.yaml, else by name and year of birth; what is not certain is",
            "kept apart and told (docs/season.md).",
            ""
        },
        footer = {
            "",
            "Examples:",
            "    boardtopit season may june july --out season-2026",
            "    boardtopit season results/* --out season-2026 --language de",
            "",
            "Exit codes: 0 done, 2 wrong input, 3 a fault of the program."
        })
final class SeasonCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    @Parameters(paramLabel = "OUT", arity = "1..*", description = "Folders of results, in any order.")
    private List<Path> folders;

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "Folder for the season's own files.")
    private Path out;

    @Option(
            names = "--bibs-stay",
            description = "A bib belongs to one athlete for the whole season: join those without a name by it.")
    private boolean bibsStay;

    @Option(
            names = "--language",
            paramLabel = "CODE",
            converter = LanguageCode.class,
            defaultValue = "en",
            description = "Of the page: en or de. Default: ${DEFAULT-VALUE}.")
    private Language language;

    /** A language by its code. */
    static final class LanguageCode implements ITypeConverter<Language> {
        @Override
        public Language convert(String code) {
            for (Language one : Language.values()) {
                if (one.code().equals(code)) {
                    return one;
                }
            }
            throw new TypeConversionException("must be en or de, was '" + code + "'");
        }
    }

    SeasonCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, IOException {
        requireOwnFolder();
        List<FinishedFolder> finished = new ArrayList<>();
        for (Path folder : folders) {
            finished.add(FinishedFolder.open(folder, Version.number()));
        }
        Season season = Season.of(finished, bibsStay);
        OutputFolder.prepare(out);
        new SeasonTables(season).write(TableWriter.ofSeason(out, finished.get(0).format()));
        Path page = new SeasonPage(language).write(season, out);
        tell(season, page);
        return ExitCode.DONE;
    }

    /** The season's tables have names that tables of a run have too. */
    private void requireOwnFolder() throws InputException {
        if (Files.exists(out.resolve("run.json"), LinkOption.NOFOLLOW_LINKS)) {
            throw new InputException(
                    out,
                    "holds the results of a run, which would be written over; give the season a folder of its own");
        }
    }

    private void tell(Season season, Path page) {
        Console console = surroundings.console();
        season.notices().forEach(console::warning);
        long several = season.athletes().stream()
                .filter(athlete -> athlete.competitions().size() > 1)
                .count();
        console.say(String.format(
                Locale.ROOT,
                "%d athletes of %d folders, %d of them in more than one competition",
                season.athletes().size(),
                folders.size(),
                several));
        console.say("Page:   " + page);
        console.say("Tables: " + out.resolve("athletes.csv")
                + ", trends.csv, recurring.csv, competitions.csv, appearances.csv");
    }
}
