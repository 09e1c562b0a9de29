package org.boardtopit.synthetic;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import javax.imageio.ImageIO;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/**
 * Writes what is known of a drawn clip as the files that {@code boardtopit accuracy} reads, with a meet sheet and a camera's
 * marks. The clip itself is a file without pictures: its landmarks are drawn.
 */
public final class TruthFiles {
    private final DrawnClip clip;
    private final Path folder;

    public TruthFiles(DrawnClip clip, Path folder) {
        this.clip = clip;
        this.folder = folder;
    }

    /** Writes all files, for a clip called {@code name}.mp4. */
    public void write(String name) throws IOException {
        Files.createDirectories(folder);
        text(name + ".mp4", "no pictures");
        text(
                name + ".truth.json",
                new ObjectMapper().writerWithDefaultPrettyPrinter().writeValueAsString(truth()));
        text(name + ".frames.csv", frames());
        meet(name);
    }

    private void text(String file, String content) throws IOException {
        Files.writeString(folder.resolve(file), content, StandardCharsets.UTF_8);
    }

    private void meet(String name) throws IOException {
        DrawnCamera camera = clip.referenceCamera();
        BufferedImage picture = new BufferedImage(camera.widthPx(), camera.heightPx(), BufferedImage.TYPE_3BYTE_BGR);
        ImageIO.write(picture, "png", folder.resolve("reference.png").toFile());
        StringBuilder marks = new StringBuilder("name,along_m,across_m,x_px,y_px\n");
        for (double[] m : DrawnClip.marks()) {
            Point2 px = camera.project(m[0], m[1], 0);
            marks.append(String.format(Locale.ROOT, "%s %s,%s,%s,%.4f,%.4f%n", m[0], m[1], m[0], m[1], px.x(), px.y()));
        }
        text("marks.csv", marks.toString());
        text("attempts.csv", "clip,camera\n" + name + ".mp4,stand\n");
        text("meet.yaml", """
                competition: Drawn Meeting
                attempts: attempts.csv
                cameras:
                  - name: stand
                    reference: reference.png
                    marks: marks.csv
                """);
    }

    private Map<String, Object> truth() {
        Map<String, Object> truth = new LinkedHashMap<>();
        truth.put("format", 2);
        truth.put("width", clip.referenceCamera().widthPx());
        truth.put("height", clip.referenceCamera().heightPx());
        truth.put("athlete", Map.of("stature_m", clip.jumper().statureM()));
        List<Object> contacts = new ArrayList<>();
        for (TrueContact c : clip.contacts()) {
            if (c.kind() != ContactKind.PIT) {
                contacts.add(contact(c));
            }
        }
        truth.put("contacts", contacts);
        TrueContact pit = of(ContactKind.PIT);
        truth.put("pit", Map.of("landing_s", pit.touchdownS(), "mark_x_m", pit.toeAlongM()));
        truth.put("phases", phases());
        truth.put("marks", List.of(Map.of("along_m", 0, "across_m", -0.61), Map.of("along_m", 8, "across_m", -0.72)));
        truth.put("camera", cameras());
        return truth;
    }

    private TrueContact of(ContactKind kind) {
        return clip.contacts().stream()
                .filter(c -> c.kind() == kind)
                .findFirst()
                .orElseThrow();
    }

    private Map<String, Object> phases() {
        double board = of(ContactKind.BOARD).toeAlongM();
        double hop = of(ContactKind.HOP_LANDING).toeAlongM();
        double step = of(ContactKind.STEP_LANDING).toeAlongM();
        double mark = of(ContactKind.PIT).toeAlongM();
        return Map.of("hop_m", hop - board, "step_m", step - hop, "jump_m", mark - step);
    }

    private Map<String, Object> contact(TrueContact c) {
        Map<String, Object> contact = new LinkedHashMap<>();
        contact.put("kind", c.kind().label());
        contact.put("foot", c.foot().label());
        contact.put("touchdown_s", c.touchdownS());
        contact.put("toeoff_s", c.toeOffS());
        contact.put("toe_x_m", c.toeAlongM());
        contact.put("toe_y_m", 0);
        contact.put("at_touchdown", Map.of("com_m", hips(c.touchdownS())));
        contact.put("at_toeoff", Map.of("com_m", hips(c.toeOffS())));
        double e = 1e-4;
        double[] off = clip.jumper().hips(c.toeOffS());
        double[] later = clip.jumper().hips(c.toeOffS() + e);
        contact.put("takeoff_velocity_ms", List.of((later[0] - off[0]) / e, (later[1] - off[1]) / e));
        return contact;
    }

    /** The hips stand for the centre of mass. */
    private List<Double> hips(double timeS) {
        double[] hips = clip.jumper().hips(timeS);
        return List.of(hips[0], 0.0, hips[1]);
    }

    private List<Object> cameras() {
        List<Object> cameras = new ArrayList<>();
        for (int f = 0; f < clip.landmarks().frameCount(); f++) {
            DrawnCamera c = clip.camera(f);
            double[][] r = c.axes();
            List<Double> t = new ArrayList<>();
            for (double[] row : r) {
                t.add(-(row[0] * c.alongM() + row[1] * c.acrossM() + row[2] * c.heightM()));
            }
            double[][] k = {{c.focalPx(), 0, c.widthPx() / 2.0}, {0, c.focalPx(), c.heightPx() / 2.0}, {0, 0, 1}};
            cameras.add(Map.of("K", k, "R", r, "t", t));
        }
        return cameras;
    }

    private String frames() {
        StringBuilder csv = new StringBuilder("frame,t_s,phase,stance,com_x_m,com_y_m,com_z_m");
        for (BodyPoint point : BodyPoint.values()) {
            String name = point.name().toLowerCase(Locale.ROOT);
            csv.append(',').append(name).append("_px,").append(name).append("_py");
            csv.append(',').append(name).append("_x_m,").append(name).append("_z_m");
        }
        csv.append('\n');
        for (int f = 0; f < clip.landmarks().frameCount(); f++) {
            frame(csv, f);
        }
        return csv.toString();
    }

    private void frame(StringBuilder csv, int frame) {
        double t = clip.timeS(frame);
        String phase = "approach";
        String stance = "";
        for (TrueContact c : clip.contacts()) {
            if (t >= c.touchdownS()) {
                phase = switch (c.kind()) {
                    case BOARD -> "hop";
                    case HOP_LANDING -> "step";
                    case STEP_LANDING -> "jump";
                    case PIT -> "landing";
                    default -> "approach";
                };
                stance = t < c.toeOffS() ? c.foot().label() : "";
            }
        }
        List<Double> hips = hips(t);
        csv.append(frame)
                .append(String.format(Locale.ROOT, ",%.6f,", t))
                .append(phase)
                .append(',')
                .append(stance);
        hips.forEach(v -> csv.append(String.format(Locale.ROOT, ",%.5f", v)));
        for (double[] p : clip.jumper().points(t)) {
            Point2 px = clip.camera(frame).project(p[0], p[1], p[2]);
            csv.append(String.format(Locale.ROOT, ",%.4f,%.4f,%.5f,%.5f", px.x(), px.y(), p[0], p[2]));
        }
        csv.append('\n');
    }
}
