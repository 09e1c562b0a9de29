package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.DataInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.List;
import java.util.function.Supplier;
import java.util.zip.GZIPInputStream;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.ClipLandmarksFile;
import org.boardtopit.pose.Look;
import org.boardtopit.subject.PeopleFile;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;
import org.boardtopit.wording.Language;

/** What a run keeps of the first clip of the sample competition, so that tests need not read it with the network. */
public final class KeptSample {
    public static final String CLIP = "A1_static_720p60";
    public static final Path COMPETITION = Path.of("..", "sample-config", "competition");

    private static final String RESOURCES = "/org/boardtopit/sample/";

    private KeptSample() {}

    /** The clip alone, as the sample's sheets have it. */
    public static Clip clip() throws InputException {
        MeetSheet meet = MeetSheetReader.read(COMPETITION.resolve("meet.yaml"));
        Path file = COMPETITION.resolve(CLIP + ".mp4");
        return ClipList.join(new ClipFolder(List.of(file), List.of()), meet)
                .clips()
                .get(0);
    }

    /** Its landmarks. When their layout changes, put those of a run with the default effort in their place. */
    public static ClipLandmarks landmarks(Path scratch) throws IOException {
        Path file = scratch.resolve("sample.landmarks");
        try (InputStream in = KeptSample.class.getResourceAsStream(RESOURCES + CLIP + ".landmarks")) {
            Files.copy(in, file, StandardCopyOption.REPLACE_EXISTING);
        }
        return ClipLandmarksFile.read(file, fingerprint(file))
                .orElseThrow(() -> new AssertionError("the layout of landmarks has changed: after boardtopit process "
                        + COMPETITION + " --meet " + COMPETITION + "/meet.yaml --out results copy results/work/" + CLIP
                        + ".landmarks to src/test/resources" + RESOURCES));
    }

    /** Lays landmarks of a clip, in which there is nobody else, which may be a copy of another name, into an output folder. */
    public static void keep(Clip clip, NetworkCard network, Effort effort, Path out) throws IOException {
        Path scratch = Files.createDirectories(out.resolve("work"));
        ClipSource source = new ClipSources(new FfmpegClipOpener(1), network, Look.of(effort), out).of(clip);
        ClipLandmarksFile.write(source.kept(".landmarks"), source.fingerprint(), landmarks(scratch));
        PeopleFile.write(source.kept(".people"), source.fingerprint(), List.of());
        Files.delete(scratch.resolve("sample.landmarks"));
    }

    /** Measures without a network what {@link #keep} laid. */
    public static Supplier<ClipMeasurer> measurers(MeetSheet meet, NetworkCard network, Effort effort, Path out) {
        return () -> new ClipProcessor(
                meet,
                AttemptViews.NONE,
                out,
                new ClipProcessor.KeptTools(
                        new FfmpegClipOpener(1),
                        network,
                        Look.of(effort),
                        ClipDigests.trusting(out),
                        1,
                        RuleSetReader.builtIn(Language.ENGLISH),
                        false));
    }

    /** Under which the file was written; the second of its texts. */
    private static String fingerprint(Path file) throws IOException {
        try (DataInputStream in = new DataInputStream(new GZIPInputStream(Files.newInputStream(file)))) {
            assertTrue(in.readUTF().startsWith("boardtopit landmarks "), "a file of this program");
            return in.readUTF();
        }
    }
}
