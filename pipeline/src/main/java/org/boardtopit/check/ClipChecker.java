package org.boardtopit.check;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.boardtopit.check.BlurMeter.Blur;
import org.boardtopit.check.CheckedClip.PictureMatch;
import org.boardtopit.clips.Athlete;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Camera;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.ground.Placement;
import org.boardtopit.signal.Homography;
import org.boardtopit.video.ClipFacts;
import org.boardtopit.video.ClipProbe;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;

/**
 * Looks at one clip the evening before, in about a second: what it is, how sharp, whether it belongs to its camera.
 *
 * <p>Of the clip every stamp is read, but only some frames are decoded: damage between these is found by the run only. May be
 * used from several threads.
 */
public final class ClipChecker {
    /** Where pairs of frames are looked at for blur; the athlete is in the picture at most of them. */
    private static final List<Double> SHARES = List.of(0.15, 0.3, 0.5, 0.7, 0.85);

    /** Of these, where a frame is looked for in the reference picture, which takes a third of a second. */
    private static final List<Double> MATCHED_SHARES = List.of(0.3, 0.7);

    /** As {@code measures.QualityCauses} judges: fewer frames a second make a clip less than good. */
    private static final double SLOW_FPS = 45;

    /** As {@code measures.QualityCauses} judges: a smaller athlete makes a clip less than good. */
    private static final double SMALL_ATHLETE_PX = 80;

    /**
     * Points of a frame that agree with the picture of its own camera. Seen with six cameras in one stadium: 165 and more with
     * the own picture, at most 88 with that of another, whose scene looks alike. {@code measures.QualityCauses} judges by the same.
     */
    private static final int STRONG_POINTS = 150;

    /** Another camera's picture must agree in so many times the points. */
    private static final int CLEARLY_MORE = 2;

    private static final double USUAL_STATURE_M = 1.75;

    /** Feet move at up to twice the speed of the body, so their smear is twice this (a first guess, not tuned). */
    private static final double MUCH_SMEAR_PX = 5;

    /** Two or three pixels are sharp (measured on drawn and rendered clips); beyond this feet are hard to see. */
    private static final double SOFT_EDGE_PX = 7;

    /** A support lasts 0.1 s and more: within a longer hole one may be missed. */
    private static final double LONG_HOLE_S = 0.1;

    private static final double SHORTEST_S = 1;
    private static final double LONGEST_S = 60;

    /** A stated capture rate this much above the file's means slow motion, as the run has it. */
    private static final double LEAST_SLOW_DOWN = 1.2;

    private final MeetSheet meet;
    private final AttemptViews views;
    private final ClipProbe probe;
    private final CameraPictures pictures;

    public ClipChecker(MeetSheet meet, AttemptViews views, ClipProbe probe, CameraPictures pictures) {
        this.meet = meet;
        this.views = views;
        this.probe = probe;
        this.pictures = pictures;
    }

    /** Looks at a clip. One that the athlete does not want measured is not opened. */
    public CheckedClip check(Clip clip) {
        Look look = new Look(clip);
        if (!clip.isAgreed()) {
            if (clip.entry().map(AttemptEntry::consent).orElse(Consent.NOT_SAID) != Consent.NO) {
                look.problem(clip.withheld().orElseThrow(), "");
            }
            return look.unopened();
        }
        if (clip.view() != Camera.View.SIDE && views.sideOf(clip).isEmpty()) {
            look.joined = false;
            look.problem(
                    "it is not from the side, and no clip from the side has its bib and attempt: it is not measured",
                    "give both clips the same bib and attempt in the attempts sheet");
        }
        try {
            return look.at(probe.look(clip.file(), SHARES, look::pair));
        } catch (VideoException e) {
            String name = clip.fileName() + ": ";
            String reason = e.getMessage().startsWith(name) ? e.getMessage().substring(name.length()) : e.getMessage();
            look.problem(reason, "");
            return look.unopened();
        }
    }

    /** What is gathered of one clip. */
    private final class Look {
        private final Clip clip;
        private final List<Finding> findings = new ArrayList<>();
        private final BlurMeter blur = new BlurMeter();
        private final Optional<Camera> camera;
        private int placed;
        private int looked;
        private double athletePx = Double.NaN;
        private Optional<Camera> otherCamera = Optional.empty();
        private boolean joined = true;

        Look(Clip clip) {
            this.clip = clip;
            this.camera = clip.camera().filter(c -> c.reference().isPresent());
        }

        void problem(String what, String right) {
            findings.add(Finding.problem(clip.fileName(), what, right));
        }

        void remark(String what, String right) {
            findings.add(Finding.remark(clip.fileName(), what, right));
        }

        CheckedClip unopened() {
            return new CheckedClip(
                    clip,
                    Optional.empty(),
                    false,
                    1,
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    Double.NaN,
                    PictureMatch.NO_PICTURE,
                    findings);
        }

        void pair(double share, VideoFrame first, VideoFrame second) {
            blur.add(first, second);
            if (camera.isPresent() && MATCHED_SHARES.contains(share)) {
                place(first, camera.get());
            }
        }

        private void place(VideoFrame frame, Camera own) {
            looked++;
            Optional<Placement> found = pictures.place(own, frame);
            int points = found.map(Placement::points).orElse(0);
            if (points < STRONG_POINTS && otherCamera.isEmpty()) {
                otherCamera = meet.cameras().stream()
                        .filter(c -> !c.equals(own) && c.reference().isPresent())
                        .filter(c -> points(c, frame) > Math.max(STRONG_POINTS, CLEARLY_MORE * points))
                        .findFirst();
            }
            if (found.isEmpty() || otherCamera.isPresent()) {
                return;
            }
            placed++;
            if (Double.isNaN(athletePx) && clip.view() == Camera.View.SIDE) {
                athletePx = heightAtBoardPx(own, found.get().toPicture());
            }
        }

        private int points(Camera camera, VideoFrame frame) {
            return pictures.place(camera, frame).map(Placement::points).orElse(0);
        }

        private double heightAtBoardPx(Camera own, Homography toPicture) {
            double stature =
                    clip.athlete().map(Athlete::statureM).filter(s -> s > 0).orElse(USUAL_STATURE_M);
            Homography toFrame = toPicture.inverse();
            return pictures.seer(own)
                    .map(seer ->
                            toFrame.apply(seer.project(0, 0, 0)).distanceTo(toFrame.apply(seer.project(0, 0, stature))))
                    .orElse(Double.NaN);
        }

        CheckedClip at(ClipFacts facts) {
            double slowDown = slowDown(facts);
            Blur seen = blur.blur();
            double fps = facts.fps() * slowDown;
            double shutterS = seen.openShare() / fps;
            PictureMatch match = match();
            sayOfPicture(match);
            sayOfTimes(facts, fps, slowDown);
            sayOfSharpness(seen, shutterS);
            if (athletePx < SMALL_ATHLETE_PX) {
                remark(
                        text("the athlete is about %.0f pixels tall at the board", athletePx),
                        text("zoom in or stand nearer, %.0f or more are good", SMALL_ATHLETE_PX));
            }
            findings.sort(Comparator.comparing(Finding::weight));
            return new CheckedClip(
                    clip,
                    Optional.of(facts),
                    joined,
                    slowDown,
                    seen.edgePx(),
                    shutterS,
                    seen.smearPx(),
                    athletePx,
                    match,
                    findings);
        }

        private double slowDown(ClipFacts facts) {
            double ratio = clip.entry().map(AttemptEntry::captureFps).orElse(Double.NaN)
                    / facts.info().nominalFps();
            if (ratio < 1 / LEAST_SLOW_DOWN) {
                remark(
                        "capture_fps is below the "
                                + CheckedClip.spokenRate(facts.info().nominalFps())
                                + " frames a second of the file and is not used",
                        "leave capture_fps empty unless the file is slow motion");
            }
            return ratio >= LEAST_SLOW_DOWN ? ratio : 1;
        }

        private PictureMatch match() {
            if (looked == 0) {
                return PictureMatch.NO_PICTURE;
            }
            return placed == 0 ? PictureMatch.NO_MATCH : placed < looked ? PictureMatch.PARTLY : PictureMatch.MATCHES;
        }

        private void sayOfPicture(PictureMatch match) {
            String own = camera.map(Camera::name).orElse("");
            if (match == PictureMatch.NO_MATCH) {
                problem(
                        "it does not show what the reference picture of camera '" + own
                                + "' shows, so its marks cannot be used",
                        otherCamera
                                .map(c -> "it fits camera '" + c.name() + "': correct the column camera")
                                .orElse(
                                        "name its camera in the attempts sheet, or take a picture from where it was filmed"));
            } else if (match == PictureMatch.PARTLY) {
                remark(
                        "part of it is not found in the reference picture of camera '" + own + "'",
                        "a wider picture from the tripod helps when the camera is panned");
            }
        }

        private void sayOfTimes(ClipFacts facts, double fps, double slowDown) {
            double lengthS = facts.frames() / fps;
            if (facts.brokenOff()) {
                remark("the file breaks off; what is there is measured", "copy it again from the camera");
            }
            if (facts.frames() < 2 || lengthS < SHORTEST_S) {
                remark(
                        text("only %d frames long", facts.frames()),
                        "a clip begins with the last strides and ends in the pit");
            } else if (lengthS > LONGEST_S) {
                remark(text("%.0f min %02.0f s long", Math.floor(lengthS / 60), lengthS % 60), "cut out the attempt");
            }
            if (fps < SLOW_FPS) {
                remark(
                        CheckedClip.spokenRate(fps) + " frames a second",
                        "60 or more time the contacts better"
                                + (slowDown == 1
                                        ? "; of slow motion the sheet's capture_fps says how fast it was"
                                        : ""));
            }
            double holeS = facts.times().longestStepUs().orElse(0) * 1e-6 / slowDown;
            if (holeS > LONG_HOLE_S && holeS > 2.5 / fps) {
                remark(text("%.2f s without a picture within it", holeS), "a contact may be missed there");
            }
        }

        private void sayOfSharpness(Blur seen, double shutterS) {
            if (seen.smearPx() > MUCH_SMEAR_PX) {
                remark(
                        text(
                                "fast movement is smeared over about %.0f pixels (shutter about 1/%.0f s)",
                                seen.smearPx(), 1 / shutterS),
                        "set the shutter to 1/500 s or shorter");
            }
            if (seen.edgePx() > SOFT_EDGE_PX) {
                remark(
                        text("it is not sharp (edges are %.0f pixels wide)", seen.edgePx()),
                        "clean the lens and set the focus by hand");
            }
        }
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
