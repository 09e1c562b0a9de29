package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_INTERLACED_DCT;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_INTERLACED_ME;
import static org.bytedeco.ffmpeg.global.avcodec.AV_FIELD_BB;
import static org.bytedeco.ffmpeg.global.avcodec.AV_FIELD_TT;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_rescale_ts;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_side_data_new;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_from_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avformat.AVIO_FLAG_WRITE;
import static org.bytedeco.ffmpeg.global.avformat.av_interleaved_write_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_write_trailer;
import static org.bytedeco.ffmpeg.global.avformat.avformat_alloc_output_context2;
import static org.bytedeco.ffmpeg.global.avformat.avformat_free_context;
import static org.bytedeco.ffmpeg.global.avformat.avformat_new_stream;
import static org.bytedeco.ffmpeg.global.avformat.avformat_write_header;
import static org.bytedeco.ffmpeg.global.avformat.avio_closep;
import static org.bytedeco.ffmpeg.global.avformat.avio_open;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT2020_NCL;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGR24;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_get_pix_fmt;
import static org.bytedeco.ffmpeg.global.avutil.av_make_q;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BICUBIC;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVIOContext;
import org.bytedeco.ffmpeg.avformat.AVOutputFormat;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Writes small clips straight through the C libraries, with any of the traps that real recordings hold. Shares no code with
 * {@link FfmpegVideoWriter}. The container is chosen by the file's name. For short-lived tests: natives are freed, but not when
 * an assertion fails.
 */
final class DrawnClip {
    private final String codec;
    private final List<Drawing> pictures = new ArrayList<>();
    private final List<Long> stampsMs = new ArrayList<>();
    private int pixelFormat = av_get_pix_fmt("yuv420p");
    private final Map<String, String> tags = new LinkedHashMap<>();
    private int fps = 25;
    private int[] displayMatrix;
    private int aspectNum = 1;
    private int aspectDen = 1;
    private int matrix = -1;
    private int range = -1;
    private int transfer = -1;
    private boolean interlaced;
    private boolean topFirst;
    private int reorderedPictures;
    private Set<Integer> damagedPackets = Set.of();
    private Consumer<AVFrame> touchUp = frame -> {};

    private DrawnClip(String codec) {
        this.codec = codec;
    }

    static DrawnClip codedAs(String codec) {
        return new DrawnClip(codec);
    }

    DrawnClip add(Drawing picture) {
        return addAt(1000L * pictures.size() / fps, picture);
    }

    DrawnClip addAt(long stampMs, Drawing picture) {
        pictures.add(picture);
        stampsMs.add(stampMs);
        return this;
    }

    DrawnClip addNumbered(int count, int widthPx, int heightPx) {
        for (int i = 0; i < count; i++) {
            add(Drawing.numbered(widthPx, heightPx, i));
        }
        return this;
    }

    DrawnClip pixelFormat(String name) {
        pixelFormat = av_get_pix_fmt(name);
        return this;
    }

    DrawnClip fps(int framesPerSecond) {
        this.fps = framesPerSecond;
        return this;
    }

    /** The two rows and columns of the display matrix that turn: x' = a x + c y, y' = b x + d y. */
    DrawnClip displayMatrix(int a, int b, int c, int d) {
        displayMatrix = new int[] {a << 16, b << 16, 0, c << 16, d << 16, 0, 0, 0, 1 << 30};
        return this;
    }

    DrawnClip pixelAspect(int num, int den) {
        aspectNum = num;
        aspectDen = den;
        return this;
    }

    DrawnClip colours(int avColourSpace, int avColourRange) {
        matrix = avColourSpace;
        range = avColourRange;
        return this;
    }

    /** How bright and dark are stored, by the library's code; the colour matrix is then that of BT.2020. */
    DrawnClip tone(int avColourTransfer) {
        transfer = avColourTransfer;
        return colours(AVCOL_SPC_BT2020_NCL, AVCOL_RANGE_MPEG);
    }

    DrawnClip interlaced(boolean topFieldFirst) {
        interlaced = true;
        topFirst = topFieldFirst;
        return this;
    }

    DrawnClip reorderedPictures(int betweenReferences) {
        reorderedPictures = betweenReferences;
        return this;
    }

    /**
     * Packets whose bytes are overwritten, numbered in the order they are written: with zeros, or in H.264, where the container
     * would leave those out, with a unit of an unknown kind.
     */
    DrawnClip damagedPackets(Integer... numbers) {
        damagedPackets = Set.of(numbers);
        return this;
    }

    /** A tag of the whole file, such as where it was made. */
    DrawnClip tag(String key, String value) {
        tags.put(key, value);
        return this;
    }

    /** A last change to every picture in its coded format. */
    DrawnClip touchUp(Consumer<AVFrame> change) {
        touchUp = change;
        return this;
    }

    Path write(Path file) {
        Libav.load();
        AVFormatContext container = new AVFormatContext(null);
        AVIOContext output = new AVIOContext(null);
        AVCodecContext encoder = null;
        try (BytePointer url = Libav.url(file)) {
            ok(avformat_alloc_output_context2(container, (AVOutputFormat) null, null, url));
            encoder = openEncoder(pictures.get(0));
            AVStream stream = avformat_new_stream(container, null);
            ok(avcodec_parameters_from_context(stream.codecpar(), encoder));
            stream.time_base(encoder.time_base());
            stream.avg_frame_rate(encoder.framerate());
            stream.sample_aspect_ratio(encoder.sample_aspect_ratio());
            addDisplayMatrix(stream);
            ok(avio_open(output, url, AVIO_FLAG_WRITE));
            container.pb(output);
            AVDictionary metadata = new AVDictionary(null);
            tags.forEach((key, value) -> ok(av_dict_set(metadata, key, value, 0)));
            container.metadata(metadata);
            ok(avformat_write_header(container, (AVDictionary) null));
            encoder = encodeAll(container, stream, encoder);
            ok(av_write_trailer(container));
        }
        avcodec_free_context(encoder);
        avio_closep(output);
        container.pb(null);
        avformat_free_context(container);
        return file;
    }

    private AVCodecContext openEncoder(Drawing like) {
        AVCodec found = avcodec_find_encoder_by_name(codec);
        AVCodecContext encoder = avcodec_alloc_context3(found);
        encoder.width(like.widthPx());
        encoder.height(like.heightPx());
        encoder.pix_fmt(pixelFormat);
        boolean fixedRate = codec.equals("mpeg2video"); // knows only a list of frame rates
        encoder.time_base(fixedRate ? av_make_q(1, fps) : av_make_q(1, 1000));
        encoder.framerate(av_make_q(fps, 1));
        encoder.sample_aspect_ratio(av_make_q(aspectNum, aspectDen));
        encoder.bit_rate(4_000_000);
        encoder.gop_size(10);
        encoder.thread_count(1);
        encoder.max_b_frames(reorderedPictures);
        encoder.strict_std_compliance(-1); // lets mjpeg take narrow-range pictures
        encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        if (matrix >= 0) {
            encoder.colorspace(matrix);
            encoder.color_range(range);
        }
        if (transfer >= 0) {
            encoder.color_trc(transfer);
        }
        if (interlaced) {
            encoder.field_order(topFirst ? AV_FIELD_TT : AV_FIELD_BB);
            encoder.flags(encoder.flags() | AV_CODEC_FLAG_INTERLACED_DCT | AV_CODEC_FLAG_INTERLACED_ME);
        }
        ok(avcodec_open2(encoder, found, (AVDictionary) null));
        return encoder;
    }

    private void addDisplayMatrix(AVStream stream) {
        if (displayMatrix == null) {
            return;
        }
        IntPointer count = new IntPointer(1L).put(stream.codecpar().nb_coded_side_data());
        var list = new AVPacketSideData(stream.codecpar().coded_side_data());
        var made = av_packet_side_data_new(list, count, AV_PKT_DATA_DISPLAYMATRIX, 36, 0);
        new IntPointer(made.data()).put(displayMatrix);
        stream.codecpar().coded_side_data(list);
        stream.codecpar().nb_coded_side_data(count.get());
    }

    private AVCodecContext encodeAll(AVFormatContext container, AVStream stream, AVCodecContext first) {
        AVCodecContext encoder = first;
        AVPacket packet = av_packet_alloc();
        int[] packets = {0};
        for (int i = 0; i < pictures.size(); i++) {
            Drawing picture = pictures.get(i);
            if (picture.widthPx() != encoder.width() || picture.heightPx() != encoder.height()) {
                ok(avcodec_send_frame(encoder, null));
                drain(container, stream, encoder, packet, packets);
                avcodec_free_context(encoder);
                encoder = openEncoder(picture);
            }
            AVFrame frame = converted(picture);
            boolean countsFrames = encoder.time_base().den() == fps;
            frame.pts(countsFrames ? i : stampsMs.get(i));
            if (interlaced) {
                int order = topFirst ? Libav.FRAME_FLAG_TOP_FIELD_FIRST : 0;
                frame.flags(frame.flags() | Libav.FRAME_FLAG_INTERLACED | order);
            }
            ok(avcodec_send_frame(encoder, frame));
            av_frame_free(frame);
            drain(container, stream, encoder, packet, packets);
        }
        ok(avcodec_send_frame(encoder, null));
        drain(container, stream, encoder, packet, packets);
        av_packet_free(packet);
        return encoder;
    }

    private void drain(
            AVFormatContext container, AVStream stream, AVCodecContext encoder, AVPacket packet, int[] count) {
        while (avcodec_receive_packet(encoder, packet) >= 0) {
            if (damagedPackets.contains(count[0]++)) {
                damage(packet);
            }
            if (packet.duration() == 0) {
                packet.duration(Math.max(1, encoder.time_base().den() / fps));
            }
            av_packet_rescale_ts(packet, encoder.time_base(), stream.time_base());
            ok(av_interleaved_write_frame(container, packet));
        }
    }

    private void damage(AVPacket packet) {
        byte[] bytes = new byte[packet.size()];
        if (codec.equals("libopenh264")) {
            Arrays.fill(bytes, (byte) 0xff);
            System.arraycopy(new byte[] {0, 0, 0, 1}, 0, bytes, 0, 4);
        }
        packet.data().capacity(packet.size()).put(bytes);
    }

    private AVFrame converted(Drawing picture) {
        AVFrame frame = av_frame_alloc();
        frame.width(picture.widthPx());
        frame.height(picture.heightPx());
        frame.format(pixelFormat);
        ok(av_frame_get_buffer(frame, 0));
        SwsContext scaler = sws_getContext(
                picture.widthPx(),
                picture.heightPx(),
                AV_PIX_FMT_BGR24,
                picture.widthPx(),
                picture.heightPx(),
                pixelFormat,
                SWS_BICUBIC,
                null,
                null,
                (DoublePointer) null);
        ByteBuffer bgr = picture.bgr();
        PointerPointer<BytePointer> planes = new PointerPointer<>(4);
        IntPointer strides = new IntPointer(picture.widthPx() * 3, 0, 0, 0);
        planes.put(0, new BytePointer(bgr)).put(1, null).put(2, null).put(3, null);
        ok(sws_scale(scaler, planes, strides, 0, picture.heightPx(), frame.data(), frame.linesize()));
        sws_freeContext(scaler);
        touchUp.accept(frame);
        if (matrix >= 0) {
            frame.colorspace(matrix);
            frame.color_range(range);
        }
        if (transfer >= 0) {
            frame.color_trc(transfer);
        }
        return frame;
    }

    private static void ok(int code) {
        assertTrue(code >= 0, () -> Libav.errorText(code));
    }
}
