package org.boardtopit.run;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;

/** SHA-256 of files, block by block: a clip may be larger than the heap. */
final class FileDigests {
    private FileDigests() {}

    static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }

    static void add(MessageDigest digest, Path file) throws IOException {
        try (InputStream in = Files.newInputStream(file)) {
            byte[] block = new byte[1 << 16];
            for (int n = in.read(block); n >= 0; n = in.read(block)) {
                digest.update(block, 0, n);
            }
        }
    }

    /** In hexadecimal. */
    static String of(Path file) throws IOException {
        MessageDigest digest = sha256();
        add(digest, file);
        return HexFormat.of().formatHex(digest.digest());
    }
}
