package org.boardtopit.season.page;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.boardtopit.report.page.Lookup;
import org.boardtopit.report.page.Templates;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.season.Entrant;
import org.boardtopit.season.Season;
import org.boardtopit.season.SeasonAthlete;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/** Writes the page of a season: one file that needs nothing else, not even a network. */
public final class SeasonPage {
    public static final String FILE_NAME = "index.html";

    private final Words words;
    private final Words shared;

    public SeasonPage(Language language) {
        this.words = Words.of("season", language);
        this.shared = Words.of("page", language);
    }

    /**
     * Writes it into a folder, beside the tables, which are there already; an earlier page stays untouched until the new one is
     * complete.
     *
     * @return the file
     */
    public Path write(Season season, Path folder) throws IOException {
        String page = Templates.render("season", view(season, tables(folder)));
        Path file = folder.resolve(FILE_NAME);
        WholeFile.write(file, out -> out.write(page));
        return file;
    }

    private static List<String> tables(Path folder) throws IOException {
        try (Stream<Path> files = Files.list(folder)) {
            return files.map(file -> file.getFileName().toString())
                    .filter(name -> name.endsWith(".csv") || name.equals("tables.xlsx"))
                    .sorted()
                    .toList();
        }
    }

    private SeasonView view(Season season, List<String> tables) {
        List<SeasonView.AthleteView> athletes = new ArrayList<>();
        for (SeasonAthlete athlete : byCompetitions(season.athletes())) {
            athletes.add(new AthleteWords(words, shared, athlete).view("a" + (athletes.size() + 1)));
        }
        return new SeasonView(
                words.language().code(),
                new Lookup(key -> words.has(key) ? words.get(key) : shared.get(key)),
                words.get("season"),
                subtitle(season),
                athletes,
                season.notices(),
                tables);
    }

    /** Those with most to tell first; the others in the order of their names, as they come. */
    private static List<SeasonAthlete> byCompetitions(List<SeasonAthlete> athletes) {
        return athletes.stream()
                .sorted(Comparator.comparingInt(
                        (SeasonAthlete a) -> -a.competitions().size()))
                .toList();
    }

    private String subtitle(Season season) {
        List<Entrant> all = season.athletes().stream()
                .flatMap(a -> a.appearances().stream())
                .toList();
        if (all.isEmpty()) {
            return "";
        }
        LocalDate first =
                all.stream().map(Entrant::date).min(Comparator.naturalOrder()).orElseThrow();
        LocalDate last =
                all.stream().map(Entrant::date).max(Comparator.naturalOrder()).orElseThrow();
        long competitions = all.stream()
                .map(e -> e.date() + " " + e.competition())
                .distinct()
                .count();
        return words.format(
                "season_span",
                words.date(first),
                words.date(last),
                Long.toString(competitions),
                Integer.toString(season.athletes().size()));
    }
}
