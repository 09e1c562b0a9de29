package org.boardtopit.run;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ReferencePicture;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.pose.Look;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.PrefetchingReader;
import org.boardtopit.video.RetimedReader;
import org.boardtopit.video.VideoException;

/** Opens the clips of a run, in real time also when they are stored as slow motion, and tells what their landmarks depend on. */
final class ClipSources {
    /** A stated capture rate this much above the file's means slow motion; below it is a rounding of the same rate. */
    private static final double LEAST_SLOW_DOWN = 1.2;

    private final ClipOpener opener;
    private final NetworkCard network;
    private final List<Look> looks;
    private final Path work;
    private final ClipDigests digests;

    /**
     * Of one run that reads every clip.
     *
     * @param network which landmarks are read with, and looks how
     * @param out the output folder
     */
    ClipSources(ClipOpener opener, NetworkCard network, List<Look> looks, Path out) {
        this(opener, network, looks, out, ClipDigests.reading(out));
    }

    /**
     * Of one run.
     *
     * @param network which landmarks are read with, and looks how
     * @param out the output folder
     * @param digests of the clips' bytes
     */
    ClipSources(ClipOpener opener, NetworkCard network, List<Look> looks, Path out, ClipDigests digests) {
        this.digests = digests;
        this.opener = opener;
        this.network = network;
        this.looks = List.copyOf(looks);
        this.work = out.resolve("work");
    }

    /** The clip with its fingerprint, for which all its bytes are read unless they are remembered. */
    ClipSource of(Clip clip) throws IOException {
        double slowDown = slowDown(clip);
        return new ClipSource(clip, slowDown, fingerprint(clip, slowDown), work);
    }

    /** Its frames at the times they were captured. */
    FrameReader open(ClipSource source) throws VideoException {
        FrameReader reader = asStored(source.clip());
        return source.slowDown() == 1 ? reader : new RetimedReader(reader, source.slowDown());
    }

    /** Its frames at the times they are played. */
    FrameReader asStored(Clip clip) throws VideoException {
        return new PrefetchingReader(opener.open(clip.file()));
    }

    static Optional<ReferencePicture> reference(Clip clip) {
        return clip.camera().flatMap(Camera::reference);
    }

    private double slowDown(Clip clip) throws IOException {
        double capture = clip.entry().map(AttemptEntry::captureFps).orElse(Double.NaN);
        if (!(capture > 0)) {
            return 1;
        }
        double ratio = capture / digests.nominalFps(clip, () -> nominalFps(clip));
        return ratio >= LEAST_SLOW_DOWN ? ratio : 1;
    }

    private double nominalFps(Clip clip) throws VideoException {
        try (FrameReader reader = opener.open(clip.file())) {
            return reader.info().nominalFps();
        }
    }

    private String fingerprint(Clip clip, double slowDown) throws IOException {
        ByteArrayOutputStream after = new ByteArrayOutputStream();
        add(after, network.sha256());
        add(after, looks.toString());
        add(after, Double.toString(slowDown));
        Optional<ReferencePicture> picture = reference(clip);
        if (picture.isPresent()) {
            Files.copy(picture.get().picture(), after);
        }
        if (clip.view() != Camera.View.SIDE) {
            add(after, clip.view().name());
            add(after, Double.toString(MarkedCamera.distortionK1(clip)));
            if (picture.isPresent()) {
                Files.copy(picture.get().marksFile(), after);
            }
        }
        return digests.of(clip, after.toByteArray());
    }

    private static void add(ByteArrayOutputStream to, String text) {
        to.writeBytes(text.getBytes(StandardCharsets.UTF_8));
    }
}
