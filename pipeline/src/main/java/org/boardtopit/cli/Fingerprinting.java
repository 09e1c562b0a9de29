package org.boardtopit.cli;

import java.io.IOException;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.pose.Look;
import org.boardtopit.run.ClipFingerprints;
import org.boardtopit.run.ClipFingerprints.Digests;
import org.boardtopit.run.FileDigests;
import org.boardtopit.run.ProgramHash;

/** The fingerprints of a run, the same for the supervisor and its workers. */
final class Fingerprinting {
    private Fingerprinting() {}

    /** The same, and every file is read. */
    static ClipFingerprints of(MeetSheet meet, RunSettings settings, NetworkStore store)
            throws NetworkUnfitException, IOException {
        return of(meet, settings, store, FileDigests::of);
    }

    /**
     * Reads the networks' cards and the program, opens no network.
     *
     * @param digests tells the content of clips and pictures
     */
    static ClipFingerprints of(MeetSheet meet, RunSettings settings, NetworkStore store, Digests digests)
            throws NetworkUnfitException, IOException {
        String measuring = String.join(
                "\n",
                store.card(settings.network()).sha256(),
                store.card(NetworkStore.DEFAULT_DETECTOR).sha256(),
                Look.of(settings.effort()).toString());
        return new ClipFingerprints(ProgramHash.of(Fingerprinting.class, NetworkStore.class), meet, measuring, digests);
    }
}
