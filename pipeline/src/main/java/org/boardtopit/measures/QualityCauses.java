package org.boardtopit.measures;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Judges a clip by what was measured of it: every fact has a bound below which a clip is no longer good, and one below which
 * it is poor. The quality of a clip is that of its worst cause.
 *
 * <p>Where the bounds come from is said beside each; the table in {@code docs/measures.md} holds the same. The sentences are
 * for the volunteer who filmed: what was wrong, and what to do the next time.
 */
public final class QualityCauses {
    /** Confidence of the order of contacts from which an attempt may be good (a first guess, not tuned). */
    private static final double SURE = 0.9;

    private static final double DOUBTFUL = 0.5;
    /** Closure on the official distance and fall in flight: common practice and error budget, see docs/measures.md. */
    private static final double LOW_RATIO = 0.97;

    private static final double HIGH_RATIO = 1.03;
    private static final double LOW_GRAVITY = 0.90;
    private static final double HIGH_GRAVITY = 1.10;
    /** Beyond these the scale is plainly wrong: three times the allowance (a first guess). */
    private static final double WRONG_RATIO = 0.09;

    private static final double WRONG_GRAVITY = 0.30;

    /**
     * Measured on our clips made smaller: at 97 px and more touchdowns err by 3 to 7 ms and knees by 3 to 5 degrees, at 48 px
     * by 12 ms and 8 degrees, at 32 px by 19 ms and 10 degrees.
     */
    private static final double SMALL_PX = 80;

    private static final double TINY_PX = 40;
    /**
     * Measured: 30 frames a second instead of 60 raise the error of touchdowns from 5 to 9 ms and that of knees from 5 to 7
     * degrees; 20 raise that of touchdowns to 20 ms.
     */
    private static final double SLOW_HZ = 45;

    private static final double VERY_SLOW_HZ = 22;
    /** A first guess, not tuned. */
    private static final double LEAST_REGISTERED = 0.9;

    private static final double LOST = 0.5;
    /**
     * First guesses, not tuned, as the three of them: a residual or a drift of this size moves places by some centimetres.
     * None makes a clip poor, as what they do to its numbers has not been measured.
     */
    private static final double MOST_RESIDUAL_PX = 1.5;

    private static final double MOST_DRIFT_PX = 3;
    private static final double FEWEST_POINTS = 40;
    /**
     * Measured with six cameras in one stadium: of the picture of its own camera a clip shows OWN_POINTS and more, of that of
     * another camera, where the two match at all, up to OTHER_POINTS.
     */
    private static final double OWN_POINTS = 150;

    private static final double OTHER_POINTS = 90;
    /**
     * Measured: 0.010 to 0.019 on sharp clips; 0.021 to 0.028 with blur, noise or half the size (knees 6 to 21 degrees off);
     * 0.031 to 0.037 where the order of contacts was wrong in four of five clips.
     */
    private static final double VAGUE_STATURE = 0.020;

    private static final double VERY_VAGUE_STATURE = 0.030;
    /** Measured: 0.46 to 0.87 on sharp clips, 0.94 to 1.19 with an exposure as long as a frame or longer. */
    private static final double BLURRED = 0.92;
    /** Measured: up to 0.016 on sharp clips, 0.03 to 0.10 on degraded ones, 0.13 where another person was followed. */
    private static final double MANY_DOUBTFUL = 0.04;

    private static final double MOST_DOUBTFUL = 0.12;
    /** Measured: up to 0.08 on sharp clips, 0.12 to 0.16 on degraded ones, 0.35 and 0.45 where the order was wrong. */
    private static final double OFTEN_EXCHANGED = 0.12;

    private static final double MOSTLY_EXCHANGED = 0.30;

    private final ClipFacts facts;
    private final List<QualityCause> causes = new ArrayList<>();

    private QualityCauses(ClipFacts facts) {
        this.facts = facts;
    }

    /** Everything that makes the clip less than good, the contacts first; empty for a good clip. */
    public static List<QualityCause> of(ClipFacts facts) {
        QualityCauses all = new QualityCauses(facts);
        all.contacts();
        all.scale();
        all.camera();
        all.picture();
        all.background();
        all.points();
        return List.copyOf(all.causes);
    }

    /** The quality of a clip with these causes: that of the worst, good without any. */
    public static Quality worst(List<QualityCause> causes) {
        return causes.stream()
                .map(QualityCause::quality)
                .max(Quality::compareTo)
                .orElse(Quality.GOOD);
    }

    private void add(Quality quality, String sentence, Object... values) {
        causes.add(new QualityCause(quality, String.format(Locale.ROOT, sentence, values)));
    }

    private void contacts() {
        double confidence = facts.sequenceConfidence();
        if (!facts.complete()) {
            add(
                    Quality.POOR,
                    "board, both landings and pit were not all found: film from some strides before the board until the"
                            + " athlete sits in the pit, with both feet in view");
        } else if (!(confidence >= SURE)) {
            add(
                    confidence >= DOUBTFUL ? Quality.USABLE : Quality.POOR,
                    "the order of contacts is not sure (%.2f): check it in the overlay, and let nobody stand before"
                            + " or behind the athlete's feet",
                    confidence);
        }
        if (facts.complete() && !facts.inOrder()) {
            add(
                    Quality.POOR,
                    "the places of the contacts do not follow one another along the runway: check them in the overlay,"
                            + " and film from the side, square to the runway");
        }
        if (facts.looselyTimed() > 0) {
            add(
                    Quality.USABLE,
                    "%s timed to no better than 25 ms: film with more frames a second and the feet in full view",
                    facts.looselyTimed() == 1 ? "one contact" : facts.looselyTimed() + " contacts");
        }
    }

    private void scale() {
        if (facts.view() == ClipFacts.View.RUN) {
            add(
                    Quality.USABLE,
                    "no marks: where the camera stands was found from the run itself: note 4 to 8 marks of the runway on a"
                            + " picture of the camera position to be sure of distances");
        } else if (facts.view() == ClipFacts.View.FLAT) {
            add(
                    Quality.USABLE,
                    "no marks, and the run did not tell where the camera stands: distances and shares are as seen in the"
                            + " picture, perspective is not taken out: note 4 to 8 marks of the runway on a picture of the"
                            + " camera position");
        }
        double closure = facts.closureRatio();
        if (closure < LOW_RATIO || closure > HIGH_RATIO) {
            add(
                    Math.abs(closure - 1) > WRONG_RATIO ? Quality.POOR : Quality.USABLE,
                    "official over measured distance is %.3f, expected 0.97 to 1.03: check the distance on the sheet, the"
                            + " marks of the camera, and that the landing was seen",
                    closure);
        }
        double gravity = facts.gravityRatio();
        if (gravity < LOW_GRAVITY || gravity > HIGH_GRAVITY) {
            add(
                    Math.abs(gravity - 1) > WRONG_GRAVITY ? Quality.POOR : Quality.USABLE,
                    "the fall in flight is %.2f of gravity, expected 0.90 to 1.10, the scale or the frame rate may be wrong:"
                            + " check marks, distance, standing height and, for slow motion, the capture rate on the sheet",
                    gravity);
        }
    }

    /** The marks of another camera give other metres, and they look just as official. */
    private void camera() {
        if (facts.referencePoints() < OWN_POINTS) {
            add(
                    facts.referencePoints() < OTHER_POINTS ? Quality.POOR : Quality.USABLE,
                    "only %.0f points of the camera's reference picture were found in the clip, it may be another camera's:"
                            + " compare the column camera with boardtopit check, or take a new picture from where the camera"
                            + " stood",
                    facts.referencePoints());
        }
    }

    private void picture() {
        if (facts.athletePx() < SMALL_PX) {
            add(
                    facts.athletePx() < TINY_PX ? Quality.POOR : Quality.USABLE,
                    "the athlete is only %.0f pixels tall: film in a higher resolution, stand nearer, or follow the athlete"
                            + " with a longer lens",
                    facts.athletePx());
        }
        if (facts.framesPerS() < SLOW_HZ) {
            add(
                    facts.framesPerS() < VERY_SLOW_HZ ? Quality.POOR : Quality.USABLE,
                    "%.0f frames a second are few: angles at touchdown and support times suffer, so film with 60 or more",
                    facts.framesPerS());
        }
    }

    /** A background that is lost in places is the whole story; how well the rest fits is told only without that. */
    private void background() {
        if (facts.registeredShare() < LEAST_REGISTERED) {
            add(
                    facts.registeredShare() < LOST ? Quality.POOR : Quality.USABLE,
                    "the background was recognised in %.0f %% of the frames only: use a tripod, turn the camera evenly, and"
                            + " keep more than grass and sky in view",
                    100 * facts.registeredShare());
            return;
        }
        if (facts.driftPx() > MOST_DRIFT_PX) {
            add(
                    Quality.USABLE,
                    "places along the pan disagree by %.1f px with the reference picture: take the picture from the tripod"
                            + " that films, do not move it afterwards, and pan with a lens that does not bend lines",
                    facts.driftPx());
        }
        if (facts.registrationResidualPx() > MOST_RESIDUAL_PX) {
            add(
                    Quality.USABLE,
                    "the background fits from frame to frame to %.1f px only: film from a tripod with a short shutter",
                    facts.registrationResidualPx());
        }
        if (facts.backgroundPoints() < FEWEST_POINTS) {
            add(
                    Quality.USABLE,
                    "only %.0f points of the background are recognised: let more of the fence or stand be in view",
                    facts.backgroundPoints());
        }
    }

    private void points() {
        double vague = facts.landmarkSdStature();
        if (vague > VAGUE_STATURE) {
            add(
                    vague > VERY_VAGUE_STATURE ? Quality.POOR : Quality.USABLE,
                    "the legs are seen vaguely (%.1f %% of the standing height): use more light, a clean and focused lens, a"
                            + " larger picture of the athlete, less compression",
                    100 * vague);
        }
        if (facts.fastFootRatio() > BLURRED) {
            add(
                    Quality.USABLE,
                    "the swinging feet are blurred or drowned in noise (%.2f times as vague as slow ones): set the shutter"
                            + " to 1/1000 s or shorter, in good light",
                    facts.fastFootRatio());
        }
        if (facts.doubtfulShare() > MANY_DOUBTFUL) {
            add(
                    facts.doubtfulShare() > MOST_DOUBTFUL ? Quality.POOR : Quality.USABLE,
                    "%.0f %% of the points of the legs had to be corrected: let nobody stand before or behind the athlete,"
                            + " and choose a quiet background",
                    100 * facts.doubtfulShare());
        }
        if (facts.legsExchangedShare() > OFTEN_EXCHANGED) {
            add(
                    facts.legsExchangedShare() > MOSTLY_EXCHANGED ? Quality.POOR : Quality.USABLE,
                    "left and right leg were taken for each other in %.0f %% of the frames: check the feet in the overlay,"
                            + " and film from the side, in light that shows both legs",
                    100 * facts.legsExchangedShare());
        }
    }
}
