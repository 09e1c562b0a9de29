package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What words and feet stand for. A hop lands on the foot that left the ground, a step on the other one, a jump in the pit: World
 * Athletics Technical Rules, TR31 (MEM-H); the other names are common practice, no source.
 */
class PatternTest {

    private static String feet(List<Pattern.Feet> feet) {
        return feet.stream()
                .map(f -> f == Pattern.Feet.BOTH ? "both" : f.name().substring(0, 1))
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest(name = "{0} from {1}: {2}")
    @CsvSource({
        "hop-hop-hop, LEFT, L L L L",
        "hop-hop-hop, RIGHT, R R R R",
        "step-step-jump, LEFT, L R L both",
        "bound bound, RIGHT, R L R",
        "hop-step-jump, LEFT, L L R both",
        "hop-step-hop, RIGHT, R R L L",
        "jump-jump, LEFT, L both both",
        "HOP - Step, LEFT, L L R"
    })
    void wordsSayWhichFootComesNext(String words, TakeoffFoot first, String feet) {
        List<List<Pattern.Feet>> orders = Pattern.parse(words).orders(Optional.of(first));
        assertEquals(1, orders.size());
        assertEquals(feet, feet(orders.get(0)));
    }

    @Test
    void withoutAFirstFootEitherMayBegin() {
        assertEquals(
                List.of("L L R", "R R L"),
                Pattern.parse("hop-step").orders(Optional.empty()).stream()
                        .map(PatternTest::feet)
                        .toList());
        assertEquals(
                "both both", feet(Pattern.parse("jump").orders(Optional.empty()).get(0)));
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource({"R R L L, HOP STEP HOP", "r-l-r-both, STEP STEP JUMP", "both both R, JUMP STEP", "L L, HOP"})
    void feetNameTheFlightsBetweenThem(String text, String flights) {
        Pattern pattern = Pattern.parse(text);
        assertEquals(flights, pattern.flights().stream().map(Enum::name).collect(Collectors.joining(" ")));
        assertEquals(1, pattern.orders(Optional.empty()).size());
        assertEquals(text.toUpperCase(Locale.ROOT).replace('-', ' ').replace("BOTH", "both"), pattern.toString());
    }

    @Test
    void aSkipGoesOn() {
        Pattern skip = Pattern.parse("Skip");
        assertTrue(skip.isSkip());
        assertEquals("R R L L", feet(skip.orders(Optional.empty()).get(0)));
        assertFalse(Pattern.parse("R R L L").isSkip());
    }

    /** Only as words: who writes the feet has a drill in mind. */
    @Test
    void hopStepJumpInWordsIsTheTripleJump() {
        assertTrue(Pattern.parse("hop-step-jump").isTripleJump());
        assertFalse(Pattern.parse("R R L both").isTripleJump());
        assertFalse(Pattern.parse("hop-step").isTripleJump());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "hop-hopp",
                "RRLL",
                "hop,hop",
                "R",
                "hop R",
                "skip-skip",
                "hop-jump-step",
                "jump-hop",
                "hop-",
                "-",
                "run"
            })
    void whatIsNoPatternIsRefusedWithWhatWouldBeRight(String text) {
        String message = assertThrows(IllegalArgumentException.class, () -> Pattern.parse(text))
                .getMessage();
        assertTrue(message.matches(".*(such as|not some of each).*"), message);
        assertEquals(1, message.lines().count());
    }
}
