package org.boardtopit.video.ffmpeg;

import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.PrefetchingReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.javacpp.Pointer;

/** A process of its own that reads clips as a run does, so that a crash of native code ends this one and no other. */
final class MutantReader {
    private static final PrintStream OUT = new PrintStream(System.out, true, StandardCharsets.UTF_8);

    private MutantReader() {}

    /** Says of every file in the order given: {@code begin INDEX}, then {@code INDEX WORD milliseconds megabytes text}. */
    public static void main(String[] files) {
        for (int i = 0; i < files.length; i++) {
            OUT.println("begin " + i);
            long startNs = System.nanoTime();
            String outcome = outcome(Path.of(files[i]));
            OUT.println(i + " "
                    + outcome.replaceFirst(
                            " ",
                            " " + (System.nanoTime() - startNs) / 1_000_000 + " " + Pointer.physicalBytes() / 1_000_000
                                    + " "));
        }
    }

    private static String outcome(Path clip) {
        try {
            int[] pairs = {0};
            new FfmpegClipProbe(1).look(clip, List.of(0.2, 0.8), (share, first, second) -> pairs[0]++);
            return "read " + frames(clip) + " frames";
        } catch (VideoException e) {
            return "refused " + e.getMessage();
        } catch (RuntimeException | Error e) {
            return "fault " + e;
        }
    }

    private static int frames(Path clip) throws VideoException {
        int count = 0;
        long lastUs = -1;
        try (FrameReader reader = new PrefetchingReader(new FfmpegFrameReader(clip, 2))) {
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                if (next.get().timestampUs() <= lastUs) {
                    throw new IllegalStateException(
                            "time went back to " + next.get().timestampUs());
                }
                lastUs = next.get().timestampUs();
                count++;
            }
        }
        return count;
    }
}
