package org.boardtopit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.report.overlay.FramePose;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.PersonInView;

/**
 * Where faces are hidden in each frame of a clip: those of everybody but the athlete, or of all.
 *
 * <p>Other people come from the sightings of {@link org.boardtopit.subject.PeopleSearch}, carried from one look to the next
 * ({@link PersonPath}); the athlete from the measured points. A sighting that may be the athlete and may be somebody behind
 * counts as somebody else, unless the heads are as good as in one place.
 */
public final class FaceCovers {
    /** In statures: a sighting with hips and head as near as this to the athlete's is the athlete. */
    private static final double SAME_HIPS = 0.4;

    private static final double SAME_HEAD = 0.25;
    /** As near as this to the athlete's head nobody else can be told from the athlete. */
    private static final double ONE_HEAD = 0.1;

    /** How long the athlete's head is taken to move on straight where it was not measured. */
    private static final double UNMEASURED_S = 0.25;

    private static final List<BodyPoint> HEAD = List.of(BodyPoint.NOSE, BodyPoint.LEFT_EAR, BodyPoint.RIGHT_EAR);

    private final ClipLandmarks clip;
    private final List<Optional<Head>> athlete;
    private final List<PersonPath> others;
    private final boolean hideAthlete;

    /** The athlete's head in one frame. */
    private record Head(Point2 place, Point2 hips, double staturePx) {
        Head towards(Head other, double share) {
            return new Head(
                    place.plus(other.place.minus(place).times(share)),
                    hips.plus(other.hips.minus(hips).times(share)),
                    Math.max(staturePx, other.staturePx));
        }
    }

    private FaceCovers(ClipLandmarks clip, List<Optional<Head>> athlete, List<PersonPath> others, boolean hideAthlete) {
        this.clip = clip;
        this.athlete = athlete;
        this.others = others;
        this.hideAthlete = hideAthlete;
    }

    /**
     * For one clip.
     *
     * @param scene with the athlete's points in each frame
     * @param people everybody who was seen, the athlete too, by rising frame
     * @param faces whose faces are hidden
     */
    public static FaceCovers of(ClipLandmarks clip, OverlayScene scene, List<PersonInView> people, Faces faces) {
        List<Optional<Head>> athlete = new ArrayList<>();
        for (int f = 0; f < clip.frameCount(); f++) {
            athlete.add(head(clip, scene, f));
        }
        List<PersonPath> others =
                faces == Faces.SHOW ? List.of() : PersonPath.of(withoutAthlete(people, athlete), clip);
        return new FaceCovers(clip, athlete, others, faces == Faces.BLUR_ALL);
    }

    private static Optional<Head> head(ClipLandmarks clip, OverlayScene scene, int frame) {
        Optional<FramePose> pose = scene.frame(frame);
        if (pose.isEmpty() || clip.subject().at(frame).isEmpty()) {
            return Optional.empty();
        }
        Point2 sum = new Point2(0, 0);
        int known = 0;
        for (BodyPoint point : HEAD) {
            Point2 place = pose.get().place(point);
            if (place.isKnown()) {
                sum = sum.plus(place);
                known++;
            }
        }
        Point2 hips = pose.get().middle(BodyPoint.LEFT_HIP);
        double stature = clip.subject().staturePx(frame);
        return known == 0 || !hips.isKnown()
                ? Optional.empty()
                : Optional.of(new Head(sum.times(1.0 / known), hips, stature));
    }

    private static List<PersonInView> withoutAthlete(List<PersonInView> people, List<Optional<Head>> athlete) {
        List<PersonInView> others = new ArrayList<>(people);
        for (int f = 0; f < athlete.size(); f++) {
            int frame = f;
            athlete.get(f).ifPresent(head -> removeAthlete(others, frame, head));
        }
        return others;
    }

    private static void removeAthlete(List<PersonInView> people, int frame, Head athlete) {
        double size = athlete.staturePx();
        Optional<PersonInView> nearest = people.stream()
                .filter(p -> p.frame() == frame
                        && p.hips().distanceTo(athlete.hips()) < SAME_HIPS * size
                        && p.head().distanceTo(athlete.place()) < SAME_HEAD * size)
                .min(Comparator.comparingDouble(p -> p.head().distanceTo(athlete.place())));
        nearest.ifPresent(people::remove);
        people.removeIf(p -> p.frame() == frame && p.head().distanceTo(athlete.place()) < ONE_HEAD * size);
    }

    /** What to hide in a frame; nothing in a frame that the clip's landmarks do not know. */
    public List<FaceCover> at(int frame) {
        if (frame >= clip.frameCount()) {
            return List.of();
        }
        List<FaceCover> covers = new ArrayList<>();
        others.forEach(path -> path.at(frame, clip).ifPresent(covers::add));
        if (hideAthlete) {
            athleteCover(frame).ifPresent(covers::add);
        }
        return covers;
    }

    private Optional<FaceCover> athleteCover(int frame) {
        Optional<Head> measured = athlete.get(frame);
        if (measured.isPresent()) {
            return Optional.of(cover(measured.get(), 1));
        }
        int before = measured(frame, -1);
        int after = measured(frame, 1);
        if (before >= 0 && after >= 0) {
            double share = (clip.timeS(frame) - clip.timeS(before)) / (clip.timeS(after) - clip.timeS(before));
            return Optional.of(cover(head(before).towards(head(after), share), 1.5));
        }
        return before >= 0 ? onFrom(before, -1, frame) : after >= 0 ? onFrom(after, 1, frame) : Optional.empty();
    }

    /** Straight on from the last two measured heads. */
    private Optional<FaceCover> onFrom(int end, int inwards, int frame) {
        int inner = measured(end, inwards);
        double beyondS = Math.abs(clip.timeS(frame) - clip.timeS(end));
        if (inner < 0 || beyondS > UNMEASURED_S) {
            return Optional.empty();
        }
        double share = beyondS / Math.abs(clip.timeS(end) - clip.timeS(inner));
        return Optional.of(cover(head(inner).towards(head(end), 1 + share), 2));
    }

    /** The next frame in a direction in which the head was measured; -1 when there is none. */
    private int measured(int from, int step) {
        for (int f = from + step; f >= 0 && f < athlete.size(); f += step) {
            if (athlete.get(f).isPresent()) {
                return f;
            }
        }
        return -1;
    }

    private Head head(int frame) {
        return athlete.get(frame).orElseThrow();
    }

    private static FaceCover cover(Head head, double growth) {
        return new FaceCover(head.place(), growth * PersonPath.RADIUS_STATURES * head.staturePx());
    }
}
