package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_side_data_get;
import static org.bytedeco.ffmpeg.global.avformat.av_guess_sample_aspect_ratio;
import static org.bytedeco.ffmpeg.global.avutil.AV_FRAME_DATA_DISPLAYMATRIX;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_alloc;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_get_side_data;
import static org.bytedeco.ffmpeg.global.avutil.av_pix_fmt_desc_get;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalLong;
import org.boardtopit.video.ClipFacts.Tone;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.boardtopit.video.ffmpeg.UprightFilter.Fields;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacketSideData;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVFrameSideData;
import org.bytedeco.ffmpeg.avutil.AVPixFmtDescriptor;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;

/**
 * Reads a clip of any common kind with FFmpeg.
 *
 * <ul>
 *   <li>Times are the container's presentation stamps less the first one; {@link PresentationClock} tells how missing, equal
 *       or falling ones are repaired.
 *   <li>The picture is turned (and mirrored) as the recording's display matrix says.
 *   <li>Pixels that are not square are made so by enlarging the shorter side, never by shrinking the other.
 *   <li>Of interlaced material every field becomes a frame with its own time ({@link UprightFilter}).
 *   <li>A clip that changes its picture size keeps the size of its first picture.
 *   <li>High dynamic range becomes standard range by {@link ToneCurve}.
 *   <li>Pictures that cannot be decoded are counted. A clip that was cut off gives the frames that are there.
 * </ul>
 *
 * <p>The first picture is decoded when the reader is made, so that a clip without any is refused at once.
 */
public final class FfmpegFrameReader implements FrameReader {
    private static final double FALLBACK_FPS =
            25; // containers that tell nothing are raw streams, where FFmpeg assumes 25
    private static final double MAX_FPS = 10_000; // beyond any camera: a container's time base taken for a rate
    private static final double MAX_PIXEL_ASPECT = 4; // the widest in use is 2:1; beyond, the number is damaged

    private static final AVRational MICROSECONDS = avutil.av_make_q(1, 1_000_000);

    private final Path clip;
    private final int decoderThreads;
    private final PictureDecoder decoder;
    private AVFrame picture = av_frame_alloc();
    private AVFrame upright = av_frame_alloc();
    private Orientation orientation;
    private UprightFilter filter;
    private BgrConverter converter;
    private PresentationClock clock;
    private VideoInfo info;
    private DecodedPixels current;
    private long originTicks;
    private boolean picturePending;
    private boolean ended;
    private boolean closed;
    private int delivered;
    private long reachedUs;
    private int firstTransfer;
    private int firstFormat;

    /**
     * Opens the clip.
     *
     * @param decoderThreads threads to decode with, at least 1
     * @throws VideoException as {@link org.boardtopit.video.ClipOpener#open}
     */
    public FfmpegFrameReader(Path clip, int decoderThreads) throws VideoException {
        if (decoderThreads < 1) {
            throw new IllegalArgumentException("decoderThreads must be at least 1, was " + decoderThreads);
        }
        this.clip = clip;
        this.decoderThreads = decoderThreads;
        decoder = new PictureDecoder(clip, decoderThreads);
        try {
            prepareForFirstPicture();
        } catch (VideoException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private void prepareForFirstPicture() throws VideoException {
        if (!decoder.next(picture)) {
            throw new VideoException(Libav.nameOf(clip) + ": none of its pictures can be decoded ("
                    + decoder.undecodable() + " were damaged); copy it again from the camera");
        }
        picturePending = true;
        firstTransfer = picture.color_trc();
        firstFormat = picture.format();
        originTicks = picture.best_effort_timestamp() == Libav.NO_STAMP ? 0 : picture.best_effort_timestamp();
        orientation = orientationOf(decoder.stream(), picture);
        Fields fields = fieldsOf(picture);
        filter = filterFor(fields);
        info = describe(fields != Fields.PROGRESSIVE);
        converter = new BgrConverter(clip, info.widthPx(), info.heightPx());
        clock = new PresentationClock(Math.max(2, Math.round(1e6 / info.nominalFps())));
    }

    private Fields fieldsOf(AVFrame decoded) {
        return Fields.of(decoded, decoder.stream().codecpar().field_order());
    }

    private UprightFilter filterFor(Fields fields) throws VideoException {
        return new UprightFilter(clip, picture, decoder.stream().time_base(), fields, orientation, decoderThreads);
    }

    private static Orientation orientationOf(AVStream stream, AVFrame first) {
        AVCodecParameters parameters = stream.codecpar();
        AVPacketSideData ofTrack = av_packet_side_data_get(
                parameters.coded_side_data(), parameters.nb_coded_side_data(), AV_PKT_DATA_DISPLAYMATRIX);
        if (ofTrack != null && !ofTrack.isNull()) {
            return orientationOf(ofTrack.data());
        }
        AVFrameSideData ofPicture = av_frame_get_side_data(first, AV_FRAME_DATA_DISPLAYMATRIX);
        return ofPicture == null || ofPicture.isNull() ? Orientation.UPRIGHT : orientationOf(ofPicture.data());
    }

    private static Orientation orientationOf(BytePointer displayMatrix) {
        int[] matrix = new int[9];
        new IntPointer(displayMatrix).get(matrix);
        return Orientation.ofDisplayMatrix(matrix);
    }

    private VideoInfo describe(boolean interlaced) throws VideoException {
        double aspect = pixelAspect();
        int width = (int) Math.round(picture.width() * Math.max(1, aspect));
        int height = (int) Math.round(picture.height() * Math.max(1, 1 / aspect));
        if (width < 1 || height < 1 || (long) width * height > Libav.MOST_PIXELS) {
            throw new VideoException(Libav.nameOf(clip) + ": its pictures are " + width + " x " + height
                    + " pixels, more than 8K; record or convert the clip smaller");
        }
        int framesPerPicture = interlaced ? 2 : 1;
        double pictureFps = pictureFps();
        long durationUs = durationUs();
        return new VideoInfo(
                orientation.swapsAxes() ? height : width,
                orientation.swapsAxes() ? width : height,
                pictureFps * framesPerPicture,
                durationUs,
                estimatedFrames(pictureFps, framesPerPicture, durationUs),
                interlaced,
                orientation.clockwiseDeg(),
                decoder.codecName());
    }

    private double pixelAspect() {
        double aspect = Libav.value(av_guess_sample_aspect_ratio(decoder.container(), decoder.stream(), picture));
        boolean sensible = aspect >= 1 / MAX_PIXEL_ASPECT && aspect <= MAX_PIXEL_ASPECT;
        return sensible ? aspect : 1; // 0/1 and NaN stand for "not said"
    }

    private double pictureFps() {
        for (AVRational rate : new AVRational[] {
            decoder.stream().avg_frame_rate(), decoder.stream().r_frame_rate()
        }) {
            double fps = Libav.value(rate);
            if (fps > 0 && fps <= MAX_FPS) {
                return fps;
            }
        }
        return FALLBACK_FPS;
    }

    private long durationUs() {
        AVStream stream = decoder.stream();
        if (stream.duration() > 0) {
            return Libav.toUs(stream.duration(), stream.time_base());
        }
        AVFormatContext container = decoder.container();
        return container.duration() > 0 ? container.duration() : -1; // already microseconds (AV_TIME_BASE)
    }

    private long estimatedFrames(double pictureFps, int framesPerPicture, long durationUs) {
        if (decoder.stream().nb_frames() > 0) {
            return decoder.stream().nb_frames() * framesPerPicture;
        }
        return durationUs < 0 ? -1 : Math.round(durationUs * pictureFps * framesPerPicture / 1e6);
    }

    @Override
    public VideoInfo info() {
        return info;
    }

    /** How the first picture stores bright and dark. */
    Tone tone() {
        return BgrConverter.toneOf(firstTransfer);
    }

    /** Bits of a colour value of the first picture. */
    int bitDepth() {
        AVPixFmtDescriptor format = av_pix_fmt_desc_get(firstFormat);
        return format == null || format.isNull() ? 8 : format.comp(0).depth();
    }

    @Override
    public Optional<VideoFrame> next() throws VideoException {
        if (closed) {
            throw new IllegalStateException("the reader of " + Libav.nameOf(clip) + " is closed");
        }
        endCurrent();
        while (!filter.pull(upright)) {
            if (ended) {
                return Optional.empty();
            }
            pushNextPicture();
        }
        return Optional.of(deliver());
    }

    private void endCurrent() {
        if (current != null) {
            current.end();
            current = null;
        }
    }

    /**
     * The first frame at or after a time, the frames before it left out undelivered; empty when there is none. Goes to a key
     * picture where that is a short cut. For looking into a clip: indexes then only count what was delivered.
     *
     * @param keyUs time of a picture with which decoding can begin, at or before the wanted time
     */
    Optional<VideoFrame> nextFrom(long timeUs, OptionalLong keyUs) throws VideoException {
        endCurrent();
        if (keyUs.isPresent() && keyUs.getAsLong() > reachedUs) {
            skipTo(keyUs.getAsLong());
        }
        while (true) {
            while (!filter.pull(upright)) {
                if (ended) {
                    return Optional.empty();
                }
                pushNextPicture();
            }
            long stampUs = Libav.toUs(upright.pts(), filter.timeBase());
            if (stampUs == Libav.NO_STAMP || stampUs >= timeUs) {
                return Optional.of(deliver());
            }
            reachedUs = stampUs;
        }
    }

    private void skipTo(long timeUs) throws VideoException {
        long ticks = originTicks
                + avutil.av_rescale_q(timeUs, MICROSECONDS, decoder.stream().time_base());
        if (decoder.seek(ticks)) {
            filter.close();
            filter = filterFor(filter.fields());
            picturePending = false;
            ended = false;
        }
    }

    private void pushNextPicture() throws VideoException {
        if (!picturePending && !decoder.next(picture)) {
            ended = true;
            filter.end();
            return;
        }
        picturePending = true;
        if (!filter.accepts(picture)) {
            if (!filter.ended()) {
                filter.end(); // the old filter's last pictures come out before the new one begins
                return;
            }
            filter.close();
            filter = filterFor(fieldsOf(picture));
        }
        picture.pts(ticksSinceFirst(picture));
        filter.push(picture);
        picturePending = false;
    }

    /** Counted from the first picture before any rounding to microseconds. */
    private long ticksSinceFirst(AVFrame decoded) {
        long ticks = decoded.best_effort_timestamp();
        return ticks == Libav.NO_STAMP ? ticks : ticks - originTicks;
    }

    private VideoFrame deliver() throws VideoException {
        long stampUs = Libav.toUs(upright.pts(), filter.timeBase());
        reachedUs = Math.max(reachedUs, stampUs);
        current = new DecodedPixels(info.widthPx(), info.heightPx(), converter, converter.prepare(upright), upright);
        return new VideoFrame(delivered++, clock.next(stampUs), current);
    }

    @Override
    public long undecodableFrames() {
        return decoder.undecodable();
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        endCurrent();
        if (converter != null) {
            converter.close();
        }
        if (filter != null) {
            filter.close();
        }
        av_frame_free(picture);
        av_frame_free(upright);
        decoder.close();
    }
}
