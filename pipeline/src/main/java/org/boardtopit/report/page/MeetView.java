package org.boardtopit.report.page;

import com.samskivert.mustache.Mustache;
import java.util.List;
import org.boardtopit.report.page.AttemptView.Link;

/**
 * Everything on the page, in finished words. Lists are empty and texts are empty where there is nothing to say.
 *
 * @param lang language of the page
 * @param words of the bundle, by key
 * @param heading the competition's name
 * @param subtitle its date and how many clips were measured
 * @param unfinished how far the run is, while it goes on
 * @param tables links to the tables beside the page
 */
record MeetView(
        String lang,
        Mustache.CustomContext words,
        String heading,
        String subtitle,
        String unfinished,
        List<SeriesView> series,
        boolean hasWind,
        List<ResultView> results,
        MissingView missing,
        List<Link> tables) {

    public boolean hasResults() {
        return !results.isEmpty();
    }

    /**
     * A row of the results.
     *
     * @param id of the attempt on the page
     * @param sort keys by which the columns are ordered
     */
    record ResultView(
            String id,
            String bib,
            String athlete,
            String attempt,
            String distance,
            String wind,
            String hop,
            String step,
            String jump,
            String effort,
            String speed,
            String quality,
            String qualityStyle,
            boolean best,
            boolean corrected,
            SortKeys sort) {}

    /** Numbers as the program writes them, empty where unknown. */
    record SortKeys(String attempt, String distance, String wind, String hop, String step, String jump, String speed) {}

    /**
     * Clips without a measured attempt.
     *
     * @param withheld a sentence; empty when there is none
     * @param skipped a sentence; empty when there is none
     * @param skippedFiles names with reasons
     */
    record MissingView(
            List<Trouble> notMeasured,
            String withheld,
            List<String> withheldFiles,
            String skipped,
            List<Trouble> skippedFiles) {
        public boolean any() {
            return !notMeasured.isEmpty() || !withheld.isEmpty() || !skipped.isEmpty();
        }
    }

    /** A file and why nothing was measured. */
    record Trouble(String file, String reason) {}
}
