package org.boardtopit.clips;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class AttemptViewsTest {
    private static final String MEET = """
            attempts: attempts.csv
            cameras: [{name: stand}, {name: pit, view: front}, {name: start, view: rear}]
            """;

    @TempDir
    Path folder;

    /** Rows: clip, bib, attempt, camera, consent. */
    private ClipList list(String... rows) throws IOException, InputException {
        String sheet = "clip,bib,attempt,camera,consent\n" + String.join("\n", rows) + "\n";
        Files.writeString(folder.resolve("attempts.csv"), sheet, StandardCharsets.UTF_8);
        Path meet = Files.writeString(folder.resolve("meet.yaml"), MEET, StandardCharsets.UTF_8);
        List<Path> files = Arrays.stream(rows)
                .map(row -> Path.of(row.substring(0, row.indexOf(','))))
                .toList();
        return ClipList.join(new ClipFolder(files, List.of()), MeetSheetReader.read(meet));
    }

    private static List<String> joined(ClipList list, int clip) {
        return list.views().joinedTo(list.clips().get(clip)).stream()
                .map(Clip::fileName)
                .toList();
    }

    @Test
    void joinsTheViewsOfAnAttempt() throws Exception {
        ClipList list = list("a.mp4,7,1,stand,", "b.mp4,7,1,pit,", "c.mp4,7,1,start,", "d.mp4,7,2,stand,");
        assertEquals(List.of("b.mp4", "c.mp4"), joined(list, 0));
        assertEquals(List.of(), joined(list, 3));
        assertEquals(
                Optional.of("a.mp4"), list.views().sideOf(list.clips().get(1)).map(Clip::fileName));
        assertEquals(List.of(), list.warningLines());
    }

    @Test
    void leavesAClipFromInFrontAloneWithoutOneFromTheSide() throws Exception {
        ClipList list = list("a.mp4,7,1,stand,", "b.mp4,7,2,pit,", "c.mp4,8,1,pit,");
        assertEquals(List.of(), joined(list, 0));
        assertEquals(Optional.empty(), list.views().sideOf(list.clips().get(1)));
        assertEquals(Optional.empty(), list.views().sideOf(list.clips().get(2)));
    }

    @Test
    void joinsNothingWithoutBibOrAttempt() throws Exception {
        ClipList list = list("a.mp4,,1,stand,", "b.mp4,,1,pit,", "c.mp4,7,,stand,", "d.mp4,7,,pit,");
        assertEquals(List.of(), joined(list, 0));
        assertEquals(List.of(), joined(list, 2));
    }

    @Test
    void joinsNoClipWhoseAthleteDidNotAgree() throws Exception {
        assertEquals(List.of(), joined(list("a.mp4,7,1,stand,yes", "b.mp4,7,1,pit,no"), 0));
    }

    @Test
    void warnsWhenTwoClipsClaimTheSameView() throws Exception {
        ClipList list = list("a.mp4,7,1,stand,", "b.mp4,7,1,pit,", "c.mp4,7,1,pit,");
        assertEquals(List.of(), joined(list, 0));
        String warning = list.warningLines().get(list.warnings().size() - 1);
        assertTrue(warning.startsWith("attempt 1 of bib 7: b.mp4 and c.mp4 are both from in front"), warning);
    }
}
