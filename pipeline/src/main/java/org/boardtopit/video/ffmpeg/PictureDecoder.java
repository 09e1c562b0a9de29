package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_H264;
import static org.bytedeco.ffmpeg.global.avcodec.AV_CODEC_ID_HEVC;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_DISCARD;
import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_KEY;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_alloc_context3;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_find_decoder;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_flush_buffers;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_free_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_open2;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_parameters_to_context;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_receive_frame;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_send_packet;
import static org.bytedeco.ffmpeg.global.avformat.AVSEEK_FLAG_BACKWARD;
import static org.bytedeco.ffmpeg.global.avformat.AV_DISPOSITION_ATTACHED_PIC;
import static org.bytedeco.ffmpeg.global.avformat.av_find_best_stream;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.av_seek_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.bytedeco.ffmpeg.global.avutil.AVERROR_EOF;
import static org.bytedeco.ffmpeg.global.avutil.AVMEDIA_TYPE_VIDEO;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_free;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_set;
import static org.bytedeco.ffmpeg.presets.avutil.AVERROR_EAGAIN;
import static org.bytedeco.ffmpeg.presets.avutil.AVERROR_EIO;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Set;
import org.boardtopit.video.VideoException;
import org.bytedeco.ffmpeg.avcodec.AVCodec;
import org.bytedeco.ffmpeg.avcodec.AVCodecContext;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.PointerPointer;

/** A clip's container and the decoder of its picture track: decoded pictures in presentation order, as they are stored. */
final class PictureDecoder implements AutoCloseable {
    /**
     * Containers that hold video. Everything else is refused: still pictures and text that the library would also "play", and
     * play lists, which could make it read other files.
     */
    private static final String CONTAINERS =
            "mov,matroska,avi,mpegts,mpeg,mpegvideo,h264,hevc,dv,mxf,asf,flv,ogg,nut,ivf";

    /** Types of the first box in an MP4 or QuickTime file. */
    private static final Set<String> MP4_BOXES = Set.of("ftyp", "mdat", "wide", "free", "skip", "moov");

    /** A recorder writes a handful of tracks; a damaged file may claim thousands. */
    private static final int MOST_TRACKS = 64;

    private final Path clip;
    private final AVFormatContext container = new AVFormatContext(null);
    private AVStream stream;
    private AVCodecContext decoder;
    private AVPacket packet;
    private long undecodable;
    private long fed;
    private long decoded;
    private boolean fieldsSeen;
    private boolean draining;
    private boolean seeked;
    private boolean closed;

    PictureDecoder(Path clip, int threads) throws VideoException {
        this.clip = clip;
        Libav.load();
        requireFileWithContent(clip);
        try {
            openContainer();
            stream = pictureStream();
            openDecoder(threads);
        } catch (VideoException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private static void requireFileWithContent(Path clip) throws VideoException {
        String name = Libav.nameOf(clip);
        if (!Files.exists(clip)) {
            throw new VideoException(
                    name + ": there is no such file in " + clip.toAbsolutePath().getParent());
        }
        if (!Files.isRegularFile(clip)) {
            throw new VideoException(name + ": is a folder, not a video file");
        }
        if (!Files.isReadable(clip)) {
            throw new VideoException(name + ": may not be read by this user; change the file's permissions");
        }
        try {
            if (Files.size(clip) == 0) {
                throw new VideoException(name + ": the file is empty (0 bytes); copy it again from the camera");
            }
        } catch (VideoException e) {
            throw e;
        } catch (IOException e) {
            throw new VideoException(name + ": cannot be read (" + e.getMessage() + ")", e);
        }
    }

    private void openContainer() throws VideoException {
        AVDictionary options = new AVDictionary(null);
        try (BytePointer url = Libav.url(clip)) {
            av_dict_set(options, "format_whitelist", CONTAINERS, 0);
            av_dict_set(options, "protocol_whitelist", "file", 0);
            av_dict_set(options, "max_streams", Integer.toString(MOST_TRACKS), 0);
            int opened = avformat_open_input(container, url, null, options);
            if (opened < 0) {
                throw new VideoException(Libav.nameOf(clip) + ": " + whyNotOpened(opened));
            }
        } finally {
            av_dict_free(options);
        }
        Libav.check(avformat_find_stream_info(container, (AVDictionary) null), clip, "reading the track list");
    }

    private String whyNotOpened(int code) {
        if (code == AVERROR_EIO()) {
            return "reading the file failed (input/output error); copy it again from the camera";
        }
        if (beginsLikeMp4()) {
            return "the recording has no index (its 'moov' part): it was cut off while recording or copying;"
                    + " copy it again from the camera";
        }
        return "is not a video file of a known kind (MP4, MOV, MKV, AVI, MTS and the like are)";
    }

    private boolean beginsLikeMp4() {
        try (InputStream in = Files.newInputStream(clip)) {
            byte[] head = in.readNBytes(8);
            return head.length == 8 && MP4_BOXES.contains(new String(head, 4, 4, StandardCharsets.ISO_8859_1));
        } catch (IOException e) {
            return false; // only the wording of an error that is reported anyway depends on it
        }
    }

    private AVStream pictureStream() throws VideoException {
        int index = av_find_best_stream(container, AVMEDIA_TYPE_VIDEO, -1, -1, (PointerPointer<?>) null, 0);
        if (index < 0 || (container.streams(index).disposition() & AV_DISPOSITION_ATTACHED_PIC) != 0) {
            throw new VideoException(
                    Libav.nameOf(clip) + ": holds no video track, only sound or data; a clip with pictures is needed");
        }
        return container.streams(index);
    }

    private void openDecoder(int threads) throws VideoException {
        AVCodec codec = avcodec_find_decoder(stream.codecpar().codec_id());
        if (codec == null || codec.isNull()) {
            throw new VideoException(Libav.nameOf(clip) + ": its pictures are coded as " + codecName()
                    + ", which cannot be decoded here; convert the clip to H.264");
        }
        packet = av_packet_alloc();
        decoder = avcodec_alloc_context3(codec);
        Libav.check(avcodec_parameters_to_context(decoder, stream.codecpar()), clip, "preparing the decoder");
        decoder.pkt_timebase(stream.time_base());
        decoder.thread_count(threads);
        decoder.max_pixels(Libav.MOST_PIXELS);
        Libav.check(
                avcodec_open2(decoder, codec, (AVDictionary) null), clip, "starting the " + codecName() + " decoder");
    }

    AVFormatContext container() {
        return container;
    }

    AVStream stream() {
        return stream;
    }

    String codecName() {
        return avcodec_get_name(stream.codecpar().codec_id()).getString();
    }

    /**
     * Pictures lost so far. The H.264 and HEVC decoders drop pictures that build on a lost one without an error; these are known,
     * and counted, only at the end of the clip.
     */
    long undecodable() {
        return undecodable;
    }

    /**
     * Reads packets without decoding them. What comes after is not for decoding: the clip has been read past its beginning.
     *
     * @param most packets that are read
     */
    PacketScan scan(int most) throws VideoException {
        long[] stamps = new long[most];
        long[] keys = new long[most];
        int n = 0;
        int keyCount = 0;
        boolean complete = false;
        long durationUs = 0;
        long read = 0;
        while (n < most) {
            if (!readPicturePacket()) {
                complete = true;
                break;
            }
            read++;
            if ((packet.flags() & AV_PKT_FLAG_DISCARD) == 0) {
                long ticks = packet.pts() != Libav.NO_STAMP ? packet.pts() : packet.dts();
                // Without any stamp: one usual step after the packet before, as a reader repairs it.
                stamps[n] = ticks == Libav.NO_STAMP
                        ? (n == 0 ? 0 : stamps[n - 1] + Math.max(1, durationUs))
                        : Libav.toUs(ticks, stream.time_base());
                durationUs = Libav.toUs(Math.max(0, packet.duration()), stream.time_base());
                if ((packet.flags() & AV_PKT_FLAG_KEY) != 0) {
                    keys[keyCount++] = stamps[n];
                }
                n++;
            }
            av_packet_unref(packet);
        }
        // Of the others, AVI counts pictures that say "the last one again" and are not stored.
        boolean indexed = container.iformat().name().getString().contains("mp4");
        boolean fewerThanIndexed = indexed && complete && stream.nb_frames() > read;
        return new PacketScan(
                Arrays.copyOf(stamps, n), Arrays.copyOf(keys, keyCount), complete, undecodable > 0 || fewerThanIndexed);
    }

    /**
     * Goes to the last key picture at or before a stamp and forgets what was decoded.
     *
     * @return false when the container cannot do that; reading then goes on where it was
     */
    boolean seek(long ticks) {
        if (av_seek_frame(container, stream.index(), ticks, AVSEEK_FLAG_BACKWARD) < 0) {
            return false;
        }
        avcodec_flush_buffers(decoder);
        draining = false;
        seeked = true;
        return true;
    }

    /**
     * Decodes the next picture into the frame, which is emptied first.
     *
     * @return false at the end of the clip
     * @throws VideoException when the storage itself fails
     */
    boolean next(AVFrame into) throws VideoException {
        while (true) {
            int received = avcodec_receive_frame(decoder, into);
            if (received >= 0) {
                decoded++;
                fieldsSeen |= UprightFilter.isInterlaced(into);
                return true;
            }
            if (received == AVERROR_EOF) {
                countSilentLosses();
                return false;
            }
            if (received == AVERROR_EAGAIN()) {
                feed();
            } else {
                undecodable++;
            }
        }
    }

    /** Each packet of these holds one picture, unless it holds a field; other codecs have packets without a picture to show. */
    private void countSilentLosses() {
        int codec = decoder.codec_id();
        if ((codec == AV_CODEC_ID_H264 || codec == AV_CODEC_ID_HEVC) && !fieldsSeen && !seeked) {
            undecodable = Math.max(undecodable, fed - decoded);
        }
    }

    private void feed() throws VideoException {
        if (draining || !readPicturePacket()) {
            draining = true;
            avcodec_send_packet(decoder, null);
            return;
        }
        boolean toBeShown = (packet.flags() & AV_PKT_FLAG_DISCARD) == 0; // an edit list may cut pictures off
        fed += toBeShown ? 1 : 0;
        int sent = avcodec_send_packet(decoder, packet);
        av_packet_unref(packet);
        if (sent < 0) {
            undecodable++;
        }
    }

    private boolean readPicturePacket() throws VideoException {
        while (true) {
            int read = av_read_frame(container, packet);
            if (read < 0) {
                return endedBy(read);
            }
            // An empty packet says "the last picture again" in some containers, but "the end" to the decoder.
            if (packet.stream_index() == stream.index() && packet.size() > 0) {
                return true;
            }
            av_packet_unref(packet);
        }
    }

    private boolean endedBy(int code) throws VideoException {
        if (code == AVERROR_EIO()) {
            throw new VideoException(Libav.nameOf(clip) + ": reading stopped after " + decoded
                    + " pictures (input/output error); copy it again from the camera");
        }
        if (code != AVERROR_EOF) {
            undecodable++; // what follows in the container cannot be read: at least one picture is lost
        }
        return false;
    }

    @Override
    public void close() {
        if (closed) {
            return;
        }
        closed = true;
        if (packet != null) {
            av_packet_free(packet);
        }
        if (decoder != null) {
            avcodec_free_context(decoder);
        }
        avformat_close_input(container);
    }
}
