package org.boardtopit.run;

import java.io.File;
import java.io.IOException;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;

/**
 * A number that is another one for another program: of the content of its own classes and resources, and of the names of the
 * libraries, which hold their versions. The same program built twice has the same.
 */
public final class ProgramHash {
    private ProgramHash() {}

    /**
     * Of the jars or folders that hold the classes given, one of each module.
     *
     * @throws IOException when one of them cannot be read
     */
    public static String of(Class<?>... modules) throws IOException {
        MessageDigest digest = FileDigests.sha256();
        for (Class<?> module : modules) {
            Path place = place(module);
            if (Files.isDirectory(place)) {
                addFolder(digest, place);
            } else {
                addJar(digest, place);
            }
        }
        String path = System.getProperty("java.class.path", "");
        Stream.of(path.split(File.pathSeparator, -1))
                .filter(p -> p.endsWith(".jar"))
                .map(p -> Path.of(p).getFileName().toString())
                .sorted()
                .forEach(name -> add(digest, name));
        return HexFormat.of().formatHex(digest.digest());
    }

    private static Path place(Class<?> module) throws IOException {
        try {
            return Path.of(
                    module.getProtectionDomain().getCodeSource().getLocation().toURI());
        } catch (URISyntaxException e) {
            throw new IOException("the place of " + module + " is no path", e);
        }
    }

    private static void addFolder(MessageDigest digest, Path folder) throws IOException {
        List<Path> files;
        try (Stream<Path> all = Files.walk(folder)) {
            files = all.filter(Files::isRegularFile).sorted().toList();
        }
        for (Path file : files) {
            add(digest, folder.relativize(file).toString());
            FileDigests.add(digest, file);
        }
    }

    /** Checksums of the content without the times of the entries, which a new build changes. */
    private static void addJar(MessageDigest digest, Path jar) throws IOException {
        try (ZipFile zip = new ZipFile(jar.toFile())) {
            zip.stream()
                    .filter(entry -> !entry.isDirectory())
                    .sorted(Comparator.comparing(ZipEntry::getName))
                    .forEach(entry ->
                            add(digest, String.format(Locale.ROOT, "%s %08x", entry.getName(), entry.getCrc())));
        }
    }

    private static void add(MessageDigest digest, String text) {
        digest.update((text + "\n").getBytes(StandardCharsets.UTF_8));
    }
}
