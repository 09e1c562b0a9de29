package org.boardtopit.report.page;

import java.util.List;
import org.boardtopit.report.page.AttemptView.Link;
import org.boardtopit.report.page.SeriesPlots.Plot;

/**
 * One athlete.
 *
 * @param id of the section
 * @param bestLine the best attempt in a sentence; empty without a distance
 * @param firstPriority of {@code priorities}, for the overview; empty when there is none
 * @param comparison best against the others; null when there is nothing to compare
 * @param videos that compare one of the attempts with another
 */
record SeriesView(
        String id,
        String name,
        String bestLine,
        String progressLine,
        String firstPriority,
        List<FindingView> priorities,
        List<FindingView> strengths,
        List<FindingView> remarks,
        List<Plot> plots,
        ComparisonView comparison,
        List<Link> videos,
        List<AttemptView> attempts) {

    public boolean hasPriorities() {
        return !priorities.isEmpty();
    }

    public boolean hasStrengths() {
        return !strengths.isEmpty();
    }

    public boolean hasRemarks() {
        return !remarks.isEmpty();
    }

    public boolean hasVideos() {
        return !videos.isEmpty();
    }

    public boolean hasPlots() {
        return !plots.isEmpty();
    }

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

    /** A picture with what it shows. */
    record Still(String link, String caption) {}

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
