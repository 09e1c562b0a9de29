package org.boardtopit.run;

import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.Optional;
import org.boardtopit.report.stills.StillNames;

/** Deletes files of the output folder. A link is deleted as a link; what it leads to is left alone. */
public final class OutputFiles {
    private OutputFiles() {}

    /** A file, a link, or a folder with all that is in it. */
    public static void delete(Path path) throws IOException {
        Files.walkFileTree(path, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path folder, IOException broken) throws IOException {
                if (broken != null) {
                    throw broken;
                }
                Files.delete(folder);
                return FileVisitResult.CONTINUE;
            }
        });
    }

    /** Stills of a clip, of which an earlier start may have seen other contacts. */
    static void deleteStills(Path folder, String clip) throws IOException {
        try (DirectoryStream<Path> files = Files.newDirectoryStream(folder)) {
            for (Path file : files) {
                if (StillNames.clipOf(file.getFileName().toString()).equals(Optional.of(clip))) {
                    Files.deleteIfExists(file);
                }
            }
        }
    }

    /** How many files and links there are below a folder, or 1 for what is none; links are not followed. */
    static int count(Path path) throws IOException {
        int[] files = new int[1];
        Files.walkFileTree(path, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) {
                files[0]++;
                return FileVisitResult.CONTINUE;
            }
        });
        return files[0];
    }
}
