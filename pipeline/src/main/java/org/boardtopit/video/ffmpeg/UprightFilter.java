package org.boardtopit.video.ffmpeg;

import static org.bytedeco.ffmpeg.global.avcodec.AV_FIELD_BB;
import static org.bytedeco.ffmpeg.global.avcodec.AV_FIELD_BT;
import static org.bytedeco.ffmpeg.global.avcodec.AV_FIELD_TB;
import static org.bytedeco.ffmpeg.global.avcodec.AV_FIELD_TT;
import static org.bytedeco.ffmpeg.global.avfilter.av_buffersink_get_frame;
import static org.bytedeco.ffmpeg.global.avfilter.av_buffersink_get_time_base;
import static org.bytedeco.ffmpeg.global.avfilter.av_buffersrc_add_frame;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_get_by_name;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_alloc;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_config;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_create_filter;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_free;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_graph_parse_ptr;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_inout_alloc;
import static org.bytedeco.ffmpeg.global.avfilter.avfilter_inout_free;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_move_ref;
import static org.bytedeco.ffmpeg.global.avutil.av_frame_unref;
import static org.bytedeco.ffmpeg.global.avutil.av_strdup;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.boardtopit.video.VideoException;
import org.bytedeco.ffmpeg.avfilter.AVFilterContext;
import org.bytedeco.ffmpeg.avfilter.AVFilterGraph;
import org.bytedeco.ffmpeg.avfilter.AVFilterInOut;
import org.bytedeco.ffmpeg.avutil.AVFrame;
import org.bytedeco.ffmpeg.avutil.AVRational;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.Pointer;

/**
 * Takes decoded pictures and gives upright ones; of interlaced material one for each field, at the field's own time.
 *
 * <p>Fields are completed by bwdif ("Bob Weaver Deinterlacing Filter" of libavfilter), which keeps the lines of the field and
 * computes the others from the fields before and after; pictures within such material that are flagged progressive pass
 * once. Nothing is done, and no time lost, when the pictures are upright and progressive.
 *
 * <p>Made for pictures of one kind ({@link #accepts}); a change within a clip needs a new filter.
 */
final class UprightFilter implements AutoCloseable {

    /** How the two fields of a picture are known. */
    enum Fields {
        /** There are none. */
        PROGRESSIVE,
        /** Each picture says whether it is interlaced and which field is first. */
        FLAGGED,
        /** All pictures are interlaced by the container's word alone, top field first. */
        TOP_FIRST,
        /** All pictures are interlaced by the container's word alone, bottom field first. */
        BOTTOM_FIRST;

        static Fields of(AVFrame picture, int containerFieldOrder) {
            if (isInterlaced(picture)) {
                return FLAGGED;
            }
            // The first letter tells which field is stored first, the second which is shown first (libavcodec/defs.h).
            if (containerFieldOrder == AV_FIELD_TT || containerFieldOrder == AV_FIELD_BT) {
                return TOP_FIRST;
            }
            if (containerFieldOrder == AV_FIELD_BB || containerFieldOrder == AV_FIELD_TB) {
                return BOTTOM_FIRST;
            }
            return PROGRESSIVE;
        }

        private String filter() {
            return switch (this) {
                case PROGRESSIVE -> "";
                case FLAGGED -> "bwdif=mode=send_field:parity=auto:deint=interlaced";
                case TOP_FIRST -> "bwdif=mode=send_field:parity=tff:deint=all";
                case BOTTOM_FIRST -> "bwdif=mode=send_field:parity=bff:deint=all";
            };
        }
    }

    private final Path clip;
    private final Fields fields;
    private final int widthPx;
    private final int heightPx;
    private final int format;
    private final AVRational inputTimeBase;
    private final AVFilterGraph graph; // null when there is nothing to do
    private final AVFilterContext source = new AVFilterContext();
    private final AVFilterContext sink = new AVFilterContext();
    private AVFrame waiting; // the picture between push and pull when there is no graph
    private boolean ended;
    private boolean closed;

    UprightFilter(Path clip, AVFrame picture, AVRational timeBase, Fields fields, Orientation orientation, int threads)
            throws VideoException {
        this.clip = clip;
        this.fields = fields;
        this.widthPx = picture.width();
        this.heightPx = picture.height();
        this.format = picture.format();
        this.inputTimeBase = timeBase;
        List<String> filters = filters(fields, orientation);
        if (filters.isEmpty()) {
            graph = null;
            return;
        }
        graph = avfilter_graph_alloc();
        graph.nb_threads(threads);
        try {
            build(picture, String.join(",", filters));
        } catch (VideoException | RuntimeException e) {
            close();
            throw e;
        }
    }

    private static List<String> filters(Fields kind, Orientation orientation) {
        List<String> filters = new ArrayList<>();
        if (kind != Fields.PROGRESSIVE) {
            filters.add(kind.filter());
        }
        filters.addAll(orientation.filters());
        return filters;
    }

    private void build(AVFrame picture, String chain) throws VideoException {
        String arguments = String.format(
                Locale.ROOT,
                "video_size=%dx%d:pix_fmt=%d:time_base=%d/%d:pixel_aspect=1/1:colorspace=%d:range=%d",
                widthPx,
                heightPx,
                format,
                inputTimeBase.num(),
                inputTimeBase.den(),
                picture.colorspace(),
                picture.color_range());
        create(source, "buffer", "in", arguments);
        create(sink, "buffersink", "out", null);
        AVFilterInOut outputs = end("in", source);
        AVFilterInOut inputs = end("out", sink);
        try {
            Libav.check(
                    avfilter_graph_parse_ptr(graph, chain, inputs, outputs, (Pointer) null),
                    clip,
                    "making the picture upright");
        } finally {
            avfilter_inout_free(inputs);
            avfilter_inout_free(outputs);
        }
        Libav.check(avfilter_graph_config(graph, null), clip, "making the picture upright");
    }

    private void create(AVFilterContext context, String filter, String name, String arguments) throws VideoException {
        Libav.check(
                avfilter_graph_create_filter(context, avfilter_get_by_name(filter), name, arguments, null, graph),
                clip,
                "making the picture upright");
    }

    private static AVFilterInOut end(String name, AVFilterContext context) {
        AVFilterInOut end = avfilter_inout_alloc();
        try (BytePointer label = new BytePointer(name)) {
            end.name(av_strdup(label));
        }
        end.filter_ctx(context);
        end.pad_idx(0);
        end.next(null);
        return end;
    }

    /** Whether this filter was made for such pictures. */
    boolean accepts(AVFrame picture) {
        return !ended
                && picture.width() == widthPx
                && picture.height() == heightPx
                && picture.format() == format
                && (fields != Fields.PROGRESSIVE || !isInterlaced(picture));
    }

    static boolean isInterlaced(AVFrame picture) {
        return (picture.flags() & Libav.FRAME_FLAG_INTERLACED) != 0;
    }

    /** Takes the picture over and leaves the frame empty. Pull until there is nothing more before pushing again. */
    void push(AVFrame picture) throws VideoException {
        if (graph == null) {
            waiting = picture;
            return;
        }
        Libav.check(av_buffersrc_add_frame(source, picture), clip, "making the picture upright");
    }

    /** Tells that no more pictures come: what is still held can then be pulled. */
    void end() throws VideoException {
        if (graph != null && !ended) {
            Libav.check(av_buffersrc_add_frame(source, null), clip, "making the picture upright");
        }
        ended = true;
    }

    Fields fields() {
        return fields;
    }

    boolean ended() {
        return ended;
    }

    /** Moves the next upright picture into the frame, emptied first; false when more must be pushed. */
    boolean pull(AVFrame into) {
        av_frame_unref(into);
        if (graph != null) {
            return av_buffersink_get_frame(sink, into) >= 0;
        }
        if (waiting == null) {
            return false;
        }
        av_frame_move_ref(into, waiting);
        waiting = null;
        return true;
    }

    /** Unit of the stamps of the pictures that {@link #pull} gives. */
    AVRational timeBase() {
        return graph == null ? inputTimeBase : av_buffersink_get_time_base(sink);
    }

    @Override
    public void close() {
        if (!closed && graph != null) {
            avfilter_graph_free(graph);
        }
        closed = true;
    }
}
