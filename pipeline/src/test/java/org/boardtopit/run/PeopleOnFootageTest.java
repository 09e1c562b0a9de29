package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.models.djl.TorchEngine;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.PeopleSearch;
import org.boardtopit.subject.PersonInView;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.ffmpeg.FfmpegClipOpener;
import org.junit.jupiter.api.Test;

/**
 * The athlete's head, as the search for people finds it among others, on a clip of the sample competition: a head that is
 * easier to miss than those of people who stand.
 *
 * <p>Outside check: the rendered footage's own ears and camera (SYN).
 */
class PeopleOnFootageTest {
    private static final String CLIP = "A1_static_720p60";
    private static final Path FILE = Path.of("..", "sample-config", "competition", CLIP + ".mp4");
    private static final double FPS = 60;
    private static final int FRAMES_A_LOOK = 24;

    /** Until then the athlete passes before a bystander, and later crouches in the pit: docs/safeguarding.md says what may be missed. */
    private static final int FIRST_FRAME = 120;

    private static final double LANDING_S = 3.4;

    private record Truth(double timeS, Point2 head) {}

    @Test
    void coversTheHeadOfWhoeverIsLargeEnough() throws Exception {
        List<Truth> truth = heads();
        List<PersonInView> people;
        try (PersonDetector detector = new NetworkStore(new TorchEngine()).openDetector(NetworkStore.DEFAULT_DETECTOR);
                FrameReader reader = new FfmpegClipOpener(1).open(FILE)) {
            people = new PeopleSearch(detector).search(reader);
        }
        int looks = 0;
        for (int frame = FIRST_FRAME; frame / FPS < LANDING_S; frame += FRAMES_A_LOOK) {
            Point2 head = at(truth, frame / FPS);
            int looked = frame;
            looks++;
            assertTrue(
                    people.stream()
                            .filter(p -> p.frame() == looked)
                            .anyMatch(p -> p.head().distanceTo(head) < 0.12 * p.staturePx()),
                    "frame " + frame);
        }
        assertEquals(4, looks, "1.4 seconds with two and a half looks a second, and the first");
    }

    private static Point2 at(List<Truth> truth, double timeS) {
        Truth nearest = truth.get(0);
        for (Truth one : truth) {
            nearest = Math.abs(one.timeS() - timeS) < Math.abs(nearest.timeS() - timeS) ? one : nearest;
        }
        return nearest.head();
    }

    /** Middle between the ears in pixels: X_cam = R X + t, then K. */
    private static List<Truth> heads() throws IOException {
        JsonNode camera;
        try (InputStream in = resource(".truth.json")) {
            camera = new ObjectMapper().readTree(in).get("camera").get(0);
        }
        List<Truth> heads = new ArrayList<>();
        try (BufferedReader lines = new BufferedReader(
                new InputStreamReader(new GZIPInputStream(resource(".places.csv.gz")), StandardCharsets.UTF_8))) {
            List<String> columns = List.of(lines.readLine().split(",", -1));
            for (String line = lines.readLine(); line != null; line = lines.readLine()) {
                String[] cells = line.split(",", -1);
                double[] middle = new double[3];
                for (int axis = 0; axis < 3; axis++) {
                    for (String side : List.of("left", "right")) {
                        String name = side + "_ear_" + "xyz".charAt(axis) + "_mm";
                        middle[axis] += Double.parseDouble(cells[columns.indexOf(name)]) / 2000;
                    }
                }
                heads.add(new Truth(Double.parseDouble(cells[0]), projected(camera, middle)));
            }
        }
        return heads;
    }

    private static InputStream resource(String ending) {
        return PeopleOnFootageTest.class.getResourceAsStream("/org/boardtopit/sample/" + CLIP + ending);
    }

    private static Point2 projected(JsonNode camera, double[] world) {
        double[] seen = times(camera.get("R"), world);
        for (int i = 0; i < 3; i++) {
            seen[i] += camera.get("t").get(i).asDouble();
        }
        double[] px = times(camera.get("K"), seen);
        return new Point2(px[0] / px[2], px[1] / px[2]);
    }

    private static double[] times(JsonNode matrix, double[] v) {
        double[] product = new double[3];
        for (int r = 0; r < 3; r++) {
            for (int c = 0; c < 3; c++) {
                product[r] += matrix.get(r).get(c).asDouble() * v[c];
            }
        }
        return product;
    }
}
