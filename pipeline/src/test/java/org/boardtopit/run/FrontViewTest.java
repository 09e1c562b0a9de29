package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.measures.ContactQuantity;
import org.boardtopit.models.LandmarkPool;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.models.djl.TorchEngine;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.pose.Look;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.signal.Point2;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The sample competition's first attempt with the same attempt filmed from in front of the pit: joined, aligned, measured.
 *
 * <p>Outside check: the rendered footage's own truth (SYN): its 3-D joints and the times of its contacts, interpolated here. The
 * bars are the project's: tilts within 4 degrees at each contact of the jump.
 */
class FrontViewTest {
    private static final Path SAMPLE = Path.of("..", "sample-config", "competition");
    private static final Path FRONT = Path.of("src", "test", "resources", "org", "boardtopit", "front");
    private static final String SIDE_CLIP = "A1_static_720p60";
    private static final String FRONT_CLIP = "A1_front_1080p60";

    @TempDir
    private static Path folder;

    private static final Map<String, ClipResult> MEASURED = new HashMap<>();
    private static JsonNode truth;
    private static List<String[]> frames;

    @BeforeAll
    static void measureBothClips() throws Exception {
        for (String name : List.of(SIDE_CLIP + ".mp4", "REF_" + SIDE_CLIP + ".jpg", "REF_" + SIDE_CLIP + ".csv")) {
            Files.copy(SAMPLE.resolve(name), folder.resolve(name));
        }
        for (String name : List.of(FRONT_CLIP + ".mp4", "REF_" + FRONT_CLIP + ".jpg", "REF_" + FRONT_CLIP + ".csv")) {
            Files.copy(FRONT.resolve(name), folder.resolve(name));
        }
        Files.writeString(
                folder.resolve("attempts.csv"),
                "clip,bib,attempt,official_m,camera\n" + FRONT_CLIP + ".mp4,214,1,14.88,pit\n" + SIDE_CLIP
                        + ".mp4,214,1,14.88,stand\n",
                StandardCharsets.UTF_8);
        Path meetFile = Files.writeString(
                folder.resolve("meet.yaml"),
                String.join(
                        "\n",
                        "attempts: attempts.csv",
                        "cameras:",
                        "  - {name: stand, reference: REF_" + SIDE_CLIP + ".jpg, marks: REF_" + SIDE_CLIP + ".csv}",
                        "  - {name: pit, view: front, reference: REF_" + FRONT_CLIP + ".jpg, marks: REF_" + FRONT_CLIP
                                + ".csv}",
                        "athletes:",
                        "  - {bib: '214', stature_m: 1.86}",
                        ""),
                StandardCharsets.UTF_8);
        measure(MeetSheetReader.read(meetFile));
        try (InputStream in =
                FrontViewTest.class.getResourceAsStream("/org/boardtopit/sample/" + SIDE_CLIP + ".truth.json")) {
            truth = new ObjectMapper().readTree(in);
        }
        frames = Files.readAllLines(FRONT.resolve(FRONT_CLIP + ".frames.csv"), StandardCharsets.UTF_8).stream()
                .map(line -> line.split(","))
                .toList();
    }

    private static void measure(MeetSheet meet) throws Exception {
        Path out = Files.createDirectory(folder.resolve("out"));
        ClipList list = ClipList.join(ClipFolder.list(List.of(folder), out, meet.inputFiles()), meet);
        NetworkStore networks = new NetworkStore(new TorchEngine());
        try (PersonDetector detector = networks.openDetector(NetworkStore.DEFAULT_DETECTOR);
                LandmarkPool landmarks = networks.openLandmarks(NetworkStore.DEFAULT_LANDMARKS, 2)) {
            ClipProcessor.Tools tools = new ClipProcessor.Tools(
                    new FfmpegClipOpener(1),
                    detector,
                    landmarks,
                    Look.of(Effort.QUICK),
                    1,
                    RuleSetReader.builtIn(Language.ENGLISH),
                    false);
            ClipProcessor processor = new ClipProcessor(meet, list.views(), out, tools);
            for (Clip clip : list.clips()) {
                MEASURED.put(clip.name(), processor.measure(clip, (stage, share) -> {}));
            }
        }
    }

    @AfterAll
    static void forget() {
        MEASURED.clear();
    }

    /** From the right to the left one of a pair at a time, in the plane across the runway. */
    private static Point2 line(String joint, double timeS) {
        return point("left_" + joint, timeS).minus(point("right_" + joint, timeS));
    }

    private static Point2 point(String name, double timeS) {
        List<String> header = List.of(frames.get(0));
        int y = header.indexOf(name + "_y_m");
        int z = header.indexOf(name + "_z_m");
        int after = 1;
        while (Double.parseDouble(frames.get(after)[0]) < timeS) {
            after++;
        }
        String[] a = frames.get(after - 1);
        String[] b = frames.get(after);
        double u = (timeS - Double.parseDouble(a[0])) / (Double.parseDouble(b[0]) - Double.parseDouble(a[0]));
        Point2 first = new Point2(Double.parseDouble(a[y]), Double.parseDouble(a[z]));
        Point2 second = new Point2(Double.parseDouble(b[y]), Double.parseDouble(b[z]));
        return first.plus(second.minus(first).times(u));
    }

    private static double tiltDeg(String joint, double timeS) {
        Point2 line = line(joint, timeS);
        return Math.toDegrees(Math.atan2(line.y(), line.x()));
    }

    private static double leanDeg(double timeS) {
        Point2 shoulders = point("left_shoulder", timeS).plus(point("right_shoulder", timeS));
        Point2 hips = point("left_hip", timeS).plus(point("right_hip", timeS));
        Point2 trunk = shoulders.minus(hips);
        return Math.toDegrees(Math.atan2(trunk.x(), trunk.y()));
    }

    private static ContactRow row(String clip, ContactKind kind) {
        return MEASURED.get(clip).contacts().stream()
                .filter(r -> r.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private record Expected(ContactKind kind, ContactQuantity quantity, double value, double bar) {}

    private static List<Expected> expected() {
        List<Expected> all = new ArrayList<>();
        for (JsonNode contact : truth.get("contacts")) {
            if (!contact.get("kind").asText().equals("approach")) {
                ContactKind kind =
                        ContactKind.valueOf(contact.get("kind").asText().toUpperCase(Locale.ROOT));
                addTouchdown(all, kind, contact.get("touchdown_s").asDouble());
                double off = contact.get("toeoff_s").asDouble();
                all.add(new Expected(kind, ContactQuantity.SHOULDER_TILT_TOE_OFF, tiltDeg("shoulder", off), 4));
                all.add(new Expected(kind, ContactQuantity.HIP_TILT_TOE_OFF, tiltDeg("hip", off), 4));
                all.add(new Expected(kind, ContactQuantity.SIDE_LEAN_TOE_OFF, leanDeg(off), 2));
                all.add(new Expected(
                        kind,
                        ContactQuantity.FOOT_ACROSS,
                        contact.get("toe_y_m").asDouble(),
                        0.03));
            }
        }
        addTouchdown(all, ContactKind.PIT, truth.get("pit").get("landing_s").asDouble());
        return all;
    }

    private static void addTouchdown(List<Expected> all, ContactKind kind, double down) {
        all.add(new Expected(kind, ContactQuantity.SHOULDER_TILT_TOUCHDOWN, tiltDeg("shoulder", down), 4));
        all.add(new Expected(kind, ContactQuantity.HIP_TILT_TOUCHDOWN, tiltDeg("hip", down), 4));
        all.add(new Expected(kind, ContactQuantity.SIDE_LEAN_TOUCHDOWN, leanDeg(down), 2));
    }

    @Test
    void tellsTheTiltsInTheRowsOfBothClips() {
        for (String clip : List.of(SIDE_CLIP, FRONT_CLIP)) {
            for (Expected e : expected()) {
                Double value = row(clip, e.kind()).more().get(e.quantity());
                String what = clip + " " + e.kind().label() + " " + e.quantity().column();
                assertTrue(value != null, what + " is missing");
                assertEquals(e.value(), value, e.bar(), what);
            }
        }
    }

    /** Both clips of the footage begin at the same instant, so the clocks agree. */
    @Test
    void givesTheContactsOfTheFrontClipTheirTimes() {
        for (ContactKind kind : List.of(ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.PIT)) {
            assertEquals(
                    row(SIDE_CLIP, kind).touchdownS(), row(FRONT_CLIP, kind).touchdownS(), 0.01, kind.label());
            assertEquals(null, row(FRONT_CLIP, kind).touchdown().kneeDeg(), "the side only shows knees");
        }
    }

    @Test
    void saysWhatTheFrontClipIsJoinedTo() {
        ClipResult front = MEASURED.get(FRONT_CLIP);
        assertEquals(SIDE_CLIP + ".mp4", front.joinedTo().orElseThrow());
        assertTrue(
                front.clip().reason().startsWith("joined to " + SIDE_CLIP + ".mp4"),
                front.clip().reason());
        assertEquals(List.of(), front.phases());
    }
}
