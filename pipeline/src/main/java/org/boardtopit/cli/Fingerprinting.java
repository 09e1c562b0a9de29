package org.boardtopit.cli;

import java.io.IOException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.pose.Look;
import org.boardtopit.run.ClipDigests;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ProgramHash;

/** The fingerprints of a run, the same for the supervisor and its workers. */
final class Fingerprinting {
    private Fingerprinting() {}

    /** Reads the networks' cards and the program, opens no network. */
    static ClipFingerprints of(MeetSheet meet, RunSettings settings, NetworkStore store, ClipDigests digests)
            throws NetworkUnfitException, IOException {
        String measuring = String.join(
                "\n",
                store.card(settings.network()).sha256(),
                store.card(NetworkStore.DEFAULT_DETECTOR).sha256(),
                Look.of(settings.effort()).toString());
        return new ClipFingerprints(ProgramHash.of(Fingerprinting.class, NetworkStore.class), meet, measuring, digests);
    }
}
