package org.boardtopit.run;

import java.time.Instant;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import org.boardtopit.season.AthleteRegister;

/**
 * What is known of a run before its first clip; run.json says what the maps hold.
 *
 * @param startedAt when the run began
 * @param versions of the program, Java, the libraries
 * @param hashes SHA-256 of the networks, by name
 * @param settings as the run uses them
 * @param register the day and the athletes of the competition
 */
public record RunFacts(
        Instant startedAt,
        Map<String, String> versions,
        Map<String, String> hashes,
        Map<String, Object> settings,
        AthleteRegister register) {

    public RunFacts {
        versions = inOrder(versions);
        hashes = inOrder(hashes);
        settings = inOrder(settings);
    }

    /** Of clips of which no sheet tells whom they show. */
    public RunFacts(
            Instant startedAt, Map<String, String> versions, Map<String, String> hashes, Map<String, Object> settings) {
        this(startedAt, versions, hashes, settings, AthleteRegister.NONE);
    }

    private static <V> Map<String, V> inOrder(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }
}
