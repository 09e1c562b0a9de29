package org.boardtopit.accuracy;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.WideTable;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.BodyAngle;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.signal.Point2;

/** Reads what is known of a clip; {@code docs/inputs.md} describes the two files. */
final class AttemptTruthReader {
    static final String TRUTH_ENDING = ".truth.json";
    static final String FRAMES_ENDING = ".frames.csv";
    private static final int FORMAT = 2;

    private static final Map<String, BodyAngle> ANGLES = Map.of(
            "knee_deg", BodyAngle.KNEE,
            "hip_deg_sagittal", BodyAngle.HIP,
            "trunk_lean_deg", BodyAngle.TRUNK,
            "ankle_deg", BodyAngle.ANKLE,
            "thigh_deg", BodyAngle.THIGH,
            "shank_deg", BodyAngle.SHANK,
            "free_knee_deg", BodyAngle.FREE_KNEE,
            "free_thigh_deg", BodyAngle.FREE_THIGH);

    private static final List<BodyPoint> POINTS = List.of(
            BodyPoint.NOSE,
            BodyPoint.LEFT_EAR,
            BodyPoint.RIGHT_EAR,
            BodyPoint.LEFT_SHOULDER,
            BodyPoint.RIGHT_SHOULDER,
            BodyPoint.LEFT_ELBOW,
            BodyPoint.RIGHT_ELBOW,
            BodyPoint.LEFT_WRIST,
            BodyPoint.RIGHT_WRIST,
            BodyPoint.LEFT_HIP,
            BodyPoint.RIGHT_HIP,
            BodyPoint.LEFT_KNEE,
            BodyPoint.RIGHT_KNEE,
            BodyPoint.LEFT_ANKLE,
            BodyPoint.RIGHT_ANKLE,
            BodyPoint.LEFT_HEEL,
            BodyPoint.RIGHT_HEEL,
            BodyPoint.LEFT_TOE,
            BodyPoint.RIGHT_TOE);

    private AttemptTruthReader() {}

    private static Path beside(Clip clip, String ending) {
        String name = clip.fileName();
        int dot = name.lastIndexOf('.');
        return clip.file().resolveSibling((dot > 0 ? name.substring(0, dot) : name) + ending);
    }

    /** True when there is a truth file beside the clip. */
    static boolean isThere(Clip clip) {
        return Files.isRegularFile(beside(clip, TRUTH_ENDING));
    }

    /** Reads both files; an InputException says what is wrong and where. */
    static AttemptTruth read(Clip clip) throws InputException {
        Path file = beside(clip, TRUTH_ENDING);
        TruthNode top = TruthNode.read(file);
        if (top.number("format") != FORMAT) {
            throw top.problem("format", "must be " + FORMAT);
        }
        TruthNode phases = top.object("phases");
        TruthNode pit = top.object("pit");
        List<ContactTruth> contacts = contacts(top);
        List<CameraTruth> cameras = cameras(top);
        List<FrameTruth> frames = frames(beside(clip, FRAMES_ENDING));
        try {
            return new AttemptTruth(
                    (int) top.positive("width"),
                    (int) top.positive("height"),
                    top.object("athlete").positive("stature_m"),
                    contacts,
                    pit.number("landing_s"),
                    pit.number("mark_x_m"),
                    List.of(phases.positive("hop_m"), phases.positive("step_m"), phases.positive("jump_m")),
                    groundMarks(top),
                    cameras,
                    frames);
        } catch (IllegalArgumentException e) {
            throw new InputException(file, e.getMessage());
        }
    }

    private static List<ContactTruth> contacts(TruthNode top) throws InputException {
        List<ContactTruth> contacts = new ArrayList<>();
        for (TruthNode node : top.objects("contacts")) {
            double toe = node.number("toe_x_m");
            List<Double> velocity = node.numbers("takeoff_velocity_ms", 2);
            try {
                contacts.add(new ContactTruth(
                        kind(node),
                        foot(node),
                        node.number("touchdown_s"),
                        node.number("toeoff_s"),
                        toe,
                        node.number("toe_y_m"),
                        instant(node.object("at_touchdown"), toe),
                        instant(node.object("at_toeoff"), toe),
                        velocity.get(0),
                        velocity.get(1)));
            } catch (IllegalArgumentException e) {
                throw node.problem("toeoff_s", "cannot be: " + e.getMessage());
            }
        }
        return contacts;
    }

    private static ContactKind kind(TruthNode node) throws InputException {
        String text = node.text("kind");
        for (ContactKind kind :
                List.of(ContactKind.APPROACH, ContactKind.BOARD, ContactKind.HOP_LANDING, ContactKind.STEP_LANDING)) {
            if (kind.label().equals(text)) {
                return kind;
            }
        }
        throw node.problem(
                "kind", "must be approach, board, hop_landing or step_landing, was " + InputException.quoted(text));
    }

    private static Foot foot(TruthNode node) throws InputException {
        String text = node.text("foot");
        if (!text.equals("L") && !text.equals("R")) {
            throw node.problem("foot", "must be L or R, was " + InputException.quoted(text));
        }
        return text.equals("L") ? Foot.LEFT : Foot.RIGHT;
    }

    private static InstantTruth instant(TruthNode node, double toeAlongM) throws InputException {
        Map<BodyAngle, Double> readings = new EnumMap<>(BodyAngle.class);
        for (Map.Entry<String, BodyAngle> angle : ANGLES.entrySet()) {
            if (node.has(angle.getKey())) {
                readings.put(angle.getValue(), node.number(angle.getKey()));
            }
        }
        List<Double> com = node.numbers("com_m", 3);
        readings.put(BodyAngle.FOOT_AHEAD, toeAlongM - com.get(0));
        return new InstantTruth(readings, com.get(0), com.get(2));
    }

    private static List<Point2> groundMarks(TruthNode top) throws InputException {
        List<Point2> marks = new ArrayList<>();
        for (TruthNode node : top.objects("marks")) {
            if (!node.has("up_m") || node.number("up_m") == 0) {
                marks.add(new Point2(node.number("along_m"), node.number("across_m")));
            }
        }
        return marks;
    }

    private static List<CameraTruth> cameras(TruthNode top) throws InputException {
        List<CameraTruth> cameras = new ArrayList<>();
        for (TruthNode node : top.objects("camera")) {
            cameras.add(new CameraTruth(node.numbers("K", 9), node.numbers("R", 9), node.numbers("t", 3)));
        }
        return cameras;
    }

    private static List<FrameTruth> frames(Path file) throws InputException {
        List<String> needed =
                new ArrayList<>(List.of("frame", "t_s", "phase", "stance", "com_x_m", "com_y_m", "com_z_m"));
        for (BodyPoint point : POINTS) {
            needed.add(column(point, 'x'));
            needed.add(column(point, 'y'));
        }
        WideTable table = WideTable.read(file, needed);
        List<FrameTruth> frames = new ArrayList<>();
        for (int row = 0; row < table.rowCount(); row++) {
            if (table.neededNumber(row, "frame") != row) {
                throw table.problem(row, "frame", "frames must be counted from 0, one row each; expected " + row);
            }
            frames.add(frame(table, row));
        }
        if (frames.isEmpty()) {
            throw new InputException(file, "there are no frames in it");
        }
        return frames;
    }

    private static String column(BodyPoint point, char axis) {
        return point.name().toLowerCase(Locale.ROOT) + "_p" + axis;
    }

    private static FrameTruth frame(WideTable table, int row) throws InputException {
        Map<BodyPoint, Point2> points = new EnumMap<>(BodyPoint.class);
        for (BodyPoint point : POINTS) {
            points.put(point, new Point2(table.number(row, column(point, 'x')), table.number(row, column(point, 'y'))));
        }
        Map<BodyPoint, Point2> places = new EnumMap<>(BodyPoint.class);
        for (BodyPoint point : POINTS) {
            String name = point.name().toLowerCase(Locale.ROOT);
            double along = table.number(row, name + "_x_m");
            double up = table.number(row, name + "_z_m");
            if (Double.isFinite(along) && Double.isFinite(up)) {
                places.put(point, new Point2(along, up));
            }
        }
        return new FrameTruth(
                table.neededNumber(row, "t_s"),
                part(table, row),
                table.neededNumber(row, "com_x_m"),
                table.neededNumber(row, "com_y_m"),
                table.neededNumber(row, "com_z_m"),
                points,
                places);
    }

    private static Part part(WideTable table, int row) throws InputException {
        boolean down = !table.text(row, "stance").isEmpty();
        String phase = table.text(row, "phase");
        return switch (phase) {
            case "approach" -> Part.APPROACH;
            case "hop", "step", "jump" -> down ? Part.CONTACT : Part.FLIGHT;
            case "landing" -> Part.LANDING;
            default ->
                throw table.problem(
                        row,
                        "phase",
                        "must be approach, hop, step, jump or landing, was " + InputException.quoted(phase));
        };
    }
}
