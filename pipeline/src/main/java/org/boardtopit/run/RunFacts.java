package org.boardtopit.run;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What is known of a run before its first clip; run.json says what the maps hold.
 *
 * @param startedAt when the run began
 * @param versions of the program, Java, the libraries
 * @param hashes SHA-256 of the networks, by name
 * @param settings as the run uses them
 */
public record RunFacts(
        Instant startedAt, Map<String, String> versions, Map<String, String> hashes, Map<String, Object> settings) {

    public RunFacts {
        versions = inOrder(versions);
        hashes = inOrder(hashes);
        settings = inOrder(settings);
    }

    private static <V> Map<String, V> inOrder(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
