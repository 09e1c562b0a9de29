package org.boardtopit.cli;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.PrintWriter;
import java.io.StringWriter;
import org.boardtopit.run.Progress;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ProgressBarTest {
    private final StringWriter text = new StringWriter();
    private long nowNs;
    private final ProgressBar bar = new ProgressBar(new PrintWriter(text), () -> nowNs);

    @Test
    void showsShareRemainingTimeClipAndStage() {
        assertEquals(
                "|############            |  50 %  12 min 05 s left  clip 3/7  landmarks  a.mp4",
                ProgressBar.line(new Progress(3, 7, "a.mp4", "landmarks", 0.5, 725)));
    }

    @Test
    void saysNoRemainingTimeWhileItIsUnknown() {
        assertEquals(
                "|                        |   0 %  clip 1/7  survey  a.mp4",
                ProgressBar.line(new Progress(1, 7, "a.mp4", "survey", 0, Double.NaN)));
    }

    @Test
    void forecastsNoPartsOfSeconds() {
        assertTrue(ProgressBar.line(new Progress(1, 1, "a.mp4", "overlay", 0.9, 3.4))
                .contains(" 3 s left "));
    }

    @Test
    void keepsToOneLineWhateverTheFileIsCalled() {
        bar.show(new Progress(1, 1, "\u001b[2J\n" + "x".repeat(200), "survey", 1, 0));

        assertEquals(1 + 79, text.toString().length());
        assertTrue(text.toString().chars().skip(1).noneMatch(Character::isISOControl));
    }

    @Test
    void isNotWrittenMoreOftenThanTheEyeFollows() {
        for (int ms = 0; ms < 1000; ms += 10) {
            nowNs = ms * 1_000_000L;
            bar.show(new Progress(1, 1, "a.mp4", "survey", 0.5, 10));
        }

        assertEquals(5, text.toString().chars().filter(c -> c == '\r').count());
    }

    @Test
    void clearsItsLineOnce() {
        bar.show(new Progress(1, 1, "a.mp4", "survey", 0.5, 10));
        int shown = text.toString().length();
        bar.clear();
        bar.clear();

        assertEquals("\r" + " ".repeat(79) + "\r", text.toString().substring(shown));
    }

    @ParameterizedTest
    @CsvSource({
        "0.04, 0.0 s",
        "7.44, 7.4 s",
        "9.94, 9.9 s",
        "9.96, 10 s",
        "59.6, 1 min 00 s",
        "725, 12 min 05 s",
        "3599.7, 1 h 00 min",
        "7810, 2 h 10 min"
    })
    void saysTimesAsPeopleDo(double seconds, String expected) {
        assertEquals(expected, Spoken.duration(seconds));
    }
}
