package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipFolder;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.run.KeptSample;
import org.boardtopit.run.RunInputs;

/** A competition of two copies of the first sample clip, of which a run has kept the landmarks; no network can be computed. */
record KeptCompetition(CommandLineRun program, Path out, List<Path> clips) {

    static KeptCompetition in(Path folder) throws Exception {
        CommandLineRun program = new CommandLineRun(folder);
        Path out = program.path("results");
        Path clips = Files.createDirectories(program.path("clips"));
        for (String name : List.of("a.mp4", "b.mp4")) {
            Files.copy(KeptSample.COMPETITION.resolve(KeptSample.CLIP + ".mp4"), clips.resolve(name));
        }
        program.file("meet.yaml", "competition: Brackenfold Open Meeting\nattempts: attempts.csv\n");
        KeptCompetition competition =
                new KeptCompetition(program, out, List.of(clips.resolve("a.mp4"), clips.resolve("b.mp4")));
        competition.sheet("14.88");
        MeetSheet meet = MeetSheetReader.read(program.path("meet.yaml"));
        NetworkCard network = new NetworkStore(new FakeEngine()).card(NetworkStore.DEFAULT_LANDMARKS);
        for (Clip clip : ClipList.join(new ClipFolder(competition.clips, List.of()), meet)
                .clips()) {
            KeptSample.keep(clip, network, Effort.NORMAL, out);
        }
        competition.inputs(false).write(out);
        return competition;
    }

    /** The attempts sheet, with the distance of the first clip. */
    void sheet(String officialM) {
        program.file("attempts.csv", "clip,bib,attempt,official_m\na.mp4,214,1," + officialM + "\nb.mp4,214,2,14.20\n");
    }

    /** What the run was told. */
    RunInputs inputs(boolean overlay) throws IOException {
        return new RunInputs(
                clips,
                List.of(),
                Optional.of(program.path("meet.yaml")),
                Optional.empty(),
                Optional.empty(),
                new RunSettings("full", 1, 0, Effort.NORMAL),
                overlay);
    }
}
