package org.boardtopit.report;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.ground.BackgroundMotion;
import org.boardtopit.pose.ClipLandmarks;
import org.boardtopit.report.overlay.FaceCover;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.PersonInView;

/**
 * One person's head through a clip, from sightings some tenths of a second apart: straight on in the fixed picture from one to
 * the next, and for a while before the first and after the last. It need not be right about who is who: where two people are
 * mixed up, the covers still lie where people were seen.
 */
final class PersonPath {
    /** Of the cover around a head: half of a head is 0.065 statures, the rest is for hair and for what the detector is off. */
    static final double RADIUS_STATURES = 0.12;

    /** Longest time between two sightings of one person: two looks in between may have missed. */
    private static final double LONGEST_GAP_S = 1.1;

    /** How long a person is taken to be there before the first and after the last sighting: one missed look more. */
    private static final double HOLD_S = 0.7;

    /** Somebody who stands is seen within this many statures of the earlier place; who jogs gets on at 2 of them a second. */
    private static final double STANDING_STATURES = 0.3;

    private static final double FASTEST_STATURES_PER_S = 2;
    private static final double MOST_SIZE_RATIO = 1.7;

    /** Nobody walks evenly: the cover grows by this share of the way from one sighting to the next. */
    private static final double UNEVEN_SHARE = 0.1;

    /** Where the way is only supposed. */
    private static final double SUPPOSED_SHARE = 0.4;

    /** A cover much larger than a head would hide what the overlay is for. */
    private static final double MOST_GROWTH = 1;

    /** Where the background was not recognised, places are those of the last frame in which it was. */
    private static final double UNREGISTERED_GROWTH = 2;

    /** A sighting in the fixed picture; the radius of the head's cover is told by a second point on its edge. */
    private record Place(double timeS, Point2 head, Point2 edge, double staturePx) {
        static Optional<Place> of(PersonInView person, ClipLandmarks clip) {
            BackgroundMotion background = clip.background();
            Point2 side = new Point2(RADIUS_STATURES * person.staturePx(), 0);
            Point2 head = background.toFixed(person.frame(), person.head());
            Point2 edge = background.toFixed(person.frame(), person.head().plus(side));
            return head.isKnown() && edge.isKnown() && head.distanceTo(edge) > 0
                    ? Optional.of(
                            new Place(clip.timeS(person.frame()), head, edge, head.distanceTo(edge) / RADIUS_STATURES))
                    : Optional.empty();
        }

        Place moved(Point2 by, double atS) {
            return new Place(atS, head.plus(by), edge.plus(by), staturePx);
        }
    }

    private final List<Place> places = new ArrayList<>();

    private PersonPath(Place first) {
        places.add(first);
    }

    /** Joins sightings to paths, nearest first. */
    static List<PersonPath> of(List<PersonInView> people, ClipLandmarks clip) {
        List<PersonPath> paths = new ArrayList<>();
        int i = 0;
        while (i < people.size()) {
            List<Place> look = new ArrayList<>();
            int frame = people.get(i).frame();
            for (; i < people.size() && people.get(i).frame() == frame; i++) {
                Place.of(people.get(i), clip).ifPresent(look::add);
            }
            addLook(look, paths);
        }
        return paths;
    }

    private static void addLook(List<Place> look, List<PersonPath> paths) {
        record Pair(PersonPath path, Place place, double statures) {}
        List<Pair> pairs = new ArrayList<>();
        for (PersonPath path : paths) {
            for (Place place : look) {
                double apart = path.staturesTo(place);
                if (Double.isFinite(apart)) {
                    pairs.add(new Pair(path, place, apart));
                }
            }
        }
        pairs.sort(Comparator.comparingDouble(Pair::statures));
        List<Place> left = new ArrayList<>(look);
        List<PersonPath> taken = new ArrayList<>();
        for (Pair pair : pairs) {
            if (left.contains(pair.place()) && !taken.contains(pair.path())) {
                left.remove(pair.place());
                taken.add(pair.path());
                pair.path().places.add(pair.place());
            }
        }
        left.forEach(place -> paths.add(new PersonPath(place)));
    }

    /** From the end of this path to a place; NaN when the same person cannot have got there. */
    private double staturesTo(Place place) {
        Place last = places.get(places.size() - 1);
        double passedS = place.timeS() - last.timeS();
        double size = Math.max(last.staturePx(), place.staturePx());
        double apart = last.head().distanceTo(place.head()) / size;
        boolean possible = passedS <= LONGEST_GAP_S
                && size < MOST_SIZE_RATIO * Math.min(last.staturePx(), place.staturePx())
                && apart < STANDING_STATURES + FASTEST_STATURES_PER_S * passedS;
        return possible ? apart : Double.NaN;
    }

    /** The cover of this head in a frame; empty when the person is not there, or out of sight behind the camera. */
    Optional<FaceCover> at(int frame, ClipLandmarks clip) {
        double t = clip.timeS(frame);
        int next = 0;
        while (next < places.size() && places.get(next).timeS() < t) {
            next++;
        }
        if (next == 0) {
            return beyond(t, places.get(0), places.get(Math.min(1, places.size() - 1)), frame, clip);
        }
        if (next == places.size()) {
            return beyond(t, places.get(next - 1), places.get(Math.max(0, next - 2)), frame, clip);
        }
        Place a = places.get(next - 1);
        Place b = places.get(next);
        double share = (t - a.timeS()) / (b.timeS() - a.timeS());
        Point2 way = b.head().minus(a.head());
        Place larger = a.staturePx() > b.staturePx() ? a : b;
        Place between = larger.moved(a.head().plus(way.times(share)).minus(larger.head()), t);
        return cover(between, UNEVEN_SHARE * way.length(), frame, clip);
    }

    /** Before the first sighting or after the last, from there on as between it and its neighbour. */
    private static Optional<FaceCover> beyond(double t, Place end, Place inner, int frame, ClipLandmarks clip) {
        double beyondS = Math.abs(t - end.timeS());
        if (beyondS > HOLD_S) {
            return Optional.empty();
        }
        double stepS = Math.abs(end.timeS() - inner.timeS());
        Point2 way = stepS > 0 ? end.head().minus(inner.head()).times(beyondS / stepS) : new Point2(0, 0);
        return cover(end.moved(way, t), SUPPOSED_SHARE * way.length(), frame, clip);
    }

    private static Optional<FaceCover> cover(Place place, double growth, int frame, ClipLandmarks clip) {
        Homography toFrame = clip.background().fromFixed(frame);
        Point2 head = toFrame.apply(place.head());
        Point2 edge = toFrame.apply(place.edge());
        double radius = head.distanceTo(edge);
        if (!head.isKnown() || !(radius > 0) || !Double.isFinite(radius)) {
            return Optional.empty();
        }
        double grown = radius * (1 + Math.min(MOST_GROWTH, growth / (RADIUS_STATURES * place.staturePx())));
        boolean registered = clip.background().frame(frame).registered();
        return Optional.of(new FaceCover(head, registered ? grown : UNREGISTERED_GROWTH * grown));
    }
}
