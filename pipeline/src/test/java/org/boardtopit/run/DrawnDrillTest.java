package org.boardtopit.run;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import org.boardtopit.clips.AttemptEntry;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.Pattern;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;
import org.boardtopit.report.AttemptOverlay;
import org.boardtopit.report.AttemptTables;
import org.boardtopit.report.overlay.OverlayScene;
import org.boardtopit.report.tables.AttemptRow;
import org.boardtopit.report.tables.ContactRow;
import org.boardtopit.report.tables.PhaseRow;
import org.boardtopit.synthetic.DrawnClip;
import org.boardtopit.synthetic.DrawnDrill;
import org.boardtopit.synthetic.TrueContact;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A drawn hop-hop-hop from standing, without marks and without a distance, from the landmarks to tables and overlay. SYN. */
class DrawnDrillTest {
    private static DrawnClip drawn;
    private static AttemptTables tables;
    private static OverlayScene scene;
    private static OverlayScene germanScene;

    @BeforeAll
    static void analyse() {
        drawn = new DrawnClip(
                DrawnClip.Setup.ordinary(4).atFps(120).withStillCamera(),
                new DrawnDrill(List.of(Foot.LEFT, Foot.LEFT, Foot.LEFT, Foot.LEFT), false, false));
        AttemptEntry entry = new AttemptEntry(
                2,
                "warm-up.mp4",
                "131",
                "",
                "",
                OptionalInt.empty(),
                Optional.empty(),
                Double.NaN,
                Double.NaN,
                Optional.empty(),
                "",
                Double.NaN,
                Optional.of(Pattern.parse("hop-hop-hop")),
                Consent.YES);
        Clip clip = new Clip(Path.of("warm-up.mp4"), "warm-up", Optional.of(entry), Optional.empty(), Optional.empty());
        AttemptAnalysis analysis = new AttemptAnalyser().analyse(clip, drawn.landmarks());
        tables = new AttemptTables(
                clip, MeetSheet.NONE, analysis.measures(), analysis.fitted().repaired());
        scene = scene(clip, analysis, Language.ENGLISH);
        germanScene = scene(clip, analysis, Language.GERMAN);
    }

    private static OverlayScene scene(Clip clip, AttemptAnalysis analysis, Language language) {
        return new AttemptOverlay(
                        clip, drawn.landmarks(), analysis.view(), analysis.fitted(), analysis.measures(), 1, language)
                .scene();
    }

    @Test
    void listsTheContactsOfTheDrillAndLeavesUnknownWhenTheFirstFootCameDown() {
        List<ContactRow> rows = tables.contacts();
        assertEquals(4, rows.size());
        for (int i = 0; i < 4; i++) {
            TrueContact truth = drawn.contacts().get(i);
            assertEquals(ContactKind.DRILL, rows.get(i).kind());
            assertEquals(Foot.LEFT, rows.get(i).foot());
            assertEquals(truth.toeOffS(), rows.get(i).toeOffS(), 0.03, "toe-off of " + i);
            if (i > 0) {
                assertEquals(truth.touchdownS(), rows.get(i).touchdownS(), 0.02, "touchdown of " + i);
                assertNotNull(rows.get(i).touchdown().kneeDeg());
            }
        }
        assertNull(rows.get(0).touchdownS());
        assertNull(rows.get(0).touchdownFrame());
        assertNull(rows.get(0).supportTimeS());
        assertNull(rows.get(0).touchdown().kneeDeg());
        assertNotNull(rows.get(0).toeOff().kneeDeg());
    }

    @Test
    void measuresTheFlightOfEveryHopAndTheFreeLeg() {
        List<PhaseRow> rows = tables.phases();
        assertEquals(
                List.of("hop_1", "hop_2", "hop_3", "landing"),
                rows.stream().map(r -> r.phase().label()).toList());
        for (int i = 0; i < 3; i++) {
            double flight = drawn.contacts().get(i + 1).touchdownS()
                    - drawn.contacts().get(i).toeOffS();
            assertEquals(flight, rows.get(i).flightTimeS(), 0.03, "flight of hop " + (i + 1));
            assertNotNull(rows.get(i).freeThighMaxDeg());
            assertNull(rows.get(i).sharePct());
            assertNull(rows.get(i).distanceM(), "there is no scale");
        }
        assertNull(rows.get(0).supportTimeS());
    }

    @Test
    void leavesEmptyWhatOnlyATripleJumpHas() {
        AttemptRow row = tables.attempt(true, 120);
        assertNull(row.effectiveM());
        assertNull(row.hopM());
        assertNull(row.hopPct());
        assertNull(row.toeToBoardM());
        assertNull(row.effortClass());
        assertTrue(
                row.warnings().stream().noneMatch(w -> w.contains("board") || w.contains("pit")),
                row.warnings().toString());
    }

    @Test
    void theOverlayNamesContactsAndPhases() {
        assertEquals(
                List.of("hop 1", "hop 2", "hop 3", "landing"),
                scene.phases().stream().map(p -> p.text()).toList());
        assertEquals(
                List.of("Contact 1", "Contact 2", "Contact 3"),
                scene.chapters().stream().map(c -> c.title()).toList());
        assertTrue(scene.contacts().get(0).label().startsWith("off "), "the first foot is only seen to leave");
    }

    @Test
    void theOverlayNamesThemInGermanToo() {
        assertEquals(
                List.of("Hop 1", "Hop 2", "Hop 3", "Landung"),
                germanScene.phases().stream().map(p -> p.text()).toList());
        assertEquals(
                List.of("Kontakt 1", "Kontakt 2", "Kontakt 3"),
                germanScene.chapters().stream().map(c -> c.title()).toList());
        assertEquals("Startnr. 131", germanScene.titleLines().get(0));
        assertTrue(germanScene.contacts().get(0).label().matches("ab [0-9]+,[0-9]{2} s"));
        assertTrue(germanScene.qualityLines().get(0).startsWith("Messung "));
    }
}
