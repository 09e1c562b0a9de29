package org.boardtopit.report.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.boardtopit.report.page.AttemptView.Video;
import org.boardtopit.wording.Words;

/** Finds the videos that lay an attempt of an athlete beside another one, of the same athlete or of somebody else. */
final class ComparisonVideos {
    private final Words words;
    private final Naming naming;
    private final PageFiles files;
    private final List<Series> all;

    ComparisonVideos(Words words, PageFiles files, List<Series> all) {
        this.words = words;
        this.naming = new Naming(words);
        this.files = files;
        this.all = List.copyOf(all);
    }

    /** Those whose first attempt is one of the series. */
    List<Video> of(Series series) {
        List<Video> videos = new ArrayList<>();
        for (Attempt first : series.attempts()) {
            for (Series other : all) {
                for (Attempt second : other.attempts()) {
                    String one = first.file().name();
                    String two = second.file().name();
                    String label = words.format("comparison_video", name(series, first), name(other, second));
                    add(series, videos, files.comparison(one, two), label);
                    add(series, videos, files.comparisonInTrueTime(one, two), label + ", " + words.get("true_time"));
                }
            }
        }
        return videos;
    }

    private void add(Series series, List<Video> videos, Optional<String> link, String label) {
        String id = "comparison-" + series.number() + "-" + (videos.size() + 1);
        link.ifPresent(found -> videos.add(new Video(id, found, label, "", "", List.of())));
    }

    private String name(Series series, Attempt attempt) {
        return naming.withoutName(series) + ", " + naming.attempt(series, attempt);
    }
}
