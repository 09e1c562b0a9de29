package org.boardtopit.cli;

import com.fasterxml.jackson.core.JsonProcessingException;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.TensorEngine;
import org.boardtopit.observations.RuleSetReader;
import org.boardtopit.run.RecordJson;

/**
 * What a worker is told once. The sheets go with it as they were read when the run began: a sheet that is changed in the middle
 * of the night does not measure half of the clips by other rows.
 *
 * @param networks folder of the user's own networks
 * @param out output folder
 */
record WorkerSetup(MeetSheet meet, Optional<Path> networks, RunSettings settings, Path out, boolean overlay) {

    String line() {
        try {
            return RecordJson.mapperOfRecords().writeValueAsString(this);
        } catch (JsonProcessingException e) {
            throw new IllegalStateException("a setup that cannot be written as JSON", e);
        }
    }

    static WorkerSetup parse(String line) throws IOException {
        return RecordJson.mapperOfRecords().readValue(line, WorkerSetup.class);
    }

    /** The same for the parts of a run, with the threads of this worker. */
    Setup setup(TensorEngine engine, int threads) throws InputException {
        RunSettings own = new RunSettings(settings.network(), threads, settings.workers(), settings.effort());
        return new Setup(
                meet, RuleSetReader.of(meet), own, new NetworkStore(engine, networks), out, overlay, AttemptViews.NONE);
    }
}
