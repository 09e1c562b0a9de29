package org.boardtopit.video.ffmpeg;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.video.ClipFacts;
import org.boardtopit.video.ClipProbe;
import org.boardtopit.video.FrameTimes;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/**
 * Looks at clips with FFmpeg: the packets are read once without decoding them, which gives every stamp; then the reader of
 * the run itself is opened, and goes from key picture to key picture.
 *
 * @param decoderThreads threads to decode with, at least 1
 */
public record FfmpegClipProbe(int decoderThreads) implements ClipProbe {
    /** Enough for three minutes at 100 frames a second; of longer clips only the beginning is counted. */
    private static final int MOST_PACKETS = 20_000;

    public FfmpegClipProbe {
        if (decoderThreads < 1) {
            throw new IllegalArgumentException("decoderThreads must be at least 1, was " + decoderThreads);
        }
    }

    @Override
    public ClipFacts look(Path clip, List<Double> shares, Samples samples) throws VideoException {
        PacketScan scan = scan(clip);
        FrameTimes times = FrameTimes.of(scan.stampsUs());
        try (FfmpegFrameReader reader = new FfmpegFrameReader(clip, decoderThreads)) {
            for (double share : shares) {
                sample(reader, scan, share, Math.round(share * times.spanUs()), samples);
            }
            return new ClipFacts(
                    reader.info(), times, scan.complete(), reader.tone(), reader.bitDepth(), scan.brokenOff());
        }
    }

    private static PacketScan scan(Path clip) throws VideoException {
        try (PictureDecoder decoder = new PictureDecoder(clip, 1)) {
            return decoder.scan(MOST_PACKETS);
        }
    }

    private static void sample(FfmpegFrameReader reader, PacketScan scan, double share, long timeUs, Samples samples)
            throws VideoException {
        Optional<VideoFrame> found = reader.nextFrom(timeUs, scan.keyBefore(timeUs));
        if (found.isEmpty()) {
            return;
        }
        VideoFrame first = found.get().copy(); // the reader has one buffer
        Optional<VideoFrame> second = reader.next();
        if (second.isPresent()) {
            samples.pair(share, first, second.get());
        }
    }
}
