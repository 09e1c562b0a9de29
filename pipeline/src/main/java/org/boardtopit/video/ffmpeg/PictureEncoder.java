package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_FLAG_GLOBAL_HEADER;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_encoder_by_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_packet;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_frame;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_PRI_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_MPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGR24;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.av_d2q;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_buffer;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_make_writable;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BILINEAR;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU709;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_getContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;
import static org.bytedeco.ffmpeg.presets.avutil.AVERROR_EAGAIN;

import java.nio.file.Path;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Blue-green-red pictures to H.264 packets: BT.709, narrow range, 4:2:0, by OpenH264 (the H.264 encoder of the LGPL build).
 *
 * <p>Quality is nearly constant: the quantiser stays in a narrow window, so that a still camera costs little and a panning one
 * what it needs, up to the bit rate that the window's upper end gives.
 */
final class PictureEncoder implements AutoCloseable {
    private static final String ENCODER = "libopenh264";

    /*
     * The window and the bit rate were chosen on a panned and a static 720p60 clip: 41 dB PSNR at 6.1 Mbit/s and 39 dB at
     * 1.2 Mbit/s, colour conversions included. CABAC saves a tenth of the bytes at the same speed.
     */
    private static final int BEST_QUANTISER = 25;
    private static final int COARSEST_QUANTISER = 32;
    private static final double BITS_PER_PIXEL = 0.12;

    private final Path target;
    private final int widthPx;
    private final int heightPx;
    private final PointerPointer<BytePointer> planes = new PointerPointer<>(4);
    private final IntPointer strides = new IntPointer(4);
    private AVCodecContext encoder;
    private AVFrame picture;
    private SwsContext scaler;
    private boolean closed;

    /**
     * @param widthPx even width to encode; of wider pictures the columns on the right are left out
     * @param heightPx even height to encode
     * @param strideBytes from row to row of the pictures to come
     */
    PictureEncoder(
            Path target, int widthPx, int heightPx, int strideBytes, double fps, AVRational timeBase, int threads)
            throws VideoException {
        this.target = target;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        for (int plane = 0; plane < 4; plane++) {
            planes.put(plane, null);
            strides.put(plane, plane == 0 ? strideBytes : 0);
        }
        try {
            openEncoder(fps, timeBase, threads);
            makePicture();
            makeScaler();
        } catch (VideoException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private void openEncoder(double fps, AVRational timeBase, int threads) throws VideoException {
        AVCodec codec = avcodec_find_encoder_by_name(ENCODER);
        if (codec == null || codec.isNull()) {
            throw new VideoException(Libav.nameOf(target) + ": this build of FFmpeg lacks the encoder " + ENCODER);
        }
        encoder = avcodec_alloc_context3(codec);
        encoder.width(widthPx);
        encoder.height(heightPx);
        encoder.pix_fmt(AV_PIX_FMT_YUV420P);
        encoder.time_base(timeBase);
        encoder.framerate(av_d2q(fps, 1_000_000));
        encoder.gop_size((int) Math.max(1, Math.round(fps / 2))); // half a second, so that phones seek finely
        encoder.bit_rate(Math.round(BITS_PER_PIXEL * widthPx * heightPx * fps));
        encoder.qmin(BEST_QUANTISER);
        encoder.qmax(COARSEST_QUANTISER);
        encoder.color_range(AVCOL_RANGE_MPEG);
        encoder.colorspace(AVCOL_SPC_BT709);
        encoder.color_primaries(AVCOL_PRI_BT709);
        encoder.color_trc(AVCOL_TRC_BT709);
        encoder.thread_count(threads);
        encoder.slices(threads); // it works on the slices of a picture side by side
        encoder.flags(encoder.flags() | AV_CODEC_FLAG_GLOBAL_HEADER);
        AVDictionary options = new AVDictionary(null);
        try {
            av_dict_set(options, "profile", "high", 0);
            av_dict_set(options, "coder", "cabac", 0);
            Libav.check(avcodec_open2(encoder, codec, options), target, "starting the H.264 encoder");
        } finally {
            av_dict_free(options);
        }
    }

    private void makePicture() throws VideoException {
        picture = av_frame_alloc();
        picture.width(widthPx);
        picture.height(heightPx);
        picture.format(AV_PIX_FMT_YUV420P);
        Libav.check(av_frame_get_buffer(picture, 0), target, "reserving memory for a picture");
    }

    private void makeScaler() throws VideoException {
        scaler = sws_getContext(
                widthPx,
                heightPx,
                AV_PIX_FMT_BGR24,
                widthPx,
                heightPx,
                AV_PIX_FMT_YUV420P,
                SWS_BILINEAR,
                null,
                null,
                (DoublePointer) null);
        if (scaler == null || scaler.isNull()) {
            throw new VideoException(Libav.nameOf(target) + ": pictures of " + widthPx + " x " + heightPx
                    + " pixels cannot be converted for H.264");
        }
        IntPointer bt709 = sws_getCoefficients(SWS_CS_ITU709);
        Libav.check(
                sws_setColorspaceDetails(scaler, bt709, 1, bt709, 0, 0, 1 << 16, 1 << 16),
                target,
                "choosing the colours");
    }

    /** For the muxer, which needs the encoder's parameters. */
    AVCodecContext context() {
        return encoder;
    }

    /** Gives a picture to the encoder; the pixels may be reused afterwards. Receive until there is nothing more. */
    void send(VideoFrame frame, long ticks) throws VideoException {
        Libav.check(av_frame_make_writable(picture), target, "reserving memory for a picture");
        try (BytePointer pixels = new BytePointer(frame.bgr())) {
            planes.put(0, pixels);
            Libav.check(
                    sws_scale(scaler, planes, strides, 0, heightPx, picture.data(), picture.linesize()),
                    target,
                    "converting the colours");
        }
        picture.pts(ticks);
        Libav.check(avcodec_send_frame(encoder, picture), target, "encoding a picture");
    }

    /** Tells that no more pictures come. */
    void end() throws VideoException {
        Libav.check(avcodec_send_frame(encoder, null), target, "encoding the last picture");
    }

    /** The next packet; false when there is none yet, or none any more. */
    boolean receive(AVPacket into) throws VideoException {
        int received = avcodec_receive_packet(encoder, into);
        if (received == AVERROR_EAGAIN() || received == AVERROR_EOF) {
            return false;
        }
        Libav.check(received, target, "encoding a picture");
        return true;
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        if (scaler != null) {
            sws_freeContext(scaler);
        }
        if (picture != null) {
            av_frame_free(picture);
        }
        if (encoder != null) {
            avcodec_free_context(encoder);
        }
        planes.close();
        strides.close();
    }
}
