package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.av_d2q;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.avutil.av_malloc;
import static org.bytedeco.ffmpeg.global.avutil.av_mallocz;
import static org.bytedeco.ffmpeg.global.avutil.av_rescale_q;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoWriter;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVChapter;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVOutputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Writes H.264 in MP4 with the index in front, so that it plays while it is still being loaded.
 *
 * <p>Each frame keeps its own time stamp to within a microsecond; the last lasts as long as the nominal frame rate says. H.264
 * in 4:2:0 needs an even size: an odd picture loses its last column or row. Nothing of the clip's metadata (place, date, device)
 * is carried over. One encoder thread gives the same file for the same frames; with more, the encoder's rate control depends on
 * which finishes first.
 */
public final class FfmpegVideoWriter implements VideoWriter {
    /** A multiple of all frame rates in use, the 1000/1001 ones included, so that their steps are whole numbers. */
    private static final int TICKS_PER_SECOND = 720_000;

    private static final String FIRST_CHAPTER = "Start";
    private static final int MIN_SIDE_PX = 16; // one macroblock

    private final Path target;
    private final Path part;
    private final int widthPx;
    private final int heightPx;
    private final AVRational timeBase = av_make_q(1, TICKS_PER_SECOND);
    private final AVRational microseconds = av_make_q(1, 1_000_000);
    private final long nominalTicks;
    private final AVFormatContext container = new AVFormatContext(null);
    private PictureEncoder encoder;
    private AVIOContext output;
    private AVPacket packet;
    private AVStream stream;
    private long lastTicks = -1;
    private boolean finished;
    private boolean closed;

    /**
     * Begins the file under the name of the target with ".part" added.
     *
     * @param target the final file; an existing one is replaced by {@link #finish}
     * @param widthPx width of every picture to come, at least 16
     * @param heightPx height of every picture to come, at least 16
     * @param nominalFps frames a second; times come from the frames themselves
     * @param encoderThreads threads to encode with, at least 1
     * @throws VideoException when the file cannot be created there
     */
    public FfmpegVideoWriter(Path target, int widthPx, int heightPx, double nominalFps, int encoderThreads)
            throws VideoException {
        if (widthPx < MIN_SIDE_PX || heightPx < MIN_SIDE_PX) {
            throw new IllegalArgumentException("a video is at least 16 x 16 pixels, was " + widthPx + " x " + heightPx);
        }
        if (!(nominalFps > 0) || encoderThreads < 1) {
            throw new IllegalArgumentException(
                    "nominalFps and encoderThreads must be positive, were " + nominalFps + " and " + encoderThreads);
        }
        this.target = target;
        this.part = target.resolveSibling(Libav.nameOf(target) + ".part");
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.nominalTicks = Math.max(1, Math.round(TICKS_PER_SECOND / nominalFps));
        Libav.load();
        try {
            packet = av_packet_alloc();
            encoder = new PictureEncoder(
                    target, widthPx & ~1, heightPx & ~1, widthPx * 3, nominalFps, timeBase, encoderThreads);
            beginFile(nominalFps);
        } catch (VideoException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private void beginFile(double nominalFps) throws VideoException {
        AVDictionary options = new AVDictionary(null);
        try (BytePointer url = Libav.url(part);
                BytePointer format = new BytePointer("mp4", StandardCharsets.US_ASCII)) {
            check(avformat_alloc_output_context2(container, (AVOutputFormat) null, format, url));
            container.flags(container.flags() | AVFormatContext.AVFMT_FLAG_BITEXACT); // no writer's name and date
            stream = avformat_new_stream(container, null);
            check(avcodec_parameters_from_context(stream.codecpar(), encoder.context()));
            stream.time_base(timeBase);
            stream.avg_frame_rate(av_d2q(nominalFps, 1_000_000));
            output = openOutput(url);
            container.pb(output);
            av_dict_set(options, "movflags", "+faststart", 0);
            check(avformat_write_header(container, options));
        } finally {
            av_dict_free(options);
        }
    }

    private AVIOContext openOutput(BytePointer url) throws VideoException {
        AVIOContext opened = new AVIOContext(null);
        int code = avio_open(opened, url, AVIO_FLAG_WRITE);
        if (code < 0) {
            throw new VideoException(Libav.nameOf(target) + ": cannot be created in "
                    + target.toAbsolutePath().getParent() + " (" + Libav.errorText(code) + ")");
        }
        return opened;
    }

    private int check(int code) throws VideoException {
        return Libav.check(code, target, "writing the video");
    }

    @Override
    public void write(VideoFrame frame) throws VideoException {
        requireOpen();
        if (frame.widthPx() != widthPx || frame.heightPx() != heightPx) {
            throw new IllegalArgumentException("frames of this video are " + widthPx + " x " + heightPx + ", was "
                    + frame.widthPx() + " x " + frame.heightPx());
        }
        long ticks = av_rescale_q(frame.timestampUs(), microseconds, timeBase);
        if (ticks <= lastTicks) {
            throw new IllegalArgumentException("time stamps must rise by 2 us at least, was " + frame.timestampUs()
                    + " at frame " + frame.index());
        }
        lastTicks = ticks;
        encoder.send(frame, ticks);
        writePackets();
    }

    private void requireOpen() {
        if (closed || finished) {
            throw new IllegalStateException("the video " + Libav.nameOf(target) + " is finished");
        }
    }

    private void writePackets() throws VideoException {
        while (encoder.receive(packet)) {
            packet.duration(nominalTicks); // counts for the last frame only; the others last until the next
            av_packet_rescale_ts(packet, timeBase, stream.time_base());
            packet.stream_index(stream.index());
            check(av_interleaved_write_frame(container, packet));
        }
    }

    @Override
    public void finish(List<Chapter> chapters) throws VideoException {
        requireOpen();
        if (lastTicks < 0) {
            throw new VideoException(Libav.nameOf(target) + ": no picture was written, so there is no video to finish");
        }
        encoder.end();
        writePackets();
        addChapters(fromZero(chapters));
        check(av_write_trailer(container));
        check(avio_closep(output));
        output = null;
        container.pb(null);
        finished = true;
        moveToTarget();
    }

    /** In order of time, with a chapter at 0: the text track that phones read would move the first one there. */
    private static List<Chapter> fromZero(List<Chapter> chapters) {
        List<Chapter> all = new ArrayList<>(chapters);
        all.sort(Comparator.comparingLong(Chapter::startUs));
        if (!all.isEmpty() && all.get(0).startUs() > 0) {
            all.add(0, new Chapter(FIRST_CHAPTER, 0));
        }
        return all;
    }

    /** The container owns and frees what is allocated here. The trailer writes it, so it may come as late as this. */
    private void addChapters(List<Chapter> chapters) {
        if (chapters.isEmpty()) {
            return;
        }
        Pointer room = av_malloc((long) chapters.size() * Pointer.sizeof(PointerPointer.class));
        PointerPointer<AVChapter> list = new PointerPointer<>(room);
        long endUs = av_rescale_q(lastTicks + nominalTicks, timeBase, microseconds);
        for (int i = 0; i < chapters.size(); i++) {
            Chapter chapter = chapters.get(i);
            long nextUs = i + 1 < chapters.size() ? chapters.get(i + 1).startUs() : endUs;
            list.put(i, nativeChapter(i, chapter, nextUs));
        }
        container.chapters(list);
        container.nb_chapters(chapters.size());
    }

    private AVChapter nativeChapter(int id, Chapter chapter, long endUs) {
        AVChapter made = new AVChapter(av_mallocz(Pointer.sizeof(AVChapter.class)));
        made.id(id);
        made.time_base(microseconds);
        made.start(chapter.startUs());
        made.end(Math.max(endUs, chapter.startUs() + 1));
        AVDictionary metadata = new AVDictionary(null);
        try (BytePointer key = new BytePointer("title", StandardCharsets.UTF_8);
                BytePointer title = new BytePointer(chapter.title(), StandardCharsets.UTF_8)) {
            av_dict_set(metadata, key, title, 0);
        }
        made.metadata(metadata);
        return made;
    }

    private void moveToTarget() throws VideoException {
        try {
            try {
                Files.move(part, target, StandardCopyOption.ATOMIC_MOVE);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, target, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException e) {
            throw new VideoException(
                    Libav.nameOf(target) + ": the finished video cannot take its name (" + e.getMessage() + ")", e);
        }
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        if (encoder != null) {
            encoder.close();
        }
        if (packet != null) {
            av_packet_free(packet);
        }
        boolean begun = output != null;
        if (begun) {
            avio_closep(output);
            container.pb(null);
        }
        if (!container.isNull()) {
            avformat_free_context(container);
        }
        if (begun || finished) {
            removePart();
        }
    }

    private void removePart() {
        try {
            Files.deleteIfExists(part);
        } catch (IOException e) {
            part.toFile().deleteOnExit(); // on some systems a scanner may hold a new file open for a moment
        }
    }
}
