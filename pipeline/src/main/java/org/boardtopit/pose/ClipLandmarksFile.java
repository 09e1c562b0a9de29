package org.boardtopit.pose;

import java.io.BufferedInputStream;
import java.io.BufferedOutputStream;
import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.zip.GZIPInputStream;
import java.util.zip.GZIPOutputStream;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.ground.BackgroundMotion.FrameRegistration;
import org.boardtopit.ground.CameraModel;
import org.boardtopit.ground.RegistrationFacts;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.Homography;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.VideoInfo;

/**
 * Stores the landmarks of one clip: a gzip file of big-endian numbers behind a fingerprint of what they were made from.
 *
 * <p>Written under a temporary name and moved. A file of another fingerprint or another layout reads as empty: it is simply
 * made anew.
 */
public final class ClipLandmarksFile {
    /** Grows with every change of the layout, or of the stages that fill it. */
    private static final String LAYOUT = "boardtopit landmarks 3";

    private ClipLandmarksFile() {}

    /** Writes the file; the fingerprint tells later what it was made from. When it fails, nothing is left of it. */
    public static void write(Path file, String fingerprint, ClipLandmarks clip) throws IOException {
        Path temporary = file.resolveSibling(file.getFileName() + ".part");
        try {
            writeTo(temporary, fingerprint, clip);
            Files.move(temporary, file, StandardCopyOption.REPLACE_EXISTING, StandardCopyOption.ATOMIC_MOVE);
        } finally {
            Files.deleteIfExists(temporary);
        }
    }

    private static void writeTo(Path file, String fingerprint, ClipLandmarks clip) throws IOException {
        try (DataOutputStream out =
                new DataOutputStream(new BufferedOutputStream(new GZIPOutputStream(Files.newOutputStream(file))))) {
            out.writeUTF(LAYOUT);
            out.writeUTF(fingerprint);
            writeVideo(out, clip.video());
            out.writeLong(clip.undecodableFrames());
            out.writeInt(clip.frameCount());
            out.writeBoolean(clip.background().referenceMatched());
            writeFacts(out, clip.background().facts());
            out.writeInt(clip.subject().direction());
            for (int i = 0; i < clip.frameCount(); i++) {
                out.writeLong(clip.timestampsUs().get(i));
                writeRegistration(out, clip.background().frame(i));
                writeSquare(out, clip.subject().at(i));
                writePose(out, clip.poses().at(i));
            }
        }
    }

    /** Reads the file when it is there, whole, and was made from the same things; else empty. */
    public static Optional<ClipLandmarks> read(Path file, String fingerprint) {
        if (!Files.isRegularFile(file)) {
            return Optional.empty();
        }
        try (DataInputStream in =
                new DataInputStream(new BufferedInputStream(new GZIPInputStream(Files.newInputStream(file))))) {
            if (!in.readUTF().equals(LAYOUT) || !in.readUTF().equals(fingerprint)) {
                return Optional.empty();
            }
            ClipLandmarks clip = readClip(in);
            boolean whole = in.read() < 0; // reading to the very end makes gzip compare its checksum
            return whole ? Optional.of(clip) : Optional.empty();
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty(); // cut off or damaged: as good as absent
        }
    }

    private static ClipLandmarks readClip(DataInputStream in) throws IOException {
        VideoInfo video = readVideo(in);
        long undecodable = in.readLong();
        int frames = in.readInt();
        boolean matched = in.readBoolean();
        RegistrationFacts facts = readFacts(in);
        int direction = in.readInt();
        List<Long> timestamps = new ArrayList<>();
        List<FrameRegistration> registrations = new ArrayList<>();
        List<Optional<Square>> squares = new ArrayList<>();
        List<Optional<FramePose>> poses = new ArrayList<>();
        for (int i = 0; i < frames; i++) {
            timestamps.add(in.readLong());
            registrations.add(readRegistration(in));
            squares.add(readSquare(in));
            poses.add(readPose(in));
        }
        return new ClipLandmarks(
                video,
                timestamps,
                undecodable,
                new BackgroundMotion(registrations, matched, facts),
                new SubjectTrack(squares, direction),
                new PoseTrack(poses));
    }

    private static void writeVideo(DataOutputStream out, VideoInfo v) throws IOException {
        out.writeInt(v.widthPx());
        out.writeInt(v.heightPx());
        out.writeDouble(v.nominalFps());
        out.writeLong(v.durationUs());
        out.writeLong(v.estimatedFrames());
        out.writeBoolean(v.interlaced());
        out.writeInt(v.rotationDeg());
        out.writeUTF(v.codec());
    }

    private static VideoInfo readVideo(DataInputStream in) throws IOException {
        return new VideoInfo(
                in.readInt(),
                in.readInt(),
                in.readDouble(),
                in.readLong(),
                in.readLong(),
                in.readBoolean(),
                in.readInt(),
                in.readUTF());
    }

    private static void writeFacts(DataOutputStream out, RegistrationFacts facts) throws IOException {
        out.writeUTF(facts.model().name());
        out.writeDouble(facts.residualPx());
        out.writeDouble(facts.inliers());
        out.writeDouble(facts.driftPx());
        out.writeDouble(facts.focalPx());
        out.writeDouble(facts.logFocalSd());
        out.writeDouble(facts.referencePoints());
    }

    private static RegistrationFacts readFacts(DataInputStream in) throws IOException {
        return new RegistrationFacts(
                CameraModel.valueOf(in.readUTF()),
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                in.readDouble(),
                in.readDouble());
    }

    private static void writeRegistration(DataOutputStream out, FrameRegistration r) throws IOException {
        for (double v : r.toFixed().toArray()) {
            out.writeDouble(v);
        }
        out.writeBoolean(r.registered());
        out.writeInt(r.inliers());
        out.writeDouble(r.residualPx());
    }

    private static FrameRegistration readRegistration(DataInputStream in) throws IOException {
        double[] h = new double[9];
        for (int k = 0; k < 9; k++) {
            h[k] = in.readDouble();
        }
        return new FrameRegistration(Homography.of(h), in.readBoolean(), in.readInt(), in.readDouble());
    }

    private static void writeSquare(DataOutputStream out, Optional<Square> square) throws IOException {
        out.writeBoolean(square.isPresent());
        if (square.isPresent()) {
            out.writeDouble(square.get().centreXPx());
            out.writeDouble(square.get().centreYPx());
            out.writeDouble(square.get().sidePx());
        }
    }

    private static Optional<Square> readSquare(DataInputStream in) throws IOException {
        return in.readBoolean()
                ? Optional.of(new Square(in.readDouble(), in.readDouble(), in.readDouble()))
                : Optional.empty();
    }

    private static void writePose(DataOutputStream out, Optional<FramePose> pose) throws IOException {
        writeSquare(out, pose.map(FramePose::square));
        if (pose.isPresent()) {
            for (float v : pose.get().toArray()) {
                out.writeFloat(v);
            }
        }
    }

    private static Optional<FramePose> readPose(DataInputStream in) throws IOException {
        Optional<Square> square = readSquare(in);
        if (square.isEmpty()) {
            return Optional.empty();
        }
        float[] numbers = new float[BodyPoint.COUNT * PoseTrack.NUMBERS];
        for (int k = 0; k < numbers.length; k++) {
            numbers[k] = in.readFloat();
        }
        return Optional.of(new FramePose(square.get(), numbers));
    }
}
