package org.boardtopit.report.page;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Stream;

/** The pictures, videos and tables that are in the output folder, as links from the page beside them. */
final class PageFiles {
    private static final String[] FOLDERS = {"", "overlays", "stills", "comparisons"};

    private static final String COMPARISONS = "comparisons/";
    private static final String VIDEO = ".mp4";
    private static final String TRUE_TIME = "-true_time";

    private final Set<String> there;

    private PageFiles(Set<String> there) {
        this.there = there;
    }

    /** Looks once; what comes later is on the next page. */
    static PageFiles in(Path out) throws IOException {
        Set<String> there = new HashSet<>();
        for (String folder : FOLDERS) {
            Path path = out.resolve(folder);
            if (Files.isDirectory(path, LinkOption.NOFOLLOW_LINKS)) {
                try (Stream<Path> files = Files.list(path)) {
                    files.filter(file -> Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS))
                            .forEach(file -> there.add((folder.isEmpty() ? "" : folder + "/") + file.getFileName()));
                }
            }
        }
        return new PageFiles(there);
    }

    Optional<String> overlay(String clip) {
        return link("overlays/" + clip + ".mp4");
    }

    /**
     * A still.
     *
     * @param instant such as touchdown, toe_off
     */
    Optional<String> still(String clip, int contact, String instant) {
        return link("stills/" + clip + "-" + contact + "-" + instant + ".jpg");
    }

    Optional<String> strip(String clip) {
        return link("stills/" + clip + "-strip.jpg");
    }

    Optional<String> phasePicture(String clip) {
        return link("stills/" + clip + "-phases.jpg");
    }

    /**
     * The videos that compare an attempt with another, by their names.
     *
     * @param clips names of the clips of an athlete
     */
    Map<String, String> comparisons(Collection<String> clips) {
        Map<String, String> videos = new TreeMap<>();
        for (String path : there) {
            if (path.startsWith(COMPARISONS) && path.endsWith(VIDEO)) {
                String name = path.substring(COMPARISONS.length(), path.length() - VIDEO.length());
                String second = name.endsWith(TRUE_TIME) ? name.substring(0, name.length() - TRUE_TIME.length()) : name;
                if (clips.stream().anyMatch(clip -> name.startsWith(clip + "-") || second.endsWith("-" + clip))) {
                    videos.put(name, encoded(path));
                }
            }
        }
        return videos;
    }

    Optional<String> table(String fileName) {
        return link(fileName);
    }

    private Optional<String> link(String path) {
        return there.contains(path) ? Optional.of(encoded(path)) : Optional.empty();
    }

    /** RFC 3986: what may not stand in a path, also # and ? in the names of clips. */
    static String encoded(String path) {
        StringBuilder link = new StringBuilder();
        for (String part : path.split("/", -1)) {
            link.append(link.isEmpty() ? "" : "/");
            link.append(URLEncoder.encode(part, StandardCharsets.UTF_8).replace("+", "%20"));
        }
        return link.toString();
    }
}
