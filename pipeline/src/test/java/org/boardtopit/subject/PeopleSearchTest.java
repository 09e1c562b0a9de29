package org.boardtopit.subject;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.boardtopit.models.DetectedPerson;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.PersonDetector;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PeopleSearchTest {
    /** Small enough for one square. */
    private static final int SIDE = 400;

    @TempDir
    private Path folder;

    /** Sees the same in every square. */
    private record Scripted(List<DetectedPerson> seen) implements PersonDetector {
        @Override
        public NetworkCard card() {
            throw new UnsupportedOperationException();
        }

        @Override
        public int inputSizePx() {
            return 200;
        }

        @Override
        public List<DetectedPerson> find(ByteBuffer rgb) {
            return seen;
        }

        @Override
        public void close() {}
    }

    /** Grey frames, ten a second. */
    private static FrameReader grey(int widthPx, int heightPx, int frames) {
        ByteBuffer bgr = ByteBuffer.allocateDirect(3 * widthPx * heightPx);
        return new FrameReader() {
            private int next;

            @Override
            public VideoInfo info() {
                return new VideoInfo(widthPx, heightPx, 10, frames * 100_000L, frames, false, 0, "drawn");
            }

            @Override
            public Optional<VideoFrame> next() {
                return next == frames
                        ? Optional.empty()
                        : Optional.of(new VideoFrame(next, 100_000L * next++, widthPx, heightPx, bgr));
            }

            @Override
            public long undecodableFrames() {
                return 0;
            }

            @Override
            public void close() {}
        };
    }

    @Test
    void looksSomeTimesASecondAndAtTheLastFrame() throws Exception {
        DetectedPerson person = new DetectedPerson(0.9, 100, 120, 100, 90, 105);

        List<PersonInView> people = new PeopleSearch(new Scripted(List.of(person))).search(grey(SIDE, SIDE, 12));

        // By hand: a third of a second apart at ten frames a second, that is every fourth frame, and frame 11.
        assertEquals(
                List.of(0, 4, 8, 11), people.stream().map(PersonInView::frame).toList());
    }

    @Test
    void putsTheHeadOnFromTheHipsBeyondTheShoulders() throws Exception {
        DetectedPerson person = new DetectedPerson(0.9, 100, 120, 100, 90, 105);

        PersonInView seen = new PeopleSearch(new Scripted(List.of(person)))
                .search(grey(SIDE, SIDE, 1))
                .get(0);

        // By hand: twice the square's pixels; stature 2 * 105 / 1.05, head 0.117 of it above the shoulders.
        assertEquals(200, seen.staturePx(), 1e-9);
        assertEquals(new Point2(200, 240), seen.hips());
        assertEquals(200, seen.head().x(), 1e-9);
        assertEquals(180 - 0.117 * 200, seen.head().y(), 1e-9);
    }

    @Test
    void keepsTwoPeopleWhoseHeadsAreApartAndOneOfTheSameHead() throws Exception {
        DetectedPerson one = new DetectedPerson(0.9, 60, 120, 60, 90, 105);
        DetectedPerson again = new DetectedPerson(0.7, 62, 118, 61, 91, 105);
        DetectedPerson neighbour = new DetectedPerson(0.8, 90, 120, 90, 90, 105);
        DetectedPerson unsure = new DetectedPerson(0.35, 150, 120, 150, 90, 105);

        List<PersonInView> people =
                new PeopleSearch(new Scripted(List.of(one, again, neighbour, unsure))).search(grey(SIDE, SIDE, 1));

        assertEquals(
                List.of(120.0, 180.0), people.stream().map(p -> p.hips().x()).toList());
    }

    /** Upper bodies decide: hips and head of everybody who is tall enough lie well inside a square that fits them. */
    @ParameterizedTest
    @CsvSource({"1280, 720", "1920, 1080", "720, 1280", "640, 480", "3840, 2160"})
    void everybodyWhoIsTallEnoughIsInsideASquareOfTheRightSize(int widthPx, int heightPx) {
        List<Square> squares = PeopleSearch.squares(widthPx, heightPx);
        double least = Math.max(PeopleSearch.LEAST_STATURE_PX, PeopleSearch.LEAST_STATURE_SHARE * heightPx);
        Random random = new Random(7);
        for (int i = 0; i < 200; i++) {
            double stature = least * Math.pow(0.9 * heightPx / least, random.nextDouble());
            double x = stature * 0.15 + random.nextDouble() * (widthPx - stature * 0.3);
            double top = random.nextDouble() * (heightPx - stature);
            boolean inside = squares.stream()
                    .filter(s -> stature > 0.2 * s.sidePx())
                    .anyMatch(s -> Math.abs(s.centreXPx() - x) < s.sidePx() / 2
                            && top > s.centreYPx() - s.sidePx() / 2 - 1e-6
                            && top + 0.6 * stature < s.centreYPx() + s.sidePx() / 2);
            assertTrue(inside, "seed 7, person " + i + ": " + stature + " px at " + x + ", " + top);
        }
    }

    @Test
    void whatIsStoredReadsTheSameAndOnlyWithItsFingerprint() throws IOException {
        Path file = folder.resolve("a.people");
        List<PersonInView> people = new ArrayList<>();
        people.add(new PersonInView(0, new Point2(10.5, 20), new Point2(11, 5.25), 30));
        people.add(new PersonInView(7, new Point2(1, 2), new Point2(-3, 4), 120));

        PeopleFile.write(file, "f1", people);

        assertEquals(Optional.of(people), PeopleFile.read(file, "f1"));
        assertEquals(Optional.empty(), PeopleFile.read(file, "f2"));
        byte[] whole = Files.readAllBytes(file);
        Files.write(file, java.util.Arrays.copyOf(whole, whole.length - 5));
        assertEquals(Optional.empty(), PeopleFile.read(file, "f1"), "cut off");
        assertEquals(Optional.empty(), PeopleFile.read(folder.resolve("none"), "f1"));
    }
}
