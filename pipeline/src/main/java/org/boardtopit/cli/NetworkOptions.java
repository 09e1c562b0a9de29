package org.boardtopit.cli;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.Effort;
import org.boardtopit.clips.InputException;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.TensorEngine;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The options that several commands share: where networks come from and on how many threads they run. */
final class NetworkOptions {
    /** Each thread has work space of its own, and decoding must keep up; a first guess, not tuned. */
    private static final int MOST_CHOSEN_THREADS = 8;

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    @Option(
            names = "--networks",
            paramLabel = "DIR",
            description = "A folder with networks of your own, one sub-folder each (docs/networks.md).")
    private Path folder;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "Threads for the network, 1 to 256. Default: chosen for this machine.")
    private Integer threads;

    NetworkStore store(TensorEngine engine) throws InputException {
        if (folder != null && !Files.isDirectory(folder)) {
            throw new InputException(folder, "there is no such folder of networks");
        }
        return new NetworkStore(engine, Optional.ofNullable(folder));
    }

    /** The folder of the user's own networks. */
    Optional<Path> folder() {
        return Optional.ofNullable(folder);
    }

    /** What was said of threads, here or in the sheet; 0 when nothing was. */
    int threadsSaid(RunSettings sheet) {
        return threads != null ? threads : sheet.threads();
    }

    int threads() {
        return settings(RunSettings.DEFAULT, null, null).threads();
    }

    /** The sheet's settings with those of the command line in their place, and the threads chosen. */
    RunSettings settings(RunSettings sheet, String network, Effort effort) {
        if (threads != null && threads < 1) {
            throw new ParameterException(command.commandLine(), "--threads must be from 1 to 256, was " + threads);
        }
        int wanted = threadsSaid(sheet);
        try {
            return new RunSettings(
                    network != null ? network : sheet.network(),
                    wanted > 0 ? wanted : forThisMachine(),
                    sheet.workers(),
                    effort != null ? effort : sheet.effort());
        } catch (IllegalArgumentException e) {
            throw new ParameterException(command.commandLine(), "--network or --threads: " + e.getMessage(), e);
        }
    }

    private static int forThisMachine() {
        return Math.min(MOST_CHOSEN_THREADS, Runtime.getRuntime().availableProcessors());
    }
}
