package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.Mark;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.ReferencePicture;
import org.boardtopit.ground.Lens;
import org.boardtopit.ground.MarksCheck;
import org.boardtopit.ground.MarksCheck.Finding;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.report.overlay.CameraScene;
import org.boardtopit.report.overlay.CameraScene.SceneLine;
import org.boardtopit.report.overlay.CameraScene.SceneMark;
import org.boardtopit.report.overlay.drawing.CameraPicture;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.VideoException;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Checks the marks of every camera and draws them on its reference picture. */
@Command(
        name = "cameras",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Checks the runway marks of every camera position.",
        description = {
            "",
            "Fits each camera to its marks, compares every mark with what all the others",
            "say, and names the one that is wrong. With --out it also draws the marks and",
            "the runway they imply on the reference picture. No clip is needed.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "    boardtopit cameras meet.yaml",
            "    boardtopit cameras meet.yaml --out results",
            "",
            "Exit codes: 0 all marks agree, 1 a mark is off, 2 wrong input,",
            "3 a fault of the program."
        })
final class CamerasCommand implements Callable<Integer> {
    private static final double RUNWAY_HALF_M = 0.61;
    /** Places at which the exactness along the runway is told: last strides, board, landings, pit. */
    private static final double[] PLACES_M = {-10, -5, 0, 6, 11};

    private final Surroundings surroundings;

    @Parameters(paramLabel = "MEET.yaml", description = "The competition's meet.yaml.")
    private Path meetFile;

    @Option(names = "--out", paramLabel = "DIR", description = "Draws a picture per camera into DIR/cameras.")
    private Path out;

    CamerasCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException, IOException {
        MeetSheet meet = MeetSheetReader.read(meetFile);
        List<Camera> marked =
                meet.cameras().stream().filter(c -> c.reference().isPresent()).toList();
        if (marked.isEmpty()) {
            throw new InputException(
                    meetFile, "no camera has a reference picture and marks; there is nothing to check");
        }
        if (out != null) {
            OutputFolder.prepare(out);
            OutputFolder.requireNotTidied(out);
            Files.createDirectories(out.resolve("cameras"));
        }
        boolean agree = true;
        for (Camera camera : marked) {
            agree &= check(camera, camera.reference().orElseThrow());
        }
        return agree ? ExitCode.DONE : ExitCode.SOME_NOT_MEASURED;
    }

    private boolean check(Camera camera, ReferencePicture reference) throws InputException, IOException {
        Lens lens = lens(camera, reference.picture());
        List<Mark> marks = reference.marks().marks();
        MarksCheck check = MarksCheck.of(marks, lens);
        say(
                "Camera %s: %d marks on %s",
                camera.name(), marks.size(), reference.picture().getFileName());
        if (lens.k1() != 0) {
            say("  lens: distortion_k1 %s is taken out", lens.k1());
        }
        place(check);
        table(check);
        boolean agree = verdict(check, reference);
        if (out != null) {
            Path target = out.resolve("cameras").resolve(camera.name().replaceAll("[^\\p{L}\\p{N}._-]", "_") + ".jpg");
            CameraPicture.write(reference.picture(), scene(camera, check), target);
            say("  picture: %s", target);
        }
        say("");
        return agree;
    }

    private static Lens lens(Camera camera, Path picture) throws InputException {
        try (var opened = org.boardtopit.ground.opencv.ReferencePicture.read(picture)) {
            return new Lens(opened.widthPx(), opened.heightPx(), camera.distortionK1());
        } catch (VideoException e) {
            throw new InputException(picture, "not a picture that can be read; a JPEG or PNG is needed");
        }
    }

    /** The camera to believe: that of all marks, or without the wrong one. */
    private static RunwayCamera believed(MarksCheck check) {
        return check.culprit()
                .map(MarksCheck.Culprit::withoutIt)
                .orElse(check.camera().orElse(null));
    }

    private void place(MarksCheck check) {
        RunwayCamera camera = believed(check);
        if (camera == null) {
            return;
        }
        say(
                "  stands %.1f m high, %.1f m %s of the runway, level with %.1f m; focal length %.0f px",
                camera.heightM(),
                Math.abs(camera.acrossM()),
                camera.acrossM() > 0 ? "left" : "right",
                camera.alongM(),
                camera.focalPx());
        StringBuilder sd = new StringBuilder();
        for (double along : PLACES_M) {
            sd.append(String.format(
                    Locale.ROOT,
                    "%s%.1f cm at %.0f m",
                    sd.isEmpty() ? "" : ", ",
                    100 * camera.alongSdM(along, 0),
                    along));
        }
        say("  places along the runway are known to (one sd): %s", sd);
        if (camera.marksAcrossSign() < 0) {
            say("  across_m counts to the athlete's right here; it is understood so");
        }
    }

    private void table(MarksCheck check) {
        int widest = check.findings().stream()
                .mapToInt(f -> f.mark().name().length())
                .max()
                .orElse(4);
        String head = "  %-" + Math.min(40, Math.max(4, widest)) + "s";
        say(head + " %9s %12s %10s %10s", "mark", "all: px", "others: px", "along cm", "across cm");
        for (Finding f : check.findings()) {
            say(
                    head + " %9s %12s %10s %10s  %s",
                    f.mark().name(),
                    number(f.residualPx()),
                    number(f.leftOutPx()),
                    number(100 * f.leftOutAlongM()),
                    number(100 * f.leftOutAcrossM()),
                    !check.isComparable() ? "not compared" : f.off() ? "OFF" : "good");
        }
    }

    private static String number(double value) {
        // Adding zero turns a rounded -0.0 into 0.0.
        return Double.isFinite(value) ? String.format(Locale.ROOT, "%.1f", Math.round(10 * value) / 10.0 + 0.0) : "-";
    }

    private boolean verdict(MarksCheck check, ReferencePicture reference) {
        String file = reference.marksFile().getFileName().toString();
        if (check.culprit().isPresent()) {
            MarksCheck.Culprit culprit = check.culprit().get();
            surroundings
                    .console()
                    .error(String.format(
                            Locale.ROOT,
                            "%s: mark '%s' is off; without it the others agree to %.1f px. Check its four numbers%s",
                            file,
                            culprit.mark().name(),
                            culprit.withoutIt().residualPx(),
                            culprit.hint().isEmpty() ? "" : ": " + culprit.hint()));
            return false;
        }
        if (!check.agree()) {
            surroundings
                    .console()
                    .error(file + ": the marks do not agree with one another, and it cannot be told which is wrong;"
                            + (check.isComparable() ? " check those that say OFF" : " check all of them")
                            + (check.findings().size() < MarksCheck.FEWEST_TO_NAME_ONE ? ", or add some" : ""));
            return false;
        }
        if (check.isComparable()) {
            say("  all marks agree");
        } else {
            surroundings
                    .console()
                    .warning(file + ": with " + check.findings().size()
                            + " marks none can be compared with the others; a slip of the pen would not be seen."
                            + " Six or more are safer");
        }
        return true;
    }

    private static CameraScene scene(Camera camera, MarksCheck check) {
        String wrong = check.culprit().map(c -> c.mark().name()).orElse("");
        List<SceneMark> marks = new ArrayList<>();
        for (Finding f : check.findings()) {
            RunwayCamera seer = believed(check);
            Point2 expected = f.off() || seer == null
                    ? f.predicted()
                    : seer.project(
                            f.mark().alongM(), seer.marksAcrossSign() * f.mark().acrossM(), 0);
            marks.add(new SceneMark(
                    f.mark().name(), f.mark().pixel(), expected, f.off(), seer != null && isFarSide(seer, f.mark())));
        }
        List<String> headings = new ArrayList<>();
        headings.add("Camera " + camera.name());
        headings.add("Cross: as in the table. Ring: as the marks together expect it.");
        headings.add("The lines must lie on the runway's own. Ticks: metres from the take-off line.");
        if (!wrong.isEmpty()) {
            headings.add("OFF: " + wrong);
        }
        return new CameraScene(headings, marks, believed(check) == null ? List.of() : lines(believed(check), check));
    }

    private static boolean isFarSide(RunwayCamera camera, Mark mark) {
        return camera.acrossM() * camera.marksAcrossSign() * mark.acrossM() < 0;
    }

    private static List<SceneLine> lines(RunwayCamera camera, MarksCheck check) {
        double least = -10;
        double most = 12;
        double pit = Double.NaN;
        for (Finding f : check.findings()) {
            if (f.mark().name().toLowerCase(Locale.ROOT).contains("pit") && !f.off()) {
                pit = f.mark().alongM();
            }
        }
        double end = Double.isNaN(pit) ? most : pit;
        List<SceneLine> lines = new ArrayList<>();
        for (double across : new double[] {-RUNWAY_HALF_M, 0, RUNWAY_HALF_M}) {
            for (double along = least; along < end; along++) { // in pieces: one end may lie behind the camera
                lines.add(line(camera, along, across, Math.min(end, along + 1), across, "", across != 0));
            }
        }
        for (double along = least; along <= end; along++) {
            String label = along % 2 == 0 && along != 0 ? String.format(Locale.ROOT, "%.0f", along) : "";
            lines.add(line(camera, along, -RUNWAY_HALF_M, along, RUNWAY_HALF_M, label, false));
        }
        lines.add(line(camera, 0, -RUNWAY_HALF_M, 0, RUNWAY_HALF_M, "0", true));
        if (!Double.isNaN(pit)) {
            lines.add(line(camera, pit, -1.375, pit, 1.375, "pit", true));
        }
        return lines;
    }

    private static SceneLine line(
            RunwayCamera camera, double x1, double y1, double x2, double y2, String label, boolean strong) {
        Point2 a = camera.project(x1, y1, 0);
        Point2 b = camera.project(x2, y2, 0);
        boolean swap = !label.isEmpty() && a.y() < b.y(); // the label stands at the far end, above the runway
        return new SceneLine(swap ? b : a, swap ? a : b, label, strong);
    }

    private void say(String format, Object... values) {
        surroundings.console().say(String.format(Locale.ROOT, format, values));
    }
}
