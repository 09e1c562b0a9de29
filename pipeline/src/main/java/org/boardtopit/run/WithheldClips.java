package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.report.page.PageWriter;
import org.boardtopit.report.stills.StillNames;
import org.boardtopit.report.tables.WrittenTables;

/**
 * Removes what an earlier run left of clips that are withheld now: pictures, landmarks, rows. It is done before the first clip
 * of a run, so that nothing of them can be seen even while the run goes on. A clip that has been deleted since is known by its
 * row in the attempts sheet.
 */
final class WithheldClips {
    /** Folders of the output whose files are named after clips. */
    private static final List<String> FOLDERS = List.of("work", "overlays", "stills", "comparisons");

    /** What follows the name of a clip in the name of a file of it. */
    private static final String AFTER_NAME = ".-_";

    private WithheldClips() {}

    static void remove(Path out, ClipList list) throws IOException {
        Set<String> withheld = new HashSet<>();
        Set<String> withheldFiles = new HashSet<>();
        Set<String> others = new HashSet<>();
        Set<String> otherFiles = new HashSet<>();
        for (Clip clip : list.clips()) {
            if (clip.withheld().isPresent()) {
                withheld.add(clip.name());
                withheldFiles.add(clip.fileName());
            } else {
                others.add(clip.name());
                otherFiles.add(clip.fileName());
            }
        }
        withheldFiles.addAll(list.gone());
        for (String file : withheldFiles) {
            withheld.add(file); // a clip that was one of two of the same stem then
            withheld.add(stem(file)); // and the other way round
        }
        withheld.removeAll(others);
        withheldFiles.removeAll(otherFiles);
        if (withheld.isEmpty()) {
            return;
        }
        for (String folder : FOLDERS) {
            removeFiles(out.resolve(folder), withheld, others);
        }
        WrittenTables tables = new WrittenTables(out);
        tables.removeClips(name -> isOf(name, withheldFiles, otherFiles));
        tables.renewWorkbook();
        Files.deleteIfExists(out.resolve(PageWriter.FILE_NAME)); // the run writes another
    }

    /** As a row of the sheet may name its clip: capitals do not count, and the ending may be missing. */
    private static boolean isOf(String fileName, Set<String> withheldFiles, Set<String> otherFiles) {
        return !otherFiles.contains(fileName)
                && withheldFiles.stream()
                        .anyMatch(file -> fileName.equalsIgnoreCase(file)
                                || stem(fileName).equalsIgnoreCase(file));
    }

    private static String stem(String fileName) {
        int dot = fileName.lastIndexOf('.');
        return dot > 0 ? fileName.substring(0, dot) : fileName;
    }

    private static void removeFiles(Path folder, Set<String> withheld, Set<String> others) throws IOException {
        if (!Files.isDirectory(folder, LinkOption.NOFOLLOW_LINKS)) {
            return;
        }
        List<Path> files;
        try (Stream<Path> all = Files.list(folder)) {
            files = all.toList();
        }
        for (Path file : files) {
            String name = file.getFileName().toString();
            if (shows(folder, name, withheld, others)) {
                OutputFiles.delete(file);
            }
        }
    }

    private static boolean shows(Path folder, String fileName, Set<String> withheld, Set<String> others) {
        boolean comparison = folder.endsWith(ComparisonFiles.FOLDER) || fileName.endsWith(ComparisonFiles.MADE_FROM);
        if (comparison && ComparisonFiles.shows(fileName, withheld, others)) {
            return true;
        }
        if (others.contains(stem(fileName))) {
            return false; // jump.mp4 is the overlay of jump.mov, whatever became of a clip jump.mp4
        }
        // jump.mp4 is withheld, jump-2.mp4 is not: the longest name that fits says whose file jump-2.landmarks is
        Optional<String> still = folder.endsWith(StillNames.FOLDER) ? StillNames.clipOf(fileName) : Optional.empty();
        return still.map(name -> !others.contains(name) && withheld.stream().anyMatch(name::equalsIgnoreCase))
                .orElseGet(() -> longest(fileName, withheld) > longest(fileName, others));
    }

    /** Length of the longest clip name with which a file name begins; -1 when there is none. */
    private static int longest(String fileName, Set<String> names) {
        return names.stream()
                .filter(name -> fileName.regionMatches(true, 0, name, 0, name.length())
                        && (fileName.length() == name.length()
                                || AFTER_NAME.indexOf(fileName.charAt(name.length())) >= 0))
                .mapToInt(String::length)
                .max()
                .orElse(-1);
    }
}
