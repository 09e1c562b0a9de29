package org.boardtopit.cli;

import java.io.FileDescriptor;
import java.io.FileOutputStream;
import java.io.IOException;
import java.util.concurrent.Callable;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.run.ClipDigests;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.NotMeasuredNowException;
import org.boardtopit.run.StoringMeasurer;
import org.boardtopit.run.workers.SignsOfLife;
import org.boardtopit.run.workers.WorkerJob;
import org.boardtopit.run.workers.WorkerLoop;
import org.boardtopit.run.workers.WorkerLoop.JobMeasurer;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** One process that measures clips for another; nobody types it. */
@Command(name = "worker", hidden = true, header = "Measures clips for process; started by it.")
final class WorkerCommand implements Callable<Integer> {
    private final Surroundings surroundings;

    @Option(
            names = "--channel",
            required = true,
            paramLabel = "TOKEN",
            description = "Begins each line of the channel.")
    private String token;

    @Option(names = "--threads", required = true, paramLabel = "N", description = "Threads for the network.")
    private int threads;

    WorkerCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InterruptedException {
        FileOutputStream channel = new FileOutputStream(FileDescriptor.out);
        System.setOut(System.err); // whatever Java prints is not for the channel
        new WorkerLoop(channel, token)
                .run(System.in, this::open, () -> Runtime.getRuntime().halt(ExitCode.DONE));
        return ExitCode.DONE;
    }

    private JobMeasurer open(String line, SignsOfLife life) throws NetworkUnfitException, IOException {
        WorkerSetup told = WorkerSetup.parse(line);
        try {
            MeasurerFactory.Setup setup = told.setup(surroundings.engine(), threads);
            ClipFingerprints fingerprints =
                    Fingerprinting.of(told.meet(), setup.settings(), setup.networks(), ClipDigests.reading(told.out()));
            StageAssembly.Parts parts = StageAssembly.parts(setup);
            return new Jobs(parts, fingerprints, life);
        } catch (InputException e) {
            // Read well when the run began: somebody has changed the file of rules since.
            throw new NetworkUnfitException(e.getMessage(), e);
        }
    }

    private record Jobs(StageAssembly.Parts parts, ClipFingerprints fingerprints, SignsOfLife life)
            implements JobMeasurer {
        @Override
        public ClipMeasurer measurer(WorkerJob job, AttemptViews views) {
            return new StoringMeasurer(
                    parts.processor(views, life::of), parts.setup().out(), clip -> fingerprint(job, clip));
        }

        private String fingerprint(WorkerJob job, Clip clip) throws IOException, NotMeasuredNowException {
            String now = fingerprints.of(clip, job.joined());
            if (!now.equals(job.fingerprint())) {
                throw new NotMeasuredNowException(
                        "open",
                        "the clip or a file that belongs to it was changed while the run went on; start the same"
                                + " command again",
                        null);
            }
            return now;
        }

        @Override
        public void close() {
            parts.close();
        }
    }
}
