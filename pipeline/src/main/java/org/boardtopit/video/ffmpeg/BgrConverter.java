package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_JPEG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_RANGE_UNSPECIFIED;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT2020_CL;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT2020_NCL;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT470BG;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_BT709;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_FCC;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_SMPTE170M;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_SPC_SMPTE240M;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_ARIB_STD_B67;
import static org.bytedeco.ffmpeg.global.avutil.AVCOL_TRC_SMPTE2084;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_BGR24;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_NV12;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV422P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUV444P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ411P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ420P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ422P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ440P;
import static org.bytedeco.ffmpeg.global.avutil.AV_PIX_FMT_YUVJ444P;
import static org.bytedeco.ffmpeg.global.swscale.SWS_ACCURATE_RND;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BICUBIC;
import static org.bytedeco.ffmpeg.global.swscale.SWS_BILINEAR;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_BT2020;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_FCC;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU601;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_ITU709;
import static org.bytedeco.ffmpeg.global.swscale.SWS_CS_SMPTE240M;
import static org.bytedeco.ffmpeg.global.swscale.sws_freeContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_getCoefficients;
import static org.bytedeco.ffmpeg.global.swscale.sws_getContext;
import static org.bytedeco.ffmpeg.global.swscale.sws_scale;
import static org.bytedeco.ffmpeg.global.swscale.sws_setColorspaceDetails;

import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.video.ClipFacts.Tone;
import org.boardtopit.video.VideoException;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.swscale.SwsContext;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.DoublePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.javacpp.PointerPointer;

/**
 * Pictures of any pixel format and size to 8-bit blue, green, red of one size.
 *
 * <p>The colour matrix and range are the picture's own. Where it does not say, BT.709 is taken from 720 lines up and BT.601
 * below, and the narrow range except for the full-range formats: the custom of players. High-dynamic-range material gets its
 * own matrix and then the {@link ToneCurve}; its wide gamut is not narrowed, so that colours come out a little pale.
 *
 * <p>Common 8-bit formats take the library's fast way: at most 2 of 255 levels darker than exact arithmetic, colour planes
 * repeated instead of interpolated. Measured for 1280 x 720: 0.27 ms a picture; the exact way takes 4.8 ms.
 */
final class BgrConverter implements AutoCloseable {
    /** Room behind the last row: the converter's vector code may write past a row's end. */
    private static final int SPARE_BYTES = 64;

    private static final Set<Integer> LUMA_FORMATS = Set.of(
            AV_PIX_FMT_YUV420P,
            AV_PIX_FMT_YUVJ420P,
            AV_PIX_FMT_NV12,
            AV_PIX_FMT_YUV422P,
            AV_PIX_FMT_YUVJ422P,
            AV_PIX_FMT_YUV444P,
            AV_PIX_FMT_YUVJ444P);

    private final Path clip;
    private final int widthPx;
    private final int heightPx;
    private final ByteBuffer pixels;
    private final BytePointer address;
    private final PointerPointer<BytePointer> planes;
    private final IntPointer strides;
    private final List<Conversion> all = new ArrayList<>(); // a clip whose pictures change has more than one
    private Conversion latest;
    private DecodedPixels held; // those in the buffer
    private boolean closed;

    /** What the scaler was made for. */
    private record Source(int widthPx, int heightPx, int format, int matrix, int range, int transfer) {
        static Source of(AVFrame picture) {
            return new Source(
                    picture.width(),
                    picture.height(),
                    picture.format(),
                    picture.colorspace(),
                    picture.color_range(),
                    picture.color_trc());
        }
    }

    /** From the library's code for the transfer characteristics. */
    static Tone toneOf(int transfer) {
        return transfer == AVCOL_TRC_ARIB_STD_B67
                ? Tone.HLG
                : transfer == AVCOL_TRC_SMPTE2084 ? Tone.PQ : Tone.STANDARD;
    }

    BgrConverter(Path clip, int widthPx, int heightPx) {
        this.clip = clip;
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        // Owned by the Java heap, not freed in close(): a frame used too long must not crash the machine.
        ByteBuffer room = ByteBuffer.allocateDirect(widthPx * heightPx * 3 + SPARE_BYTES);
        pixels = room.slice(0, widthPx * heightPx * 3);
        address = new BytePointer(room);
        planes = new PointerPointer<>(4);
        strides = new IntPointer(4);
        for (int plane = 0; plane < 4; plane++) {
            planes.put(plane, plane == 0 ? address : null);
            strides.put(plane, plane == 0 ? widthPx * 3 : 0);
        }
    }

    /** How pictures of one kind are converted. */
    static final class Conversion {
        private final Source source;
        private final SwsContext scaler;
        private final Optional<ToneCurve> curve;

        private Conversion(Source source, SwsContext scaler) {
            this.source = source;
            this.scaler = scaler;
            this.curve = ToneCurve.of(toneOf(source.transfer));
        }

        /** True when the brightness plane holds one byte a pixel that needs no tone curve. */
        boolean hasPlainLuma() {
            return curve.isEmpty() && LUMA_FORMATS.contains(source.format);
        }

        boolean isFullRange() {
            return fullRange(source);
        }
    }

    /**
     * The conversion of a picture; may be called by another thread than {@link #convert}.
     *
     * @throws VideoException when there is none
     */
    Conversion prepare(AVFrame picture) throws VideoException {
        Source wanted = Source.of(picture);
        if (latest == null || !wanted.equals(latest.source)) {
            latest = conversion(wanted);
            all.add(latest);
        }
        return latest;
    }

    /** Converts into the one buffer that every call returns; pixels that are in it already stay as they are. */
    ByteBuffer convert(Conversion conversion, AVFrame picture, DecodedPixels asking) {
        if (holds(asking)) {
            return pixels;
        }
        if (closed) {
            throw new IllegalStateException("the reader of " + Libav.nameOf(clip) + " is closed");
        }
        held = null;
        int rows =
                sws_scale(conversion.scaler, picture.data(), picture.linesize(), 0, picture.height(), planes, strides);
        if (rows < 0) {
            throw new IllegalStateException(
                    "the colours of " + Libav.nameOf(clip) + " cannot be converted: " + Libav.errorText(rows));
        }
        conversion.curve.ifPresent(curve -> curve.apply(pixels));
        held = asking;
        return pixels;
    }

    /** Whether the buffer's pixels are these. */
    boolean holds(DecodedPixels asking) {
        return asking.equals(held);
    }

    private Conversion conversion(Source wanted) throws VideoException {
        boolean scales = wanted.widthPx != widthPx || wanted.heightPx != heightPx;
        int flags = scales ? SWS_BICUBIC | SWS_ACCURATE_RND : SWS_BILINEAR;
        SwsContext scaler = sws_getContext(
                wanted.widthPx,
                wanted.heightPx,
                wanted.format,
                widthPx,
                heightPx,
                AV_PIX_FMT_BGR24,
                flags,
                null,
                null,
                (DoublePointer) null);
        if (scaler == null || scaler.isNull()) {
            throw new VideoException(
                    Libav.nameOf(clip) + ": its pixel format cannot be converted; convert the clip to H.264");
        }
        IntPointer from = sws_getCoefficients(matrix(wanted));
        // Fails only for formats without a matrix (RGB), which need none.
        sws_setColorspaceDetails(scaler, from, fullRange(wanted) ? 1 : 0, from, 1, 0, 1 << 16, 1 << 16);
        return new Conversion(wanted, scaler);
    }

    private int matrix(Source picture) {
        int matrix = picture.matrix;
        if (matrix == AVCOL_SPC_BT709) {
            return SWS_CS_ITU709;
        }
        if (matrix == AVCOL_SPC_BT470BG || matrix == AVCOL_SPC_SMPTE170M) {
            return SWS_CS_ITU601;
        }
        if (matrix == AVCOL_SPC_BT2020_NCL || matrix == AVCOL_SPC_BT2020_CL) {
            return SWS_CS_BT2020;
        }
        if (matrix == AVCOL_SPC_SMPTE240M) {
            return SWS_CS_SMPTE240M;
        }
        if (matrix == AVCOL_SPC_FCC) {
            return SWS_CS_FCC;
        }
        return Math.min(picture.widthPx, picture.heightPx) >= 720 ? SWS_CS_ITU709 : SWS_CS_ITU601;
    }

    private static boolean fullRange(Source picture) {
        if (picture.range != AVCOL_RANGE_UNSPECIFIED) {
            return picture.range == AVCOL_RANGE_JPEG;
        }
        int format = picture.format;
        return format == AV_PIX_FMT_YUVJ420P
                || format == AV_PIX_FMT_YUVJ422P
                || format == AV_PIX_FMT_YUVJ444P
                || format == AV_PIX_FMT_YUVJ440P
                || format == AV_PIX_FMT_YUVJ411P;
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        all.forEach(conversion -> sws_freeContext(conversion.scaler));
        planes.close();
        strides.close();
        address.close();
    }
}
