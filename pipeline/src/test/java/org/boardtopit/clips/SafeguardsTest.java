package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Safeguards.Consents;
import org.boardtopit.clips.Safeguards.Faces;
import org.boardtopit.clips.Safeguards.Names;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SafeguardsTest {
    private static final String DAY = "competition: Brackenfold Open Meeting\ndate: 2026-06-14\n";

    @TempDir
    private Path folder;

    private MeetSheet read(String meet) throws IOException, InputException {
        return MeetSheetReader.read(Files.writeString(folder.resolve("meet.yaml"), meet, StandardCharsets.UTF_8));
    }

    private ClipList join(String meet, String... rows) throws IOException, InputException {
        String sheet = "clip,bib,athlete,consent\n" + String.join("\n", rows) + "\n";
        Files.writeString(folder.resolve("attempts.csv"), sheet, StandardCharsets.UTF_8);
        List<Path> files = Arrays.stream(rows)
                .map(row -> Path.of(row.substring(0, row.indexOf(','))))
                .toList();
        return ClipList.join(new ClipFolder(files, List.of()), read("attempts: attempts.csv\n" + meet));
    }

    private static List<String> withheld(ClipList list) {
        return list.clips().stream()
                .filter(clip -> clip.withheld().isPresent())
                .map(Clip::fileName)
                .toList();
    }

    @Test
    void readsWhatTheSheetSays() throws Exception {
        Safeguards safeguards =
                read("consent: required\nfaces: blur_all\nnames: pseudonyms_and_bibs\nretention: 2027-06-30\n")
                        .safeguards();

        assertEquals(
                new Safeguards(
                        Consents.REQUIRED,
                        Faces.BLUR_ALL,
                        Names.PSEUDONYMS_AND_BIBS,
                        Optional.of(LocalDate.of(2027, 6, 30))),
                safeguards);
    }

    @Test
    void countsRetentionInDaysFromTheCompetition() throws Exception {
        // By hand: 14 June + 30 days is 14 July.
        assertEquals(
                Optional.of(LocalDate.of(2026, 7, 14)),
                read(DAY + "retention: 30\n").safeguards().retention());
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "faces: blur | faces must be one of blur_others, blur_all, show, was 'blur'",
                "names: hide | names must be one of show, pseudonyms, pseudonyms_and_bibs, was 'hide'",
                "consent: maybe | consent must be one of assumed, required, was 'maybe'",
                "retention: 30 | retention in days counts from the key date, which is missing",
                "retention: 2027-02-30 | retention must be a day of the calendar",
                "retention: 0 | retention must be from 1 to 36500, was 0",
            })
    void refusesWhatItCannotUnderstand(String meet, String problem) {
        InputException e = assertThrows(InputException.class, () -> read(meet));
        assertTrue(e.getMessage().replace('"', '\'').contains(problem), e.getMessage());
    }

    @ParameterizedTest
    @CsvSource({"2027-06-29,false", "2027-06-30,false", "2027-07-01,true"})
    void expiresTheDayAfterTheLastOne(LocalDate today, boolean expired) {
        Safeguards kept =
                new Safeguards(Consents.ASSUMED, Faces.SHOW, Names.SHOW, Optional.of(LocalDate.of(2027, 6, 30)));
        assertEquals(expired, kept.hasExpired(today));
        assertFalse(Safeguards.DEFAULT.hasExpired(today), "without a date nothing expires");
    }

    @Test
    void withoutAWordConsentIsAssumedUnlessTheSheetRequiresIt() throws Exception {
        String[] rows = {"a.mp4,1,,yes", "b.mp4,2,,", "c.mp4,3,,no"};
        assertEquals(List.of("c.mp4"), withheld(join("", rows)));
        assertEquals(List.of("b.mp4", "c.mp4"), withheld(join("consent: required\n", rows)));
    }

    @Test
    void aClipWithoutARowIsWithheldWhereConsentIsRequired() throws Exception {
        MeetSheet meet = read("consent: required\n");
        ClipList list = ClipList.join(new ClipFolder(List.of(Path.of("a.mp4")), List.of()), meet);
        assertEquals(
                Optional.of("the attempts sheet does not say consent: yes, which meet.yaml requires"),
                list.clips().get(0).withheld());
    }

    @Test
    void aRefusalInOneRowCountsForTheAthletesRowsWithoutAWord() throws Exception {
        ClipList list = join("", "a.mp4,7,,no", "b.mp4,7,,", "c.mp4,7,,yes", "d.mp4,,Ondine Mbarsa,", "e.mp4,8,,");
        assertEquals(List.of("a.mp4", "b.mp4"), withheld(list));
        assertEquals(
                Optional.of("the attempts sheet says consent: no for this athlete, on line 2"),
                list.clips().get(1).withheld());
    }

    @Test
    void pseudonymsAreThoseOfTheKeyedHash() throws Exception {
        // CALC: hmac and hashlib of Python 3, first five bytes modulo 27, letters "bcdfghjkmnpqrstvwxz23456789".
        String meet = DAY + "names: pseudonyms\nathletes: [{bib: '214', name: Corin Vask}]\n";
        ClipList list =
                join(meet, "a.mp4,214,Corin Vask,", "b.mp4,,Imre-Lise Halloran,", "c.mp4,,Corin Vask,", "d.mp4,,,");

        assertEquals(
                List.of("214 athlete-qnn9q", " athlete-vp7j3", " athlete-qnn9q", " "),
                list.clips().stream()
                        .map(clip -> clip.entry().orElseThrow())
                        .map(e -> e.bib() + " " + e.athlete())
                        .toList());
        assertEquals(
                "athlete-qnn9q", list.clips().get(2).athlete().orElseThrow().name());
    }

    @Test
    void pseudonymsDoNotDependOnOrderAndDifferBetweenCompetitionsAndKeys() throws Exception {
        String athletes = "names: pseudonyms\nathletes: [{bib: '131'}, {bib: '214'}]\n";
        assertEquals("athlete-qnn9q", read(DAY + athletes).athletes().get(1).name());
        assertEquals(
                "athlete-ctdk9",
                read(DAY.replace("06-14", "06-21") + athletes).athletes().get(1).name());
        assertEquals(
                "athlete-6kdjz",
                read(DAY + "names_key: larch\n" + athletes).athletes().get(1).name());
    }

    @Test
    void replacesBibsWhereWantedAndStillFindsTheAthlete() throws Exception {
        ClipList list = join(
                DAY + "names: pseudonyms_and_bibs\nathletes: [{bib: '214', name: Corin Vask, stature_m: 1.86}]\n",
                "a.mp4,214,Corin Vask,",
                "b.mp4,,Corin Vask,");

        AttemptEntry first = list.clips().get(0).entry().orElseThrow();
        assertEquals("athlete-qnn9q", first.bib());
        assertEquals("", list.clips().get(1).entry().orElseThrow().bib());
        for (Clip clip : list.clips()) {
            assertEquals(1.86, clip.athlete().orElseThrow().statureM());
        }
        assertFalse(list.toString().contains("Corin") || list.toString().contains("214"), list.toString());
    }

    @Test
    void anIdIsReplacedByOneThatStaysFromCompetitionToCompetitionWithTheSameKey() throws Exception {
        String names = "names: pseudonyms\nathletes: [{bib: '214', name: Corin Vask, id: club-17}]\n";
        String first = read(DAY + names + "names_key: a\n").athletes().get(0).id();
        String later = read("competition: Other\ndate: 2026-07-05\n" + names + "names_key: a\n")
                .athletes()
                .get(0)
                .id();
        String otherKey = read(DAY + names + "names_key: b\n").athletes().get(0).id();
        assertTrue(first.matches("id-[a-z2-9]{8}"), first);
        assertEquals(first, later);
        assertNotEquals(first, otherKey);
    }

    @Test
    void aHundredAthletesHaveAHundredPseudonyms() throws Exception {
        StringBuilder athletes = new StringBuilder(DAY + "names: pseudonyms\nathletes:\n");
        for (int bib = 1; bib <= 100; bib++) {
            athletes.append("  - {bib: '").append(bib).append("', name: Somebody}\n");
        }
        List<String> names =
                read(athletes.toString()).athletes().stream().map(Athlete::name).toList();
        assertEquals(100, names.stream().distinct().count());
        assertNotEquals("Somebody", names.get(0));
    }
}
