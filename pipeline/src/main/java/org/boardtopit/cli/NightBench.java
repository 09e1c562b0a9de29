package org.boardtopit.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.boardtopit.cli.MeasurerFactory.Setup;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.ClipList;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.report.tables.ClipRow;
import org.boardtopit.report.tables.TableWriter;
import org.boardtopit.run.ClipDigests;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipNotMeasuredException;
import org.boardtopit.run.ClipResult;
import org.boardtopit.run.MeetRunner;
import org.boardtopit.run.OutputFiles;
import org.boardtopit.run.Progress;
import org.boardtopit.run.RunFacts;
import org.boardtopit.run.RunListener;
import org.boardtopit.run.StageListener;
import org.boardtopit.run.StageTimes;
import org.boardtopit.run.workers.TimeLimits;
import org.boardtopit.run.workers.WorkerFleet;
import org.boardtopit.run.workers.WorkerPlan;
import org.boardtopit.run.workers.WorkerStarter;

/** Runs clips in worker processes as a night does, from the start of the first worker to the last table, and takes its time. */
final class NightBench {
    private final WorkerStarter starter;
    private final WorkerPlan plan;
    private final Optional<Path> networks;
    private final LongSupplier ownWork;

    /**
     * With workers.
     *
     * @param networks folder of the user's own networks
     * @param ownWork how long this process has kept processors busy, in ns
     */
    NightBench(WorkerStarter starter, WorkerPlan plan, Optional<Path> networks, LongSupplier ownWork) {
        this.starter = starter;
        this.plan = plan;
        this.networks = networks;
        this.ownWork = ownWork;
    }

    /**
     * How long a run took.
     *
     * @param frames of its clips
     * @param processorSeconds of the supervisor and all workers, from their start on
     * @param stages of the clips; what workers did besides, starting and testing the networks, is in none
     */
    record Figures(long frames, double seconds, double processorSeconds, StageTimes stages) {
        /** Java, the native libraries, the test of the networks, the tables. */
        double besidesStagesS() {
            return processorSeconds
                    - stages.processorSecondsByStage().values().stream()
                            .mapToDouble(s -> s)
                            .sum();
        }
    }

    /** The same clips again and again, under new names, until there are so many. */
    static List<Clip> copies(List<Clip> clips, int count) {
        List<Clip> copies = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            Clip clip = clips.get(i % clips.size());
            String name = i < clips.size() ? clip.name() : clip.name() + "-" + (i / clips.size() + 1);
            copies.add(new Clip(clip.file(), name, clip.entry(), clip.camera(), clip.athlete()));
        }
        return copies;
    }

    /**
     * One run into a folder that is empty afterwards.
     *
     * @throws ClipNotMeasuredException for the first clip that cannot be measured
     */
    Figures run(List<Clip> clips, Setup setup) throws NetworkUnfitException, IOException, ClipNotMeasuredException {
        Path out = setup.out();
        Files.createDirectories(out);
        try {
            return timed(clips, setup);
        } finally {
            OutputFiles.delete(out);
        }
    }

    private Figures timed(List<Clip> clips, Setup setup)
            throws NetworkUnfitException, IOException, ClipNotMeasuredException {
        ClipList list = new ClipList(clips, List.of());
        ClipFingerprints fingerprints =
                Fingerprinting.of(setup.meet(), setup.settings(), setup.networks(), ClipDigests.reading(setup.out()));
        String line = new WorkerSetup(setup.meet(), networks, setup.settings(), setup.out(), setup.overlay()).line();
        long startNs = System.nanoTime();
        long workedNs = ownWork.getAsLong();
        Heard heard = new Heard();
        StageTimes stages = new StageTimes();
        double processorS;
        try (WorkerFleet fleet =
                new WorkerFleet(starter, plan, TimeLimits.DEFAULT, line, list.views(), fingerprints, setup.out())) {
            fleet.startFirst();
            TableWriter tables = new TableWriter(setup.out(), setup.meet().tables());
            RunFacts facts = new RunFacts(Instant.now(), Map.of(), Map.of(), Map.of());
            new MeetRunner(
                            (clip, listener) -> measured(fleet, clip, listener, stages),
                            plan.workers(),
                            tables,
                            setup.out(),
                            facts,
                            heard)
                    .run(list);
            processorS =
                    (ownWork.getAsLong() - workedNs) * 1e-9 + fleet.worked().toMillis() * 1e-3;
        }
        if (heard.failure != null) {
            throw heard.failure;
        }
        return new Figures(heard.frames, (System.nanoTime() - startNs) * 1e-9, processorS, stages);
    }

    private static ClipResult measured(WorkerFleet fleet, Clip clip, StageListener listener, StageTimes stages)
            throws ClipNotMeasuredException {
        StageTimes own = new StageTimes();
        try {
            return fleet.measure(clip, new StageListener() {
                @Override
                public void at(String stage, double share) {
                    own.at(stage, share);
                    listener.at(stage, share);
                }

                @Override
                public void worked(Duration processorTime) {
                    own.worked(processorTime);
                }
            });
        } finally {
            own.pause();
            synchronized (stages) {
                stages.add(own);
            }
        }
    }

    /** Counts frames; the first failure is kept. */
    private static final class Heard implements RunListener {
        private long frames;
        private ClipNotMeasuredException failure;

        @Override
        public void begun(int kept, int clips) {
            // Nothing is shown meanwhile.
        }

        @Override
        public void progress(Progress progress) {
            // Nothing is shown meanwhile.
        }

        @Override
        public void clipDone(ClipRow row, List<String> warnings, int number, int clips) {
            if (row.frames() != null) {
                frames += row.frames();
            } else if (failure == null) {
                failure = new ClipNotMeasuredException(row.stage(), row.clip() + ": " + row.reason(), null);
            }
        }

        @Override
        public void trouble(String what) {
            throw new IllegalStateException(what);
        }
    }
}
