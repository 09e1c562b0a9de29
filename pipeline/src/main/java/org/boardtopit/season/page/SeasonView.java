package org.boardtopit.season.page;

import java.util.List;
import org.boardtopit.report.page.Lookup;

/**
 * The page of a season in words, as season.mustache shows it.
 *
 * @param lang code of the language
 * @param heading and the line below it
 * @param notices in English, like everything the program says of its inputs
 * @param tables names of the files beside the page
 */
record SeasonView(
        String lang,
        Lookup words,
        String heading,
        String subtitle,
        List<AthleteView> athletes,
        List<String> notices,
        List<String> tables) {

    public boolean hasNotices() {
        return !notices.isEmpty();
    }

    /**
     * One athlete.
     *
     * @param id of the section
     * @param best empty text when there is no distance
     * @param trends sentences; one says so when there is none
     * @param trendNote empty text when nothing needs to be said
     * @param changes sentences; empty when there is no earlier competition
     */
    record AthleteView(
            String id,
            String name,
            String lead,
            String best,
            List<String> trends,
            String trendNote,
            String changesTitle,
            List<String> changes,
            List<RecurringView> recurring,
            List<PlotView> plots,
            List<CompetitionView> competitions) {

        public boolean hasChanges() {
            return !changes.isEmpty();
        }

        public boolean hasRecurring() {
            return !recurring.isEmpty();
        }

        public boolean hasPlots() {
            return !plots.isEmpty();
        }
    }

    /** What comes back, where it is, and how often. */
    record RecurringView(String finding, String where, String count) {}

    /**
     * A plot.
     *
     * @param note empty text where nothing needs to be said
     */
    record PlotView(String title, String svg, String note) {}

    /** A row of the competitions. */
    record CompetitionView(String name, String day, String attempts, String best, String wind) {}
}
