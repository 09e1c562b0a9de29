package org.boardtopit.subject;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.boardtopit.signal.Point2;

/**
 * Stores where people are in a clip: a gzip file of big-endian numbers behind a fingerprint of what they were made from. There
 * are places and sizes in it and nothing that tells who anybody is.
 *
 * <p>Written under a temporary name and moved. A file of another fingerprint or layout, or a damaged one, reads as empty.
 */
public final class PeopleFile {
    /** Grows with every change of the layout, or of {@link PeopleSearch}. */
    private static final String LAYOUT = "boardtopit people 2";

    private PeopleFile() {}

    /** Writes the file; the fingerprint tells later what it was made from. */
    public static void write(Path file, String fingerprint, List<PersonInView> people) throws IOException {
        Path temporary = file.resolveSibling(file.getFileName() + ".part");
        try (DataOutputStream out = new DataOutputStream(
                new BufferedOutputStream(new GZIPOutputStream(Files.newOutputStream(temporary))))) {
            out.writeUTF(LAYOUT);
            out.writeUTF(fingerprint);
            out.writeInt(people.size());
            for (PersonInView p : people) {
                out.writeInt(p.frame());
                out.writeDouble(p.hips().x());
                out.writeDouble(p.hips().y());
                out.writeDouble(p.head().x());
                out.writeDouble(p.head().y());
                out.writeDouble(p.staturePx());
            }
        }
        Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
    }

    /** Reads the file when it is there, whole, and was made from the same things; else empty. */
    public static Optional<List<PersonInView>> read(Path file, String fingerprint) {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (DataInputStream in =
                new DataInputStream(new BufferedInputStream(new GZIPInputStream(Files.newInputStream(file))))) {
            if (!in.readUTF().equals(LAYOUT) || !in.readUTF().equals(fingerprint)) {
                return Optional.empty();
            }
            int count = in.readInt();
            List<PersonInView> people = new ArrayList<>();
            for (int i = 0; i < count; i++) {
                people.add(new PersonInView(in.readInt(), point(in), point(in), in.readDouble()));
            }
            boolean whole = in.read() < 0; // reading to the very end makes gzip compare its checksum
            return whole ? Optional.of(List.copyOf(people)) : Optional.empty();
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty(); // cut off or damaged: as good as absent
        }
    }

    private static Point2 point(DataInputStream in) throws IOException {
        return new Point2(in.readDouble(), in.readDouble());
    }
}
