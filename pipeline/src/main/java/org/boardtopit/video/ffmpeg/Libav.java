package org.boardtopit.video.ffmpeg;

import java.io.ByteArrayOutputStream;
import java.io.File;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import org.boardtopit.video.VideoException;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.ffmpeg.global.avutil;
import org.bytedeco.javacpp.BytePointer;

/** What reader and writer both need of the C libraries: silence, error texts, file names, time bases. */
final class Libav {
    static final long NO_STAMP = avutil.AV_NOPTS_VALUE;
    /** A little more than 8K (7680 x 4320); beyond, the number is damaged, or a night's memory would not do. */
    static final long MOST_PIXELS = 36_000_000;

    /** No single piece of a clip needs more memory at once; a damaged length would ask for it. */
    private static final long MOST_BYTES_AT_ONCE = 1L << 30;

    static final int FRAME_FLAG_INTERLACED = 1 << 3; // AV_FRAME_FLAG_INTERLACED of libavutil/frame.h
    static final int FRAME_FLAG_TOP_FIELD_FIRST = 1 << 4; // AV_FRAME_FLAG_TOP_FIELD_FIRST

    static {
        // The libraries would write to the terminal, which belongs to the command line alone.
        avutil.av_log_set_level(avutil.AV_LOG_QUIET);
        avutil.av_max_alloc(MOST_BYTES_AT_ONCE);
    }

    private Libav() {}

    /** Loads the libraries and silences them; call before the first use of any. */
    static void load() {
        // The work is done when the class is initialised.
    }

    /** The library's own words for a negative return code. */
    static String errorText(int code) {
        byte[] text = new byte[256];
        avutil.av_strerror(code, text, text.length);
        int end = 0;
        while (end < text.length && text[end] != 0) {
            end++;
        }
        return new String(text, 0, end, StandardCharsets.UTF_8);
    }

    /** Throws unless the code is zero or positive; for calls that fail only when memory is short or the project is wrong. */
    static int check(int code, Path file, String doing) throws VideoException {
        if (code < 0) {
            throw new VideoException(nameOf(file) + ": " + doing + " failed (" + errorText(code) + ")");
        }
        return code;
    }

    static String nameOf(Path file) {
        Path name = file.getFileName();
        return name == null ? file.toString() : name.toString();
    }

    /**
     * The file's name for the C libraries: with the "file:" prefix, so that neither a colon nor a leading dash in it means
     * anything, and in the very bytes the file system uses. These come from the URI, because under a plain "C" locale Java
     * keeps them there but shows question marks in {@code toString()}.
     */
    static BytePointer url(Path file) {
        Path absolute = file.toAbsolutePath();
        if (File.separatorChar == '\\') {
            return new BytePointer("file:" + absolute, StandardCharsets.UTF_8);
        }
        return new BytePointer(
                terminated("file:", percentDecoded(absolute.toUri().getRawPath())));
    }

    private static byte[] percentDecoded(String rawPath) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream(rawPath.length());
        for (int i = 0; i < rawPath.length(); i++) {
            char c = rawPath.charAt(i);
            if (c == '%') {
                bytes.write(Integer.parseInt(rawPath.substring(i + 1, i + 3), 16));
                i += 2;
            } else {
                bytes.write(c);
            }
        }
        return bytes.toByteArray();
    }

    private static byte[] terminated(String prefix, byte[] rest) {
        byte[] start = prefix.getBytes(StandardCharsets.US_ASCII);
        byte[] all = new byte[start.length + rest.length + 1];
        System.arraycopy(start, 0, all, 0, start.length);
        System.arraycopy(rest, 0, all, start.length, rest.length);
        return all;
    }

    /** Ticks of a time base in microseconds, rounded to the nearest; {@link #NO_STAMP} stays itself. */
    static long toUs(long ticks, AVRational timeBase) {
        return ticks == NO_STAMP ? NO_STAMP : avutil.av_rescale_q(ticks, timeBase, avutil.av_make_q(1, 1_000_000));
    }

    /** A fraction as a number, NaN when its denominator is zero. */
    static double value(AVRational q) {
        return q.den() == 0 ? Double.NaN : (double) q.num() / q.den();
    }
}
