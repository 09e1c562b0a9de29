package org.boardtopit.run;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.clips.TableFormat;
import org.boardtopit.corrections.RefusedCorrectionException;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.pose.ClipLandmarksFile;
import org.boardtopit.report.AttemptTables;
import org.boardtopit.report.FaceCovers;
import org.boardtopit.report.comparison.AttemptDifferences;
import org.boardtopit.report.comparison.ComparedAttempt;
import org.boardtopit.report.comparison.ComparisonScene;
import org.boardtopit.report.comparison.TimeAlignment;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.overlay.drawing.ComparisonVideo;
import org.boardtopit.report.tables.DifferenceRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.report.tables.WholeFile;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.video.ClipOpener;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.video.WriteBehindWriter;
import org.boardtopit.video.ffmpeg.FfmpegVideoWriter;
import org.boardtopit.wording.Language;
import org.boardtopit.wording.Words;

/**
 * Compares two attempts of finished runs from their clips and what is kept of these, without the landmark network: the cheap half of
 * the pipeline is done anew, so that sheets and corrections count as they are now.
 */
public final class ComparisonMaker {
    private final ClipOpener opener;
    private final DetectorSource detectors;
    private final int encoderThreads;

    /** Opens the network that finds people; asked only for a clip of which no overlay was made, so that its faces are hidden here too. */
    @FunctionalInterface
    public interface DetectorSource {
        /** An open detector, which the caller closes. */
        PersonDetector open() throws NetworkUnfitException;
    }

    /**
     * What is wanted.
     *
     * @param out the output folder, which exists and whose lock the caller holds
     * @param trueTime true for true time in place of stretched phases
     * @param slow how many times slower the video is, 1 or more
     * @param language of what is written into the picture
     * @param tables how the table is written
     */
    public record Wish(Path out, boolean trueTime, int slow, Language language, TableFormat tables) {
        public Wish {
            if (slow < 1) {
                throw new IllegalArgumentException("slow must be 1 or more, was " + slow);
            }
        }

        /** In the form of fingerprints. */
        String inWords() {
            return trueTime + " " + slow + " " + language + " " + tables;
        }
    }

    /**
     * What was made.
     *
     * @param differences how many numbers differ by more than is uncertain, of so many compared
     */
    public record Made(Path video, Path table, int differences, int compared) {}

    /**
     * With what is needed to open clips.
     *
     * @param encoderThreads 1 or more
     */
    public ComparisonMaker(ClipOpener opener, DetectorSource detectors, int encoderThreads) {
        this.opener = opener;
        this.detectors = detectors;
        this.encoderThreads = encoderThreads;
    }

    /**
     * Makes the video and the table.
     *
     * @throws IOException when something cannot be written
     */
    public Made make(KeptClip a, KeptClip b, Wish wish) throws ClipsNotComparedException, IOException {
        return make(a, b, wish, Optional.empty());
    }

    /** The same of the results of both clips as they are kept now, so that {@link #isThere} knows it again. */
    public Made makeOfResults(KeptClip a, KeptClip b, Wish wish) throws ClipsNotComparedException, IOException {
        return make(a, b, wish, fingerprint(a, b, wish));
    }

    /** True when it was made before from results that are still those of both clips. */
    public static boolean isThere(KeptClip a, KeptClip b, Wish wish) {
        return fingerprint(a, b, wish)
                .filter(fingerprint -> files(a, b, wish).areMadeFrom(fingerprint))
                .isPresent();
    }

    private static ComparisonFiles files(KeptClip a, KeptClip b, Wish wish) {
        return new ComparisonFiles(wish.out(), a.clip().name(), b.clip().name(), wish.trueTime());
    }

    private Made make(KeptClip a, KeptClip b, Wish wish, Optional<String> fingerprint)
            throws ClipsNotComparedException, IOException {
        requireComparable(a);
        requireComparable(b);
        Side first = side(a, wish.language());
        Side second = side(b, wish.language());
        ComparedAttempt one = first.attempt();
        ComparedAttempt two = second.attempt();
        TimeAlignment alignment = TimeAlignment.of(one, two, wish.trueTime())
                .orElseThrow(() -> new ClipsNotComparedException(a.clip().fileName() + " and "
                        + b.clip().fileName()
                        + " have no touchdown in common, or never show both athletes when they are aligned"));
        AttemptDifferences differences = AttemptDifferences.of(one, two);
        ComparisonScene scene = new ComparisonScene(
                one,
                two,
                alignment,
                differences,
                wish.trueTime(),
                wish.slow(),
                Words.of("comparison", wish.language()));
        ComparisonFiles files = files(a, b, wish);
        Files.createDirectories(files.video().getParent());
        Files.deleteIfExists(files.madeFrom());
        video(first, second, scene, files.video());
        Path table = new TableWriter(wish.out(), wish.tables())
                .write(DifferenceRow.TABLE.in(files.table()), differences.rows());
        if (fingerprint.isPresent()) {
            WholeFile.write(
                    files.madeFrom(), out -> out.append(fingerprint.get()).append('\n'));
        }
        return new Made(files.video(), table, differences.rows().size(), differences.compared());
    }

    /** A clip, open for reading as often as need be. */
    private record Side(ClipSources sources, ClipSource source, ComparedAttempt attempt, FaceCovers covers) {
        FrameReader open() throws VideoException {
            return sources.open(source);
        }
    }

    private Side side(KeptClip kept, Language language) throws ClipsNotComparedException, IOException {
        try {
            ClipSources sources = kept.sources(opener);
            ClipSource source = sources.of(kept.clip());
            ClipLandmarks landmarks = ClipLandmarksFile.read(source.kept(".landmarks"), source.fingerprint())
                    .orElseThrow(() -> notKept(kept));
            AttemptAnalysis analysis = new AttemptAnalyser().analyse(kept.clip(), landmarks);
            OverlayScene scene = ClipDrawing.scene(source, landmarks, analysis, language);
            AttemptTables tables = new AttemptTables(
                    kept.clip(),
                    kept.meet(),
                    analysis.measures(),
                    analysis.fitted().repaired());
            ComparedAttempt attempt = new ComparedAttempt(
                    kept.clip().name(),
                    landmarks,
                    analysis.view(),
                    analysis.drawn(),
                    analysis.measures(),
                    scene,
                    tables.intervals());
            return new Side(sources, source, attempt, covers(kept, sources, source, landmarks, scene));
        } catch (RefusedCorrectionException e) {
            throw new ClipsNotComparedException(
                    kept.clip().fileName() + ", corrections, line " + e.line() + ": " + e.getMessage(), e);
        } catch (VideoException e) {
            throw new ClipsNotComparedException(e.getMessage(), e);
        }
    }

    private static void requireComparable(KeptClip kept) throws ClipsNotComparedException {
        String name = kept.clip().fileName();
        if (kept.clip().withheld().isPresent()) {
            throw new ClipsNotComparedException(
                    name + " is withheld: " + kept.clip().withheld().get());
        }
        if (kept.clip().corrections().stream().anyMatch(c -> c.field() == Correction.Field.REJECT)) {
            throw new ClipsNotComparedException(name + " is rejected by a correction");
        }
        if (kept.clip().view() != Camera.View.SIDE) {
            throw new ClipsNotComparedException(name + " was not filmed from the side, which a comparison needs");
        }
        if (!Files.isRegularFile(kept.clip().file())) {
            throw new ClipsNotComparedException(
                    kept.clip().file() + ": the clip is no longer there, and a comparison is made of its pictures");
        }
    }

    private static ClipsNotComparedException notKept(KeptClip kept) {
        return new ClipsNotComparedException(kept.clip().fileName()
                + ": not measured, or the clip, its camera or the network is another one since; start process once more"
                + " for the folder " + kept.out());
    }

    private FaceCovers covers(
            KeptClip kept, ClipSources sources, ClipSource source, ClipLandmarks landmarks, OverlayScene scene)
            throws IOException, ClipsNotComparedException {
        Faces faces = kept.meet().safeguards().faces();
        List<PersonInView> people = faces == Faces.SHOW ? List.of() : people(sources, source);
        return FaceCovers.of(landmarks, scene, people, faces);
    }

    private List<PersonInView> people(ClipSources sources, ClipSource source)
            throws IOException, ClipsNotComparedException {
        Optional<List<PersonInView>> earlier = PeopleReading.kept(source);
        if (earlier.isPresent()) {
            return earlier.get();
        }
        try (PersonDetector detector = detectors.open()) {
            return new PeopleReading(sources, Optional.of(detector)).of(source);
        } catch (NotMeasuredNowException e) {
            throw new ClipsNotComparedException(e.getMessage(), e);
        } catch (NetworkUnfitException e) {
            throw new ClipsNotComparedException(
                    "faces cannot be hidden without the network that finds people: " + e.getMessage(), e);
        }
    }

    private void video(Side a, Side b, ComparisonScene scene, Path target)
            throws ClipsNotComparedException, IOException {
        try (FrameReader readerA = a.open();
                FrameReader readerB = b.open();
                VideoWriter writer = new WriteBehindWriter(new FfmpegVideoWriter(
                        target,
                        scene.layout().widthPx(),
                        scene.layout().heightPx(),
                        scene.nominalFps(),
                        encoderThreads))) {
            ComparisonVideo.write(
                    new ComparisonVideo.Source(readerA, a.covers()::at),
                    new ComparisonVideo.Source(readerB, b.covers()::at),
                    scene,
                    writer);
        } catch (VideoException e) {
            throw new ClipsNotComparedException(e.getMessage(), e);
        }
        WholeFile.force(target);
    }

    /** Another one when the kept result of either clip is another; empty when one has none. */
    private static Optional<String> fingerprint(KeptClip a, KeptClip b, Wish wish) {
        Optional<String> first = new StoredResults(a.out()).fingerprint(a.clip());
        Optional<String> second = new StoredResults(b.out()).fingerprint(b.clip());
        if (first.isEmpty() || second.isEmpty()) {
            return Optional.empty();
        }
        String all = String.join("\n", first.get(), second.get(), wish.inWords());
        return Optional.of(HexFormat.of().formatHex(FileDigests.sha256().digest(all.getBytes(StandardCharsets.UTF_8))));
    }
}
