package org.boardtopit.report.overlay.drawing;

import static org.bytedeco.opencv.global.opencv_core.CV_8UC3;

import java.util.List;
import java.util.Optional;
import org.boardtopit.report.overlay.Box;
import org.boardtopit.report.overlay.LabelPlacer;
import org.boardtopit.report.overlay.PlainText;
import org.boardtopit.report.stills.Framing;
import org.boardtopit.report.stills.Still;
import org.boardtopit.report.stills.StillAngle;
import org.boardtopit.report.stills.StillsScene;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.bytedeco.opencv.opencv_core.Mat;

/**
 * Takes a still out of its frame and paints it: the skeleton, the angles with their values beside the body, the ground, a bar of one
 * metre, and below the ground what it shows. Use from one thread.
 */
final class StillPainter implements AutoCloseable {
    /** Standing height for the widths of lines, in still metres. */
    private static final double STATURE_M = 1.75;
    /** The lines of the skeleton are thinner than in the overlay: the body is what the still is for. */
    private static final double SKELETON_SHARE = 0.62;

    private static final double SKELETON_STRENGTH = 0.8;

    private final StillsScene scene;
    private final Framing framing;
    private final double unit;
    private final boolean withNotes;
    private final Canvas canvas;
    private final SkeletonPainter skeletons;
    private final StillAnglePainter angles;
    private final LabelPlacer placer;

    /**
     * For stills of one framing.
     *
     * @param unit of letters and lines: 1 for a single still
     * @param withNotes false to leave out who and what it is, as in a strip that says so itself
     */
    StillPainter(StillsScene scene, Framing framing, double unit, boolean withNotes) {
        this.scene = scene;
        this.framing = framing;
        this.unit = unit;
        this.withNotes = withNotes;
        canvas = new Canvas(framing.widthPx(), framing.heightPx());
        skeletons = new SkeletonPainter(canvas);
        angles = new StillAnglePainter(canvas, unit);
        placer = new LabelPlacer(framing.widthPx(), framing.heightPx());
    }

    /** The painted still; the caller closes it. */
    Mat painted(Mat frame, Still still) {
        Mat picture = new Mat(framing.heightPx(), framing.widthPx(), CV_8UC3);
        Homography toMetres = framing.toPicture().inverse();
        Warp.fill(frame, still.metresToFrame().after(toMetres), picture, Ink.PANEL);
        canvas.drawOn(picture);
        placer.clear();
        Homography frameToPicture =
                framing.toPicture().after(still.metresToFrame().inverse());
        Placement placement = p -> p.isKnown() ? frameToPicture.apply(p) : p;
        ground();
        skeleton(still, placement);
        if (withNotes) {
            who();
        }
        blockText();
        body(still, placement).forEach(placer::block);
        List<StillAngle> drawn = still.angles().stream().map(this::inPicture).toList();
        angles.draw(drawn, withNotes ? Optional.of(bodyBox(still, placement)) : Optional.empty(), placer);
        if (withNotes) {
            notes(still);
        }
        return picture;
    }

    /** The same in px of the picture. */
    private StillAngle inPicture(StillAngle angle) {
        return new StillAngle(
                PlainText.of(angle.word()),
                PlainText.of(angle.value()),
                framing.place(angle.vertex()),
                framing.place(angle.firstArm()),
                framing.place(angle.secondArm()),
                framing.pxPerMetre() * angle.arcM(),
                angle.toVertical());
    }

    private void skeleton(Still still, Placement placement) {
        Box all = new Box(0, 0, framing.widthPx(), framing.heightPx());
        double staturePx = STATURE_M * framing.pxPerMetre();
        double seenPx = staturePx / scaleOf(still);
        canvas.faintly(
                all,
                SKELETON_STRENGTH,
                () -> skeletons.draw(still.pose(), placement, seenPx, SKELETON_SHARE * staturePx));
    }

    /** Px of the picture for one px of the frame, upright at the origin. */
    private double scaleOf(Still still) {
        Point2 foot = still.metresToFrame().apply(0, 0);
        Point2 metreUp = still.metresToFrame().apply(0, -1);
        return framing.pxPerMetre() / foot.distanceTo(metreUp);
    }

    /** A thin line where the ground is in every still, and a metre on it. */
    private void ground() {
        double y = framing.groundYPx();
        canvas.dashedLine(0, y, framing.widthPx(), y, 4 * unit, 6 * unit, 1, Ink.QUIET_TEXT);
        if (!scene.inMetres()) {
            return;
        }
        double right = framing.widthPx() - 14 * unit;
        double left = right - framing.pxPerMetre();
        double tick = 5 * unit;
        int width = Math.max(1, (int) Math.round(2 * unit));
        for (int pass = 0; pass < 2; pass++) {
            Ink ink = pass == 0 ? Ink.OUTLINE : Ink.TEXT;
            int thick = pass == 0 ? width + 2 : width;
            canvas.line(left, y, right, y, thick, ink);
            canvas.line(left, y - tick, left, y + tick, thick, ink);
            canvas.line(right, y - tick, right, y + tick, thick, ink);
        }
    }

    private void who() {
        double cap = 15 * unit;
        double baseline = 12 * unit + cap;
        for (String line : scene.who()) {
            String text = PlainText.of(line);
            canvas.text(text, 14 * unit, baseline, cap, Ink.TEXT);
            placer.block(Box.at(
                    0,
                    baseline - 1.3 * cap,
                    14 * unit + canvas.lettering().widthPx(text, cap),
                    canvas.lettering().heightPx(cap)));
            baseline += canvas.lettering().heightPx(cap);
        }
    }

    private void blockText() {
        placer.block(new Box(0, framing.groundYPx() - 8 * unit, framing.widthPx(), framing.heightPx()));
    }

    /** Below the ground: the title with the frame beside it, then what was measured. */
    private void notes(Still still) {
        double top = framing.groundYPx() + 12 * unit;
        canvas.shade(new Box(0, top, framing.widthPx(), framing.heightPx()), 0.72);
        double large = 20 * unit;
        double small = 15 * unit;
        double x = 14 * unit;
        double baseline = top + 8 * unit + large;
        line(capital(PlainText.of(still.title())), x, baseline, large, Ink.TEXT);
        String frame = still.notes().get(0);
        String measured =
                String.join("   ", still.notes().subList(1, still.notes().size()));
        baseline += 11 * unit + small;
        line(PlainText.of(frame), x, baseline, small, Ink.QUIET_TEXT);
        line(PlainText.of(measured), x, baseline + 9 * unit + small, small, Ink.TEXT);
        if (scene.inMetres()) {
            String metre = PlainText.of(scene.scaleNote());
            double width = canvas.lettering().widthPx(metre, small);
            double middle = framing.widthPx() - x - framing.pxPerMetre() / 2;
            canvas.text(metre, middle - width / 2, framing.groundYPx() - 9 * unit, small, Ink.TEXT);
        } else {
            // Where the bar would be, but clear of the ground.
            String none = PlainText.of(scene.scaleNote());
            double cap = 12 * unit;
            double left = framing.widthPx() - x - canvas.lettering().widthPx(none, cap);
            canvas.text(none, left, baseline, cap, Ink.QUIET_TEXT);
        }
    }

    /** Text that is made smaller where it would not fit. */
    private void line(String text, double x, double baseline, double cap, Ink ink) {
        double room = framing.widthPx() - 2 * x;
        double width = canvas.lettering().widthPx(text, cap);
        canvas.text(text, x, baseline, Math.min(1, room / Math.max(1, width)) * cap, ink);
    }

    static String capital(String text) {
        return text.isEmpty() ? text : Character.toUpperCase(text.charAt(0)) + text.substring(1);
    }

    /** The body as boxes that labels are kept off. */
    private List<Box> body(Still still, Placement placement) {
        double radius = 0.055 * STATURE_M * framing.pxPerMetre();
        return BodyShape.spots(still.pose(), placement, radius).stream()
                .map(p -> Box.centredOn(p.x(), p.y(), 2 * radius, 2 * radius))
                .toList();
    }

    private Box bodyBox(Still still, Placement placement) {
        List<Point2> spots = BodyShape.spots(still.pose(), placement, framing.pxPerMetre() * 0.1);
        return spots.isEmpty() ? Box.centredOn(framing.originXPx(), framing.groundYPx() / 2, 1, 1) : Box.around(spots);
    }

    @Override
    public void close() {
        canvas.close();
    }
}
