package org.boardtopit.cli;

import java.util.Locale;
import java.util.concurrent.Callable;
import org.boardtopit.clips.InputException;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.models.NetworkEntry;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkTiming;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.SelfTestResult;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Lists, verifies and times the networks. */
@Command(
        name = "networks",
        mixinStandardHelpOptions = true,
        versionProvider = Version.class,
        sortOptions = false,
        header = "Lists the networks that can be used, and tests them on this machine.",
        description = {
            "",
            "A run makes the same test before its first clip, with the same threads,",
            "and refuses a network that computes something else than its references.",
            ""
        },
        footer = {
            "",
            "Examples:",
            "    boardtopit networks",
            "    boardtopit networks --verify --time --threads 2",
            "    boardtopit networks --verify --networks my-networks",
            "",
            "Exit codes: 0 all as it should be, 1 a network does not pass, 2 wrong input,",
            "3 a fault of the program."
        })
final class NetworksCommand implements Callable<Integer> {
    private static final int PICTURES_PER_WORKER = 100;

    private final Surroundings surroundings;

    @Option(names = "--verify", description = "Compare what every network computes here with its stored references.")
    private boolean verify;

    @Option(names = "--time", description = "Measure how fast every network is here.")
    private boolean time;

    @Mixin
    private NetworkOptions options;

    NetworksCommand(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    @Override
    public Integer call() throws InputException {
        NetworkStore store = options.store(surroundings.engine());
        int threads = options.threads();
        boolean fit = true;
        for (NetworkEntry entry : store.list()) {
            describe(entry);
            if (entry.card().isPresent()) {
                fit &= check(store, entry.card().get(), threads);
            } else {
                surroundings.console().error(entry.problem());
                fit = false;
            }
        }
        return fit ? ExitCode.DONE : ExitCode.SOME_NOT_MEASURED;
    }

    private void describe(NetworkEntry entry) {
        String origin = entry.shipped() ? "shipped" : "yours";
        String kind = entry.card()
                .map(card -> card.readsLandmarks() ? ", reads body points" : ", finds persons")
                .orElse(", cannot be used");
        surroundings.console().say(entry.name() + " (" + origin + kind + ")");
        entry.card().ifPresent(card -> surroundings.console().say("  " + card.title()));
    }

    private boolean check(NetworkStore store, NetworkCard card, int threads) {
        int workers = card.readsLandmarks() ? threads : 1; // a run finds persons on one thread
        try {
            if (verify) {
                surroundings.console().say("  " + verified(store.verify(card.name(), workers), workers));
            }
            if (time) {
                surroundings.console().say("  " + timed(store.time(card.name(), workers, PICTURES_PER_WORKER)));
            }
            return true;
        } catch (NetworkUnfitException e) {
            surroundings.console().error(e.getMessage());
            return false;
        }
    }

    private static String verified(SelfTestResult result, int workers) {
        if (result.references() == 0) {
            return "runs, but has no references to compare with";
        }
        return String.format(
                Locale.ROOT,
                "passes: %d references on %s, off by at most %.1e of the largest value and %.3f px",
                result.references(),
                threads(workers),
                result.largestRelativeDifference(),
                result.largestPointDifferencePx());
    }

    private static String timed(NetworkTiming timing) {
        return String.format(
                Locale.ROOT, "%.0f pictures a second on %s", timing.picturesPerSecond(), threads(timing.workers()));
    }

    private static String threads(int count) {
        return count == 1 ? "1 thread" : count + " threads";
    }
}
