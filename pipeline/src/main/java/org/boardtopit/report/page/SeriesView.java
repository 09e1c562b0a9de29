package org.boardtopit.report.page;

import java.util.List;
import org.boardtopit.report.page.SeriesPlots.Plot;

/**
 * One athlete.
 *
 * @param id of the section
 * @param bestLine the best attempt in a sentence; empty without a distance
 * @param progressSvg distances from attempt to attempt; empty with fewer than two
 * @param firstFinding a priority, else a strength, for the overview; null when there is neither
 * @param comparison best against the others; null when there is nothing to compare
 */
record SeriesView(
        String id,
        String name,
        String bestLine,
        String progressLine,
        String progressSvg,
        First firstFinding,
        List<FindingView> priorities,
        List<FindingView> strengths,
        List<FindingView> remarks,
        List<String> notVisible,
        List<Plot> plots,
        ComparisonView comparison,
        List<AttemptView.Video> comparisonVideos,
        List<AttemptView> attempts) {

    public boolean hasPriorities() {
        return !priorities.isEmpty();
    }

    public boolean hasStrengths() {
        return !strengths.isEmpty();
    }

    public boolean hasRemarks() {
        return !remarks.isEmpty() || !notVisible.isEmpty();
    }

    public boolean hasComparisonVideos() {
        return !comparisonVideos.isEmpty();
    }

    public boolean hasPlots() {
        return !plots.isEmpty();
    }

    /** What to look at first. */
    record First(String label, String finding) {}

    /**
     * Something that a coach would remark on.
     *
     * @param where phase, and the attempts in which it was seen
     * @param causedBy empty when nothing is known
     * @param practice empty when there is nothing to work on
     * @param still null when there is no picture
     * @param chapter of the video at that instant; null when there is none
     */
    record FindingView(
            String finding,
            String where,
            String text,
            String causedBy,
            String practice,
            String confidence,
            Still still,
            AttemptView.Chapter chapter) {}

    /**
     * A picture with what it shows.
     *
     * @param alt what somebody hears who does not see it; never a name
     */
    record Still(String link, String caption, String alt) {}

    /**
     * The best attempt against the mean of the others.
     *
     * @param sentence what is compared
     * @param note how many numbers were compared, and what chance does
     */
    record ComparisonView(String sentence, List<DifferenceView> differences, String note) {
        public boolean hasDifferences() {
            return !differences.isEmpty();
        }
    }

    /** One number that differs by more than its uncertainty. */
    record DifferenceView(String measure, String best, String others, String difference) {}
}
