package org.boardtopit.pose;

import static org.junit.jupiter.api.Assertions.assertArrayEquals;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.atomic.AtomicInteger;
import org.boardtopit.clips.Effort;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.LandmarkReading;
import org.boardtopit.pose.PoseTrack.FramePose;
import org.boardtopit.signal.Point2;
import org.boardtopit.subject.SubjectTrack;
import org.boardtopit.subject.SubjectTrack.Square;
import org.boardtopit.video.FrameReader;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoInfo;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@Timeout(60)
class PoseReaderTest {
    private static final int WIDTH = 160;
    private static final int HEIGHT = 120;

    /** A clip with a red dot that moves right by a pixel a frame and a green one that stands; one buffer for all frames. */
    private static final class DotClip implements FrameReader {
        private final int frames;
        private final AtomicInteger read = new AtomicInteger();
        private final ByteBuffer bgr = ByteBuffer.allocateDirect(3 * WIDTH * HEIGHT);

        DotClip(int frames) {
            this.frames = frames;
        }

        static Point2 red(int frame) {
            return new Point2(60 + frame, 50);
        }

        static Point2 green() {
            return new Point2(100, 66);
        }

        @Override
        public VideoInfo info() {
            return new VideoInfo(WIDTH, HEIGHT, 50, frames * 20_000L, frames, false, 0, "drawn");
        }

        @Override
        public Optional<VideoFrame> next() {
            int frame = read.get();
            if (frame == frames) {
                return Optional.empty();
            }
            read.incrementAndGet();
            bgr.put(0, new byte[bgr.capacity()]);
            dot(red(frame), 2);
            dot(green(), 1);
            return Optional.of(new VideoFrame(frame, 20_000L * frame, WIDTH, HEIGHT, bgr));
        }

        /** Four by four pixels about an edge, so that the middle of the light is the place itself. */
        private void dot(Point2 place, int channel) {
            for (int y = (int) place.y() - 2; y < place.y() + 2; y++) {
                for (int x = (int) place.x() - 2; x < place.x() + 2; x++) {
                    bgr.put(3 * (y * WIDTH + x) + channel, (byte) 200);
                }
            }
        }

        @Override
        public long undecodableFrames() {
            return 0;
        }

        @Override
        public void close() {}
    }

    private static SubjectTrack squares(int frames) {
        return new SubjectTrack(Collections.nCopies(frames, Optional.of(new Square(83.5, 57.25, 72))), 1);
    }

    private static List<LandmarkNetwork> workers(int count) {
        return Collections.nCopies(count, new DotNetwork());
    }

    private static FramePose pose(PoseTrack track, int frame) {
        return track.at(frame).orElseThrow();
    }

    @ParameterizedTest
    @CsvSource({
        "1, 0, false",
        "1.2, 0, false",
        "0.9, 0, true",
        "1, 8, false",
        "1, -8, true",
        "1.1, -20, false",
        "1.1, 13, true",
    })
    void everyLookGivesPlacesInTheFrameAndTheAthletesOwnSides(double scale, double turnDeg, boolean mirrored)
            throws Exception {
        PoseReader reader = new PoseReader(workers(1), List.of(new Look(scale, turnDeg, mirrored)));
        FramePose pose = pose(reader.read(new DotClip(1), squares(1)), 0);
        assertPlace(DotClip.red(0), pose.place(BodyPoint.LEFT_KNEE, 0));
        assertPlace(DotClip.green(), pose.place(BodyPoint.RIGHT_TOE, 0));
        assertEquals(2 * scale * 72 / DotNetwork.SIZE_PX, pose.sdPx(BodyPoint.RIGHT_TOE, 0), 1e-5);
    }

    private static void assertPlace(Point2 expected, Point2 found) {
        assertEquals(expected.x(), found.x(), 0.1);
        assertEquals(expected.y(), found.y(), 0.1);
    }

    @ParameterizedTest
    @CsvSource({"QUICK, 1", "NORMAL, 2", "THOROUGH, 5"})
    void anEffortIsSoManyLooksTheFirstOneAtTheSquareAsItIs(Effort effort, int looks) {
        assertEquals(looks, Look.of(effort).size());
        assertEquals(Look.PLAIN, Look.of(effort).get(0));
    }

    @Test
    void theResultDoesNotDependOnTheNumberOfWorkers() throws Exception {
        List<float[]> one = numbers(1);
        List<float[]> four = numbers(4);
        assertEquals(one.size(), four.size());
        for (int i = 0; i < one.size(); i++) {
            assertArrayEquals(one.get(i), four.get(i));
        }
    }

    private static List<float[]> numbers(int count) throws Exception {
        List<LandmarkNetwork> workers = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Random random = new Random(i);
            workers.add(new DotNetwork() {
                @Override
                public LandmarkReading read(ByteBuffer rgb) {
                    pause(random.nextInt(3));
                    return super.read(rgb);
                }
            });
        }
        PoseTrack track = new PoseReader(workers, Look.of(Effort.THOROUGH)).read(new DotClip(40), squares(40));
        List<float[]> all = new ArrayList<>();
        for (int f = 0; f < track.frameCount(); f++) {
            all.add(pose(track, f).toArray());
        }
        return all;
    }

    private static void pause(int ms) {
        try {
            Thread.sleep(ms);
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }

    @Test
    void framesWithoutTheAthleteStayEmptyAlsoBeyondTheLastFrameThatIsRead() throws Exception {
        List<Optional<Square>> squares = new ArrayList<>(squares(5).squares());
        squares.set(1, Optional.empty());
        PoseTrack track =
                new PoseReader(workers(2), List.of(Look.PLAIN)).read(new DotClip(3), new SubjectTrack(squares, 1));
        assertEquals(5, track.frameCount());
        assertPlace(DotClip.red(0), pose(track, 0).place(BodyPoint.LEFT_KNEE, 0));
        assertTrue(track.at(1).isEmpty());
        assertPlace(DotClip.red(2), pose(track, 2).place(BodyPoint.LEFT_KNEE, 0));
        assertTrue(track.at(3).isEmpty() && track.at(4).isEmpty());
    }

    @Test
    void readsOnlySoManyFramesAheadOfTheNetwork() throws Exception {
        DotClip clip = new DotClip(100);
        AtomicInteger readings = new AtomicInteger();
        AtomicInteger furthest = new AtomicInteger();
        LandmarkNetwork slow = new DotNetwork() {
            @Override
            public LandmarkReading read(ByteBuffer rgb) {
                furthest.accumulateAndGet(clip.read.get() - readings.getAndIncrement() / 2, Math::max);
                pause(1);
                return super.read(rgb);
            }
        };
        new PoseReader(List.of(slow), Look.of(Effort.NORMAL)).read(clip, squares(100));
        assertEquals(200, readings.get());
        // Three crops of two looks a frame wait, one is being read, and one frame is being cut.
        assertTrue(furthest.get() <= 4, "frames ahead: " + furthest.get());
    }

    @Test
    void aNetworkThatFailsEndsTheReadingWithItsReason() {
        LandmarkNetwork broken = new DotNetwork() {
            @Override
            public LandmarkReading read(ByteBuffer rgb) {
                throw new IllegalStateException("no such kernel");
            }
        };
        PoseReader reader = new PoseReader(List.of(broken), Look.of(Effort.NORMAL));
        IllegalStateException e =
                assertThrows(IllegalStateException.class, () -> reader.read(new DotClip(30), squares(30)));
        assertEquals("the landmark network failed: no such kernel", e.getMessage());
    }
}
