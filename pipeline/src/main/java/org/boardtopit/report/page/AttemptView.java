package org.boardtopit.report.page;

import java.util.List;
import org.boardtopit.report.page.SeriesView.Still;

/**
 * One attempt.
 *
 * @param id of its section on the page
 * @param summary what is read before it is opened
 * @param video null when there is none
 * @param strip null when there is none, like phasePicture
 * @param quality in a sentence
 * @param warnings as the tables have them
 * @param corrections what was put right, by whom and why
 */
record AttemptView(
        String id,
        String title,
        String summary,
        boolean corrected,
        Video video,
        List<Video> otherVideos,
        Still strip,
        Still phasePicture,
        List<Still> stills,
        NumbersView contacts,
        NumbersView phases,
        String quality,
        String qualityStyle,
        List<String> warnings,
        List<String> corrections,
        List<Link> links) {

    public boolean hasCorrections() {
        return !corrections.isEmpty();
    }

    public boolean hasStills() {
        return !stills.isEmpty();
    }

    public boolean hasWarnings() {
        return !warnings.isEmpty();
    }

    /**
     * A video with the instants to which it can be taken.
     *
     * @param clipS length in the time of the tables, as the page's script reads it; empty when not known
     * @param fps frames a second in that time; empty when not known
     */
    record Video(String id, String link, String label, String clipS, String fps, List<Chapter> chapters) {
        public boolean hasChapters() {
            return !chapters.isEmpty();
        }
    }

    /**
     * An instant of a video.
     *
     * @param video id of the video
     * @param link to the instant, for readers without scripts
     * @param atS in the time of the tables, as the page's script reads it
     */
    record Chapter(String video, String link, String atS, String label, String time) {}

    /** To a file beside the page. */
    record Link(String link, String label) {}

    /** A small table: a heading over each column, a name before each row. */
    record NumbersView(String caption, String corner, List<String> columns, List<NumbersRow> rows) {
        public boolean any() {
            return !rows.isEmpty();
        }
    }

    /** A row of it. */
    record NumbersRow(String name, boolean corrected, List<String> cells) {}
}
