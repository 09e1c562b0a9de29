package org.boardtopit.cli;

import java.nio.file.Path;
import org.boardtopit.clips.AttemptViews;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.observations.RuleSet;
import org.boardtopit.run.ClipMeasurer;
import org.boardtopit.run.LandmarkSource;

/** Makes what measures clips. */
@FunctionalInterface
interface MeasurerFactory {

    /**
     * Opens the networks, tests them on this machine, and puts the stages together.
     *
     * @throws NetworkUnfitException when a network must not be used; nothing is open then
     */
    OpenMeasurer open(Setup setup) throws NetworkUnfitException;

    /**
     * What a measurer needs to know.
     *
     * @param rules by which observations are made
     * @param settings those of the sheet with the command line's in their place; threads is 1 or more
     * @param networks where networks come from
     * @param out output folder, which exists
     * @param overlay whether overlay videos are wanted
     * @param views which clips show the same attempt
     */
    record Setup(
            MeetSheet meet,
            RuleSet rules,
            RunSettings settings,
            NetworkStore networks,
            Path out,
            boolean overlay,
            AttemptViews views) {
        public Setup {
            if (settings.threads() < 1) {
                throw new IllegalArgumentException("threads must be chosen, was " + settings.threads());
            }
        }

        /** Each clip by itself. */
        Setup(MeetSheet meet, RuleSet rules, RunSettings settings, NetworkStore networks, Path out, boolean overlay) {
            this(meet, rules, settings, networks, out, overlay, AttemptViews.NONE);
        }
    }

    /** A measurer with open networks; whoever opened it closes it. */
    interface OpenMeasurer extends ClipMeasurer, LandmarkSource, AutoCloseable {
        @Override
        void close();
    }
}
