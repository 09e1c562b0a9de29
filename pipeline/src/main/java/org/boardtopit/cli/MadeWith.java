package org.boardtopit.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.boardtopit.clips.RunSettings;
import org.boardtopit.models.NetworkStore;
import org.boardtopit.models.NetworkUnfitException;
import org.boardtopit.models.TensorEngine;

/** What run.json says of the program and the networks, however the results were made. */
final class MadeWith {
    /** Where the settings of run.json have the file of corrections. */
    static final String CORRECTIONS = "corrections";

    private MadeWith() {}

    static Map<String, String> versions(TensorEngine engine) {
        Map<String, String> versions = new LinkedHashMap<>();
        versions.put("boardtopit", Version.number());
        versions.put("java", Runtime.version().toString());
        versions.put("system", System.getProperty("os.name") + " " + System.getProperty("os.arch"));
        versions.put("network_engine", engine.description());
        return versions;
    }

    /** SHA-256 of the networks; reads their cards and opens none. */
    static Map<String, String> hashes(RunSettings settings, NetworkStore store) throws NetworkUnfitException {
        Map<String, String> hashes = new LinkedHashMap<>();
        for (String name : List.of(settings.network(), NetworkStore.DEFAULT_DETECTOR)) {
            hashes.put(name, store.card(name).sha256());
        }
        return hashes;
    }
}
