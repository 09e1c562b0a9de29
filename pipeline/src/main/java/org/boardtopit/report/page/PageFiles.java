package org.boardtopit.report.page;

import java.io.IOException;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.boardtopit.report.stills.StillInstant;
import org.boardtopit.report.stills.StillNames;

/** The pictures, videos and tables that are in the output folder, as links from the page beside them. */
final class PageFiles {
    private static final String[] FOLDERS = {"", "overlays", StillNames.FOLDER, "comparisons"};

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

    Optional<String> still(String clip, int contact, StillInstant instant) {
        return link(StillNames.FOLDER + "/" + StillNames.still(clip, contact, instant));
    }

    Optional<String> strip(String clip) {
        return link(StillNames.FOLDER + "/" + StillNames.strip(clip));
    }

    Optional<String> phasePicture(String clip) {
        return link(StillNames.FOLDER + "/" + StillNames.phases(clip));
    }

    /** The video that lays two clips side by side, the first one first. */
    Optional<String> comparison(String first, String second) {
        return link("comparisons/" + first + "-" + second + ".mp4");
    }

    /** The same without stretching time. */
    Optional<String> comparisonInTrueTime(String first, String second) {
        return link("comparisons/" + first + "-" + second + "-true_time.mp4");
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
