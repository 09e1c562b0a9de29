package org.boardtopit.report.overlay;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.measures.Quality;
import org.boardtopit.phases.Phase;
import org.boardtopit.phases.PhaseName;
import org.boardtopit.report.overlay.AngleCallout.Angle;
import org.boardtopit.wording.Language;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;

class OverlayWordsTest {

    private static List<String> all(Language language) {
        OverlayWords words = new OverlayWords(language);
        List<String> all = new ArrayList<>(List.of(
                words.bib("214"),
                words.attempt(3),
                words.quality(Quality.GOOD),
                words.metres(13.421),
                words.perCent(36.24),
                words.phase(new Phase(PhaseName.STEP, 2, 0, 1)),
                words.touchdown(words.contact(ContactKind.HOP_LANDING, 7), words.foot(Foot.LEFT), 2.176),
                words.toeOff(2.306),
                words.contact(ContactKind.DRILL, 4),
                words.figure(words.contact(ContactKind.PIT, 9), Foot.BOTH),
                words.angle(Angle.TRUNK, 6.6),
                words.angle(Angle.TRUNK, -6.6),
                words.angle(Angle.HIP, 151.6),
                words.clock(2.1834, 131, 4),
                words.closeView(2)));
        all.addAll(words.legend());
        return all;
    }

    static Stream<List<List<String>>> asWritten() {
        return Stream.of(
                List.of(
                        List.of(Language.ENGLISH.name()),
                        List.of(
                                "bib 214",
                                "attempt 3",
                                "quality good",
                                "13.42 m",
                                "36.2 %",
                                "step 2",
                                "hop landing L 2.18 s",
                                "off 2.31 s",
                                "contact 4",
                                "pit both",
                                "trunk +7\u00b0",
                                "trunk -7\u00b0",
                                "hip 152\u00b0",
                                "2.183 s   frame  131",
                                "close view x2.0",
                                "near side",
                                "far side",
                                "touchdown",
                                "toe-off")),
                List.of(
                        List.of(Language.GERMAN.name()),
                        List.of(
                                "Startnr. 214",
                                "Versuch 3",
                                "Messung gut",
                                "13,42 m",
                                "36,2 %",
                                "Step 2",
                                "Hop-Landung L 2,18 s",
                                "ab 2,31 s",
                                "Kontakt 4",
                                "Grube beide",
                                "Rumpf +7\u00b0",
                                "Rumpf -7\u00b0",
                                "H\u00fcfte 152\u00b0",
                                "2,183 s   Bild  131",
                                "Nahansicht x2,0",
                                "kameranah",
                                "kamerafern",
                                "Aufsetzen",
                                "Abdruck")));
    }

    @ParameterizedTest
    @MethodSource("asWritten")
    void writesWordsAndNumbersAsTheLanguageDoes(List<List<String>> expected) {
        Language language = Language.valueOf(expected.get(0).get(0));
        assertEquals(expected.get(1), all(language));
    }

    /** What cannot be drawn would come out as a question mark, or as other letters. */
    @ParameterizedTest
    @EnumSource(Language.class)
    void everyWordCanBeDrawnAsItIs(Language language) {
        OverlayWords words = new OverlayWords(language);
        List<String> all = new ArrayList<>(all(language));
        Arrays.stream(ContactKind.values()).map(kind -> words.contact(kind, 1)).forEach(all::add);
        Arrays.stream(Foot.values()).map(words::foot).forEach(all::add);
        Arrays.stream(Quality.values()).map(words::quality).forEach(all::add);
        Arrays.stream(PhaseName.values())
                .map(name -> words.phase(new Phase(name, 0, 1)))
                .forEach(all::add);
        Arrays.stream(Angle.values()).map(angle -> words.angle(angle, 90)).forEach(all::add);
        all.forEach(word -> assertEquals(word, PlainText.of(word)));
    }
}
