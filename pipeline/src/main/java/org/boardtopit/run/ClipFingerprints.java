package org.boardtopit.run;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.ReferencePicture;

/**
 * What the result of a clip is made from, as one number: the program, the networks and the effort, what the meet sheet says of
 * the whole competition, the rules of observations, and of the clip and of those joined to it the bytes, the row of the
 * sheet, the corrections, the athlete, the camera with its marks and its reference picture.
 *
 * <p>Left out on purpose: where files lie, the line of a row in a sheet, and how tables are written, which change nothing in a
 * result. Whatever else is added to the records of clip or sheet counts by itself.
 */
public final class ClipFingerprints {
    private final String ofAll;
    private final ClipDigests digests;

    /** For one run that reads every clip anew. */
    public ClipFingerprints(String program, MeetSheet meet, String measuring) throws IOException {
        this(program, meet, measuring, ClipDigests.unremembered());
    }

    /**
     * For one run.
     *
     * @param program identifies the program ({@link ProgramHash})
     * @param measuring networks and settings that change numbers, in a fixed form
     * @param digests of the clips' bytes
     * @throws IOException when the rules of observations cannot be read
     */
    public ClipFingerprints(String program, MeetSheet meet, String measuring, ClipDigests digests) throws IOException {
        this.digests = digests;
        Optional<Path> rules = meet.observationRules();
        this.ofAll = String.join(
                "\n",
                program,
                measuring,
                competition(meet),
                rules.isEmpty() ? "built-in" : FileDigests.of(rules.get()));
    }

    /** Cameras, athletes and rows come with the clips. */
    private static String competition(MeetSheet meet) {
        ObjectNode tree = RecordJson.mapperOfRecords().valueToTree(meet);
        tree.remove(List.of(
                "file", "attempts", "cameras", "athletes", "settings", "tables", "observationRules", "comparisons"));
        if (tree.get("safeguards") instanceof ObjectNode safeguards) {
            safeguards.remove("retention"); // a later last day changes no result
        }
        return tree.toString();
    }

    /**
     * The fingerprint of one clip's result.
     *
     * @param joined the clips that show the same attempt and are measured with it
     * @throws IOException when a file cannot be read
     */
    public String of(Clip clip, List<Clip> joined) throws IOException {
        MessageDigest digest = FileDigests.sha256();
        add(digest, ofAll);
        addClip(digest, clip);
        for (Clip other : joined) {
            addClip(digest, other);
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    private void addClip(MessageDigest digest, Clip clip) throws IOException {
        ObjectNode tree = RecordJson.mapperOfRecords().valueToTree(clip);
        tree.remove("file");
        tree.put("fileName", clip.fileName());
        if (tree.get("athlete") instanceof ObjectNode athlete) {
            athlete.remove("team"); // decides on comparisons only
        }
        if (tree.get("entry") instanceof ObjectNode entry) {
            entry.remove("line");
        }
        if (tree.get("athlete") instanceof ObjectNode athlete) {
            athlete.remove("id"); // tells who it is, which only the season asks
        }
        for (JsonNode correction : tree.withArray("corrections")) {
            ((ObjectNode) correction).remove("line");
        }
        if (tree.at("/camera/reference") instanceof ObjectNode reference) {
            reference.remove(List.of("picture", "marksFile"));
        }
        add(digest, tree.toString());
        add(digest, digests.of(clip, new byte[0]));
        Optional<ReferencePicture> reference = clip.camera().flatMap(Camera::reference);
        if (reference.isPresent()) {
            add(digest, FileDigests.of(reference.get().picture()));
        }
    }

    private static void add(MessageDigest digest, String text) {
        digest.update((text + "\n").getBytes(StandardCharsets.UTF_8));
    }
}
