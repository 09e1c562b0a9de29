package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avutil.av_frame_clone;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;

import java.nio.ByteBuffer;
import java.util.Optional;
import org.boardtopit.video.FramePixels;
import org.boardtopit.video.ffmpeg.BgrConverter.Conversion;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;

/**
 * Pixels in the decoder's own memory, of which the library counts the users. Converted when somebody asks for them, into the one
 * buffer that all pictures of a reader share: the pixels that were asked for last are in it. Once, and never again when another's
 * have taken their place: what was drawn on them, over a face for one, would be gone.
 */
final class DecodedPixels implements FramePixels {
    private final int widthPx;
    private final int heightPx;
    private final BgrConverter converter;
    private final Conversion conversion;
    private final boolean own;
    private boolean converted;
    private AVFrame picture; // null when no longer valid

    /** Of the reader's own picture, until {@link #end()}. */
    DecodedPixels(int widthPx, int heightPx, BgrConverter converter, Conversion conversion, AVFrame picture) {
        this(widthPx, heightPx, converter, conversion, picture, false);
    }

    private DecodedPixels(
            int widthPx, int heightPx, BgrConverter converter, Conversion conversion, AVFrame picture, boolean own) {
        this.widthPx = widthPx;
        this.heightPx = heightPx;
        this.converter = converter;
        this.conversion = conversion;
        this.picture = picture;
        this.own = own;
    }

    @Override
    public int widthPx() {
        return widthPx;
    }

    @Override
    public int heightPx() {
        return heightPx;
    }

    @Override
    public ByteBuffer bgr() {
        AVFrame stored = valid();
        if (converted && !converter.holds(this)) {
            throw new IllegalStateException("another frame of the same reader was asked for its colours since");
        }
        converted = true;
        return converter.convert(conversion, stored, this);
    }

    @Override
    public Optional<Luma> luma() {
        AVFrame stored = valid();
        int stride = stored.linesize(0);
        boolean same = stored.width() == widthPx && stored.height() == heightPx && stride >= widthPx;
        if (!same || !conversion.hasPlainLuma()) {
            return Optional.empty();
        }
        // Of the last row, what belongs to the picture: behind it there may be no memory.
        long bytes = (long) stride * (heightPx - 1) + widthPx;
        ByteBuffer plane = new BytePointer(stored.data(0)).capacity(bytes).asByteBuffer();
        return Optional.of(new Luma(plane, stride, conversion.isFullRange()));
    }

    @Override
    public FramePixels kept() {
        return new DecodedPixels(widthPx, heightPx, converter, conversion, av_frame_clone(valid()), true);
    }

    @Override
    public void release() {
        if (own && picture != null) {
            av_frame_free(picture);
            picture = null;
        }
    }

    /** The reader goes on: its picture will be another. */
    void end() {
        picture = null;
    }

    private AVFrame valid() {
        if (picture == null) {
            throw new IllegalStateException("the frame is no longer valid: its reader has gone on, or it was released");
        }
        return picture;
    }
}
