package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ClipListTest {
    private static final String TWO_CAMERAS = "attempts: attempts.csv\ncameras: [{name: stand}, {name: pit}]\n";

    @TempDir
    Path folder;

    private static ClipFolder clips(String... names) {
        return new ClipFolder(Stream.of(names).map(Path::of).toList(), List.of());
    }

    private MeetSheet meet(String yaml, String attempts) throws IOException, InputException {
        Files.writeString(folder.resolve("attempts.csv"), attempts, StandardCharsets.UTF_8);
        return MeetSheetReader.read(Files.writeString(folder.resolve("meet.yaml"), yaml, StandardCharsets.UTF_8));
    }

    private ClipList join(String yaml, String attempts, String... names) throws IOException, InputException {
        ClipList list = ClipList.join(clips(names), meet(yaml, attempts));
        return new ClipList(
                list.clips(),
                list.skipped(),
                list.warnings().stream()
                        .map(w -> new ListWarning(w.kind(), w.text().replace(folder + "/", "")))
                        .toList(),
                list.gone());
    }

    @Test
    void aBareFolderNeedsNoSheet() throws Exception {
        ClipList list = ClipList.join(clips("a.mp4"), MeetSheet.NONE);
        assertEquals(
                List.of(new Clip(Path.of("a.mp4"), "a", Optional.empty(), Optional.empty(), Optional.empty())),
                list.clips());
        assertEquals(List.of(), list.warningLines());
    }

    @Test
    void findsRowCameraAndAthleteOfAClip() throws Exception {
        Clip clip = join(
                        TWO_CAMERAS + "athletes: [{bib: 7, name: A}, {name: B, level: junior}]\n",
                        "clip,bib,athlete,camera\nb.mp4,,B,stand\na.mp4,7,A,pit\n",
                        "a.mp4",
                        "b.mp4")
                .clips()
                .get(0);
        assertEquals("a.mp4", clip.entry().orElseThrow().clip());
        assertEquals("pit", clip.camera().orElseThrow().name());
        assertEquals("7", clip.athlete().orElseThrow().bib());
    }

    @Test
    void findsAnAthleteByNameWhereThereIsNoBib() throws Exception {
        ClipList list = join(
                "attempts: attempts.csv\nathletes: [{bib: 7, name: A}, {name: B, level: junior}]\n",
                "clip,athlete\na.mp4,B\nb.mp4,C\n",
                "a.mp4",
                "b.mp4");
        assertEquals("junior", list.clips().get(0).athlete().orElseThrow().level());
        assertEquals(Optional.empty(), list.clips().get(1).athlete());
    }

    @Test
    void takesTheOnlyCameraWhereNoneIsNamed() throws Exception {
        ClipList list = join("attempts: attempts.csv\ncameras: [{name: stand}]\n", "clip\na.mp4\n", "a.mp4");
        assertEquals("stand", list.clips().get(0).camera().orElseThrow().name());
    }

    @Test
    void guessesNoCameraAmongSeveral() throws Exception {
        ClipList list = join(TWO_CAMERAS, "clip\na.mp4\n", "a.mp4");
        assertEquals(Optional.empty(), list.clips().get(0).camera());
        assertEquals(
                List.of("a.mp4: the attempts sheet names no camera for this clip, so its marks are not used"),
                list.warningLines());
    }

    @Test
    void refusesACameraThatIsNotInTheMeetSheet() {
        InputException e =
                assertThrows(InputException.class, () -> join(TWO_CAMERAS, "clip,camera\na.mp4,stnad\n", "a.mp4"));
        assertEquals(
                folder.resolve("attempts.csv")
                        + ", line 2, column camera: the meet sheet has no camera 'stnad'; did you mean 'stand'?",
                e.getMessage());
    }

    @Test
    void namesRowsWithoutAClipAndClipsWithoutARow() throws Exception {
        assertEquals(
                List.of(
                        "attempts.csv, line 3: there is no clip 'IMG_0021.mov'; did you mean 'IMG_0012.mov'?",
                        "IMG_0012.mov: the attempts sheet has no row for this clip; it is measured all the same"),
                join("attempts: attempts.csv", "clip\na.mp4\nIMG_0021.mov\n", "a.mp4", "IMG_0012.mov")
                        .warningLines());
    }

    @Test
    void findsAClipWrittenWithOtherCapitalsOrWithoutItsEnding() throws Exception {
        ClipList list = join("attempts: attempts.csv", "clip\nimg_1.MP4\nIMG_2\n", "IMG_1.mp4", "IMG_2.mp4");
        assertEquals(2, list.clips().get(0).entry().orElseThrow().line());
        assertEquals(3, list.clips().get(1).entry().orElseThrow().line());
        assertEquals(List.of(), list.warningLines());
    }

    @Test
    void clipsThatDifferOnlyInTheEndingKeepIt() throws Exception {
        ClipList list = ClipList.join(clips("A.mov", "a.mp4", "b.mp4"), MeetSheet.NONE);
        assertEquals(
                List.of("A.mov", "a.mp4", "b"),
                list.clips().stream().map(Clip::name).toList());
    }

    @Test
    void refusesAClipWhoseOverlayWouldCollideAllTheSame() {
        InputException e = assertThrows(
                InputException.class, () -> ClipList.join(clips("a.mov", "a.mov.mp4", "a.mp4"), MeetSheet.NONE));
        assertEquals("a.mov.mp4: another clip's overlay would have the same name; rename one of them", e.getMessage());
    }

    @Test
    void aClipNameIsNotAmbiguousWithoutItsEndingWhenTwoClipsHaveIt() throws Exception {
        assertEquals(
                "attempts.csv, line 2: there is no clip 'a'",
                join("attempts: attempts.csv", "clip\na\n", "a.mov", "a.mp4")
                        .warningLines()
                        .get(0));
    }

    @Test
    void remarksOnRowsThatAreOdd() throws Exception {
        // The checks of a field card: common practice, no source.
        assertEquals(
                List.of(
                        "attempts.csv, line 2: bib 7 is 'A' in the meet sheet and 'B' here",
                        "attempts.csv, line 2: an official distance is given for an attempt that is not valid",
                        "attempts.csv, line 3: attempt 7 is more than the usual 6",
                        "attempts.csv, line 4: attempt 7 is more than the usual 6",
                        "attempts.csv, line 4: attempt 7 of bib 7 is also on line 3"),
                join("attempts: attempts.csv\nathletes: [{bib: 7, name: A}]\n", """
clip,bib,athlete,attempt,result,official_m
a.mp4,7,B,1,x,12.3
b.mp4,7,A,7,o,12.4
c.mp4,7,A,7,o,
""", "a.mp4", "b.mp4", "c.mp4")
                        .warningLines());
    }

    @Test
    void twoCamerasMayFilmOneAttempt() throws Exception {
        assertEquals(
                List.of(),
                join(TWO_CAMERAS, "clip,bib,attempt,camera\na.mp4,7,1,stand\nb.mp4,7,1,pit\n", "a.mp4", "b.mp4")
                        .warningLines());
    }

    @Test
    void aRefusedClipThatIsNotThereIsGoneAndNoMissingAttempt() throws Exception {
        ClipList list = join("attempts: attempts.csv\n", """
                clip,bib,consent
                a.mp4,1,yes
                longgone,2,no
                other.mp4,2,
                missing.mov,3,
                b.mp5,4,no
                """, "a.mp4", "b.mp4");

        assertEquals(List.of("longgone", "other.mp4", "b.mp5"), list.gone());
        assertEquals(
                List.of(
                        ListWarning.Kind.REFUSED_CLIP_GONE,
                        ListWarning.Kind.REFUSED_CLIP_GONE,
                        ListWarning.Kind.ROW_WITHOUT_CLIP,
                        ListWarning.Kind.ROW_WITHOUT_CLIP, // perhaps a slip, and the clip would be measured
                        ListWarning.Kind.CLIP_WITHOUT_ROW),
                list.warnings().stream().map(ListWarning::kind).toList());
        assertEquals(
                "attempts.csv, line 3: there is no clip 'longgone'; the attempts sheet says consent: no, so what an"
                        + " earlier run left of it is removed",
                list.warningLines().get(0));
    }
}
