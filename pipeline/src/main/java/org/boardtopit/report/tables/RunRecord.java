package org.boardtopit.report.tables;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * With what a run was made, so that its numbers can be made again, and what the numbers of each clip rest on: the file
 * run.json.
 *
 * <p>The maps keep their order. A number that is not finite is written as null, as JSON has no other word for it.
 *
 * @param startedAt and endedAt to the second, in UTC
 * @param versions of the program, Java, the libraries
 * @param hashes SHA-256 of networks and inputs, by name
 * @param settings as the run used them: text, numbers, truths, or maps and lists of these
 * @param timingsS seconds, by stage
 * @param clips those that were measured, in the order of the run
 */
public record RunRecord(
        Instant startedAt,
        Instant endedAt,
        Map<String, String> versions,
        Map<String, String> hashes,
        Map<String, Object> settings,
        Map<String, Double> timingsS,
        List<ClipRecord> clips) {

    public static final String FILE_NAME = "run.json";

    public RunRecord {
        if (endedAt.isBefore(startedAt)) {
            throw new IllegalArgumentException("endedAt must not be before startedAt");
        }
        versions = inOrder(versions);
        hashes = inOrder(hashes);
        settings = inOrder(settings);
        timingsS = inOrder(timingsS);
        clips = List.copyOf(clips);
    }

    private static <V> Map<String, V> inOrder(Map<String, V> map) {
        return Collections.unmodifiableMap(new LinkedHashMap<>(map));
    }

    /**
     * Writes the file into the output folder; an earlier one stays untouched until the new one is complete.
     *
     * @return the file
     */
    public Path write(Path folder) throws IOException {
        Path file = folder.resolve(FILE_NAME);
        JsonFile.write(file, content());
        return file;
    }

    private Map<String, Object> content() {
        Map<String, Object> content = new LinkedHashMap<>();
        content.put("started_at", startedAt.truncatedTo(ChronoUnit.SECONDS).toString());
        content.put("ended_at", endedAt.truncatedTo(ChronoUnit.SECONDS).toString());
        content.put("versions", versions);
        content.put("hashes", hashes);
        content.put("settings", settings);
        content.put("timings_s", timingsS);
        content.put("clips", clips.stream().map(ClipRecord::content).toList());
        return content;
    }
}
