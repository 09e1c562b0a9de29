package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.AV_PKT_FLAG_KEY;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_alloc;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_free;
import static org.bytedeco.ffmpeg.global.avcodec.av_packet_unref;
import static org.bytedeco.ffmpeg.global.avcodec.avcodec_get_name;
import static org.bytedeco.ffmpeg.global.avformat.av_read_frame;
import static org.bytedeco.ffmpeg.global.avformat.avformat_close_input;
import static org.bytedeco.ffmpeg.global.avformat.avformat_find_stream_info;
import static org.bytedeco.ffmpeg.global.avformat.avformat_open_input;
import static org.bytedeco.ffmpeg.global.avutil.AV_DICT_IGNORE_SUFFIX;
import static org.bytedeco.ffmpeg.global.avutil.av_dict_get;
import static org.bytedeco.ffmpeg.global.avutil.av_get_pix_fmt_name;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.bytedeco.ffmpeg.avcodec.AVCodecParameters;
import org.bytedeco.ffmpeg.avcodec.AVPacket;
import org.bytedeco.ffmpeg.avformat.AVChapter;
import org.bytedeco.ffmpeg.avformat.AVFormatContext;
import org.bytedeco.ffmpeg.avformat.AVStream;
import org.bytedeco.ffmpeg.avutil.AVDictionary;
import org.bytedeco.ffmpeg.avutil.AVDictionaryEntry;
import org.bytedeco.javacpp.BytePointer;

/**
 * What any player sees of a video file without decoding it.
 *
 * @param tag the four letters that name the coding in the container
 * @param colours matrix, primaries, transfer and range as numbers of ISO/IEC 23091-2 (range: 1 narrow, 2 full)
 * @param chapters "seconds title" of each
 * @param metadata of the file and of the picture track
 * @param keyFrames numbers of the frames at which playing can start
 */
record ContainerFacts(
        String codec,
        String tag,
        String pixelFormat,
        List<Integer> colours,
        int widthPx,
        int heightPx,
        long durationUs,
        List<String> chapters,
        Map<String, String> metadata,
        List<Integer> keyFrames) {

    static ContainerFacts of(Path file) {
        AVFormatContext container = new AVFormatContext(null);
        try (BytePointer url = Libav.url(file)) {
            assertTrue(avformat_open_input(container, url, null, (AVDictionary) null) >= 0);
            assertTrue(avformat_find_stream_info(container, (AVDictionary) null) >= 0);
            AVStream stream = container.streams(0);
            AVCodecParameters coded = stream.codecpar();
            Map<String, String> metadata = entries(container.metadata());
            metadata.putAll(entries(stream.metadata()));
            return new ContainerFacts(
                    avcodec_get_name(coded.codec_id()).getString(),
                    letters(coded.codec_tag()),
                    av_get_pix_fmt_name(coded.format()).getString(),
                    List.of(coded.color_space(), coded.color_primaries(), coded.color_trc(), coded.color_range()),
                    coded.width(),
                    coded.height(),
                    Libav.toUs(stream.duration(), stream.time_base()),
                    chapters(container),
                    metadata,
                    keyFrames(container, stream));
        } finally {
            avformat_close_input(container);
        }
    }

    private static String letters(int tag) {
        byte[] bytes = {(byte) tag, (byte) (tag >> 8), (byte) (tag >> 16), (byte) (tag >> 24)};
        return new String(bytes, StandardCharsets.ISO_8859_1);
    }

    private static List<String> chapters(AVFormatContext container) {
        List<String> chapters = new ArrayList<>();
        for (int i = 0; i < container.nb_chapters(); i++) {
            AVChapter chapter = container.chapters(i);
            double seconds = chapter.start() * Libav.value(chapter.time_base());
            chapters.add(seconds + " " + entries(chapter.metadata()).get("title"));
        }
        return chapters;
    }

    private static Map<String, String> entries(AVDictionary dictionary) {
        Map<String, String> entries = new TreeMap<>();
        try (BytePointer any = new BytePointer("", StandardCharsets.UTF_8)) {
            AVDictionaryEntry entry = av_dict_get(dictionary, any, null, AV_DICT_IGNORE_SUFFIX);
            while (entry != null && !entry.isNull()) {
                entries.put(
                        entry.key().getString(StandardCharsets.UTF_8),
                        entry.value().getString(StandardCharsets.UTF_8));
                entry = av_dict_get(dictionary, any, entry, AV_DICT_IGNORE_SUFFIX);
            }
        }
        return entries;
    }

    private static List<Integer> keyFrames(AVFormatContext container, AVStream stream) {
        List<Integer> keys = new ArrayList<>();
        AVPacket packet = av_packet_alloc();
        int number = 0;
        while (av_read_frame(container, packet) >= 0) {
            if (packet.stream_index() == stream.index()) {
                if ((packet.flags() & AV_PKT_FLAG_KEY) != 0) {
                    keys.add(number);
                }
                number++;
            }
            av_packet_unref(packet);
        }
        av_packet_free(packet);
        return keys;
    }
}
