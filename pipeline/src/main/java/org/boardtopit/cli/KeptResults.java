package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import java.util.function.Supplier;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.ClipList;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.MeetSheetReader;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.TensorEngine;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.run.ClipDigests;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.RefusedHereException;
import org.boardtopit.run.Remeasuring;
import org.boardtopit.run.RunInputs;
import org.boardtopit.run.workers.WorkerJob;

/**
 * What a command needs that goes on from the results in an output folder: the sheets as they are now, the network and the effort
 * as they were.
 *
 * @param inputs what the run was told
 * @param list its clips, with the corrections in force
 * @param lanes how many clips are measured side by side
 */
record KeptResults(
        Path out,
        RunInputs inputs,
        MeetSheet meet,
        RuleSet rules,
        RunSettings settings,
        NetworkStore store,
        CorrectionFile corrections,
        ClipList list,
        int lanes) {

    /** A clip from its landmarks takes some 100 MiB of the launcher's heap (measured on 4 s at 120 frames a second). */
    private static final int MOST_LANES = 4;

    /**
     * Reads all of it.
     *
     * @param told the corrections named on the command line; null for none
     */
    static KeptResults in(Path out, Path told, TensorEngine engine) throws InputException {
        RunInputs inputs = RunInputs.of(out);
        MeetSheet meet = inputs.meet().isEmpty()
                ? MeetSheet.NONE
                : MeetSheetReader.read(inputs.meet().get());
        int lanes = Math.max(1, Math.min(MOST_LANES, Runtime.getRuntime().availableProcessors()));
        RunSettings then = inputs.settings();
        CorrectionFile corrections = CorrectionFile.of(told, Optional.of(inputs), out);
        return new KeptResults(
                out,
                inputs,
                meet,
                RuleSetReader.of(meet),
                new RunSettings(then.network(), 1, 0, then.effort()),
                new NetworkStore(engine, inputs.networks()),
                corrections,
                corrections.joined(ClipList.join(inputs.folder(), meet)),
                lanes);
    }

    /** The same with other corrections. */
    KeptResults with(ClipList other) {
        return new KeptResults(out, inputs, meet, rules, settings, store, corrections, other, lanes);
    }

    Remeasuring remeasuring() throws NetworkUnfitException, IOException {
        ClipFingerprints fingerprints = Fingerprinting.of(meet, settings, store, ClipDigests.trusting(out));
        AttemptViews views = list.views();
        return new Remeasuring(list, clip -> fingerprints.of(clip, WorkerJob.joined(views, clip)), out, lanes);
    }

    Supplier<ClipMeasurer> measurers(boolean overlay) throws NetworkUnfitException {
        return StageAssembly.onKept(
                new Setup(meet, rules, settings, store, out, overlay, list.views()), ClipDigests.trusting(out));
    }

    /** A refused correction as the wrong input that it is. */
    InputException refused(RefusedHereException e) {
        Path file = corrections.sheet().orElseThrow().file();
        return new InputException(file, e.line(), e.column(), e.problem());
    }
}
