package org.boardtopit.check;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.boardtopit.check.CheckedClip.PictureMatch;
import org.boardtopit.clips.Clip;
import org.boardtopit.video.ClipFacts;
import org.boardtopit.video.ClipFacts.Tone;
import org.boardtopit.video.FrameTimes;
import org.boardtopit.video.VideoInfo;
import org.junit.jupiter.api.Test;

class NightForecastTest {

    private static CheckedClip clip(int frames, boolean willBeMeasured) {
        FrameTimes times =
                FrameTimes.of(LongStream.range(0, frames).map(i -> i * 20_000).toArray());
        VideoInfo info = new VideoInfo(1000, 1000, 50, frames * 20_000L, frames, false, 0, "h264");
        return new CheckedClip(
                new Clip(Path.of("a.mp4"), "a", Optional.empty(), Optional.empty(), Optional.empty()),
                Optional.of(new ClipFacts(info, times, true, Tone.STANDARD, 8, false)),
                willBeMeasured,
                1,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                Double.NaN,
                PictureMatch.NO_PICTURE,
                List.of());
    }

    @Test
    void aSecondLookAtEachFrameCostsTheNetworksTime() {
        double one = NightForecast.of(List.of(clip(1000, true)), 20, 1, true).seconds();
        double two = NightForecast.of(List.of(clip(1000, true)), 20, 2, true).seconds();
        assertEquals(1000 / 20.0, two - one, 1e-9); // CALC
    }

    @Test
    void whatIsNotMeasuredCostsNothing() {
        NightForecast none = NightForecast.of(List.of(clip(1000, false)), 20, 2, true);
        assertEquals(0, none.needBytes());
        assertEquals(0, none.frames());
    }

    /** The encoder is told to spend 0.12 bits on a pixel: 15 000 bytes for a frame of a million pixels; 4 MiB are for stills (CALC). */
    @Test
    void overlaysTakeTheMostOfTheDisk() {
        long with = NightForecast.of(List.of(clip(1000, true)), 20, 2, true).needBytes();
        long without = NightForecast.of(List.of(clip(1000, true)), 20, 2, false).needBytes();
        assertEquals(15_000_000L + 4 * 1024 * 1024, with - without);
    }

    @Test
    void theTimeIsARangeAboutTheEstimate() {
        NightForecast night = NightForecast.of(List.of(clip(1000, true)), 20, 2, true);
        assertTrue(night.leastS() < night.seconds() && night.seconds() < night.mostS());
    }
}
