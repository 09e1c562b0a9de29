package org.boardtopit.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
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

    /**
     * Of one run.
     *
     * @param network which landmarks are read with, and looks how
     * @param out the output folder
     */
    ClipSources(ClipOpener opener, NetworkCard network, List<Look> looks, Path out) {
        this.opener = opener;
        this.network = network;
        this.looks = List.copyOf(looks);
        this.work = out.resolve("work");
    }

    /** The clip with its fingerprint, for which all its bytes are read. */
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

    private double slowDown(Clip clip) throws VideoException {
        double capture = clip.entry().map(AttemptEntry::captureFps).orElse(Double.NaN);
        if (!(capture > 0)) {
            return 1;
        }
        try (FrameReader reader = opener.open(clip.file())) {
            double ratio = capture / reader.info().nominalFps();
            return ratio >= LEAST_SLOW_DOWN ? ratio : 1;
        }
    }

    private String fingerprint(Clip clip, double slowDown) throws IOException {
        MessageDigest digest = FileDigests.sha256();
        FileDigests.add(digest, clip.file());
        digest.update(network.sha256().getBytes(StandardCharsets.UTF_8));
        digest.update(looks.toString().getBytes(StandardCharsets.UTF_8));
        digest.update(Double.toString(slowDown).getBytes(StandardCharsets.UTF_8));
        Optional<ReferencePicture> picture = reference(clip);
        if (picture.isPresent()) {
            FileDigests.add(digest, picture.get().picture());
        }
        if (clip.view() != Camera.View.SIDE) {
            digest.update(clip.view().name().getBytes(StandardCharsets.UTF_8));
            digest.update(Double.toString(MarkedCamera.distortionK1(clip)).getBytes(StandardCharsets.UTF_8));
            if (picture.isPresent()) {
                FileDigests.add(digest, picture.get().marksFile());
            }
        }
        return HexFormat.of().formatHex(digest.digest());
    }
}
