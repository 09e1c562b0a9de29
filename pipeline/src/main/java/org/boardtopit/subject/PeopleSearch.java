package org.boardtopit.subject;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.SquareCrop;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;

/**
 * Everybody in the picture who is large enough to be recognised, some times a second, so that their faces can be covered.
 *
 * <p>The whole picture is covered with overlapping squares of several sizes, and the detector looks at each. Whoever is not
 * quite sure to be a person counts as one: a cover too many does no harm, one too few does. The last frame is always looked
 * at; what happens between two looks is for whoever uses the sightings.
 */
public final class PeopleSearch {
    /**
     * Between two looks somebody who walks gets 0.6 m on. On the panned clip with four people as many of the heads that fifteen
     * looks a second find were covered as with three looks.
     */
    static final double LOOKS_PER_S = 2.5;

    /**
     * Smaller people are not looked for. Ten pixels for the width of a face, as 62 pixels a metre are: half of what IEC
     * 62676-4 asks of a picture in which a person is to be recognised (125 pixels a metre; from memory).
     */
    static final double LEAST_STATURE_PX = 110;

    /** Of the shorter side: in pictures of more than 1100 lines the least stature grows with them, or it would take too long. */
    static final double LEAST_STATURE_SHARE = 0.1;

    /** The least stature in sides of the smallest square; the detector finds bodies from here to about three times it. */
    private static final double LEAST_IN_SQUARE = 0.25;

    private static final double SQUARE_RATIO = 2;
    /** From one square to the next, in sides: a body of the sizes that it is for is whole in one of them. */
    private static final double STEP = 0.65;

    /** In the smallest squares; 0.3 is the least that the detector gives out. */
    private static final double LEAST_SCORE = 0.4;

    /** In larger ones small people make ghosts (seen up to 0.54), and people who are large enough for them score above 0.9. */
    private static final double LEAST_SCORE_LARGER = 0.6;

    /** In standing heights: less than the radius of a head with its hair. */
    private static final double SAME_HEAD = 0.1;

    private static final double SAME_HIPS = 0.4;

    /** Enough for bodies; more find nobody else and take as long as the detector itself. */
    private static final int MOST_SAMPLES = 2;

    private final PersonDetector detector;
    private final double looksPerS;

    /** With a detector of which nobody else makes use meanwhile. */
    public PeopleSearch(PersonDetector detector) {
        this(detector, LOOKS_PER_S);
    }

    PeopleSearch(PersonDetector detector, double looksPerS) {
        this.detector = detector;
        this.looksPerS = looksPerS;
    }

    /** Reads the clip; the people by rising frame. */
    public List<PersonInView> search(FrameReader reader) throws VideoException {
        try (Looking looking = begin(reader.info())) {
            for (Optional<VideoFrame> next = reader.next(); next.isPresent(); next = reader.next()) {
                looking.see(next.get());
            }
            return looking.finish();
        }
    }

    /** Looks at a clip that somebody else reads. */
    public Looking begin(VideoInfo info) {
        return new Looking(squares(info.widthPx(), info.heightPx()));
    }

    /**
     * A clip being looked at: show it every frame. Holds one frame of the clip's reader, so close it first. Use from one thread.
     */
    public final class Looking implements AutoCloseable {
        private final List<Square> squares;
        private final List<SquareMemory> memories;
        private final SquareCrop crop = SquareCrop.coarse(detector.inputSizePx(), MOST_SAMPLES);
        private final ByteBuffer rgb = crop.newBuffer();
        private final List<PersonInView> people = new ArrayList<>();
        private VideoFrame unseen; // the latest frame when it was not looked at
        private long nextUs;

        private Looking(List<Square> squares) {
            this.squares = squares;
            this.memories = squares.stream()
                    .map(square -> new SquareMemory(detector.inputSizePx()))
                    .toList();
        }

        /** True when the next {@link #see} of this frame takes time. */
        public boolean isDue(VideoFrame frame) {
            return frame.timestampUs() >= nextUs;
        }

        /** Looks at the frame when it is time for it. */
        public void see(VideoFrame frame) {
            close();
            if (isDue(frame)) {
                nextUs = frame.timestampUs() + Math.round(1e6 / looksPerS) - 1000;
                look(frame);
            } else {
                unseen = frame.kept();
            }
        }

        /** Looks at the last frame, too; everybody by rising frame. */
        public List<PersonInView> finish() {
            if (unseen != null) {
                look(unseen);
                close();
            }
            return List.copyOf(people);
        }

        private void look(VideoFrame frame) {
            List<Found> found = new ArrayList<>();
            for (int i = 0; i < squares.size(); i++) {
                Square square = squares.get(i);
                crop.cut(frame, square.centreXPx(), square.centreYPx(), square.sidePx(), rgb);
                double scale = square.sidePx() / detector.inputSizePx();
                double left = square.centreXPx() - square.sidePx() / 2;
                double top = square.centreYPx() - square.sidePx() / 2;
                boolean smallest = square.sidePx() == squares.get(0).sidePx();
                for (DetectedPerson p : memories.get(i).people(rgb, detector)) {
                    if (p.sizePx() > 0 && p.score() >= (smallest ? LEAST_SCORE : LEAST_SCORE_LARGER)) {
                        PersonInView person = PersonInView.of(p, frame.index(), left, top, scale);
                        found.add(new Found(square.sidePx(), p.score(), person));
                    }
                }
            }
            people.addAll(withoutDoubles(found));
        }

        /** Gives back the frame that is held. */
        @Override
        public void close() {
            if (unseen != null) {
                unseen.release();
                unseen = null;
            }
        }
    }

    /** Somebody, and the side of the square in which the detector saw this person. */
    private record Found(double sidePx, double score, PersonInView person) {}

    /** From the smallest squares up: a person who is small in a square is seen there too, but too large and beside the place. */
    private static List<PersonInView> withoutDoubles(List<Found> found) {
        found.sort(Comparator.comparingDouble(Found::sidePx)
                .thenComparing(Comparator.comparingDouble(Found::score).reversed()));
        List<Found> kept = new ArrayList<>();
        for (Found one : found) {
            if (kept.stream().noneMatch(other -> isSame(other, one))) {
                kept.add(one);
            }
        }
        return kept.stream().map(Found::person).toList();
    }

    /** In squares of one size the same head: whose heads are apart are two people, however close they stand. */
    private static boolean isSame(Found smaller, Found larger) {
        PersonInView a = smaller.person();
        PersonInView b = larger.person();
        if (smaller.sidePx() < larger.sidePx()) {
            return a.hips().distanceTo(b.hips()) < SAME_HIPS * b.staturePx();
        }
        return a.head().distanceTo(b.head()) < SAME_HEAD * Math.min(a.staturePx(), b.staturePx());
    }

    /** Squares of growing size, each size all over the picture, up to one that holds the longer side. */
    static List<Square> squares(int widthPx, int heightPx) {
        double shorter = Math.min(widthPx, heightPx);
        double longer = Math.max(widthPx, heightPx);
        double side = Math.max(LEAST_STATURE_PX, LEAST_STATURE_SHARE * shorter) / LEAST_IN_SQUARE;
        List<Square> squares = new ArrayList<>();
        for (; side < longer; side *= SQUARE_RATIO) {
            for (double y : centres(heightPx, side)) {
                for (double x : centres(widthPx, side)) {
                    squares.add(new Square(x, y, side));
                }
            }
        }
        squares.add(new Square(widthPx / 2.0, heightPx / 2.0, longer));
        return squares;
    }

    /** Evenly from edge to edge, no farther apart than a step. */
    private static double[] centres(double lengthPx, double sidePx) {
        if (sidePx >= lengthPx) {
            return new double[] {lengthPx / 2};
        }
        int steps = (int) Math.ceil((lengthPx - sidePx) / (STEP * sidePx));
        double[] centres = new double[steps + 1];
        for (int i = 0; i <= steps; i++) {
            centres[i] = sidePx / 2 + i * (lengthPx - sidePx) / steps;
        }
        return centres;
    }
}
