package org.boardtopit.cli;

import org.boardtopit.clips.Effort;
import org.boardtopit.clips.RunSettings;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** The options of the commands that read landmarks: by which network, how often, and where it comes from. */
final class LandmarkOptions {
    @Option(names = "--network", paramLabel = "NAME", description = "The landmark network. Default: full.")
    private String network;

    @Option(
            names = "--effort",
            paramLabel = "LEVEL",
            converter = EffortWord.class,
            description = "How often the network looks at each frame: quick, normal or thorough. Default: normal.")
    private Effort effort;

    @Mixin
    private NetworkOptions networks;

    NetworkOptions networks() {
        return networks;
    }

    /** The sheet's settings with those of the command line in their place. */
    RunSettings settings(RunSettings sheet) {
        return networks.settings(sheet, network, effort);
    }
}
