package org.boardtopit.report.tables;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The run.json of an earlier run: what tells an output folder from any other, and how long its contents may be kept. */
public final class WrittenRun {
    /** Where the settings of run.json have the last day of retention. */
    public static final String RETENTION = "retention";

    private static final String TIDIED = "tidied_on";
    private static final long MOST_BYTES = 64L << 20;

    private final Path file;
    private final Map<String, Object> content;

    private WrittenRun(Path file, Map<String, Object> content) {
        this.file = file;
        this.content = content;
    }

    /** Empty when the folder is not one that a run has written. */
    public static Optional<WrittenRun> in(Path folder) throws IOException {
        Path file = folder.resolve(RunRecord.FILE_NAME);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || Files.size(file) > MOST_BYTES) {
            return Optional.empty();
        }
        try {
            Map<String, Object> content = new JsonMapper()
                    .readValue(
                            Files.readString(file, StandardCharsets.UTF_8),
                            new TypeReference<LinkedHashMap<String, Object>>() {});
            boolean ours = content != null
                    && content.get("versions") instanceof Map<?, ?> versions
                    && versions.containsKey("boardtopit");
            return ours ? Optional.of(new WrittenRun(file, content)) : Optional.empty();
        } catch (JsonProcessingException e) {
            return Optional.empty();
        }
    }

    /** Of the program that wrote it. */
    public String version() {
        return content.get("versions") instanceof Map<?, ?> versions ? String.valueOf(versions.get("boardtopit")) : "";
    }

    /** True when people were taken out of the folder. */
    public boolean isTidied() {
        return content.containsKey(TIDIED);
    }

    /** The last day on which everything may be kept; empty when the run was not told. */
    public Optional<LocalDate> retention() {
        try {
            return content.get("settings") instanceof Map<?, ?> settings
                            && settings.get(RETENTION) instanceof String day
                    ? Optional.of(LocalDate.parse(day))
                    : Optional.empty();
        } catch (DateTimeException e) {
            return Optional.empty(); // changed by hand; as good as not told
        }
    }

    /** The day on which people were taken out of the folder; empty when they were not. */
    public Optional<String> tidiedOn() {
        return Optional.ofNullable(content.get(TIDIED)).map(Object::toString);
    }

    /** What the run was told, by the names that run.json has; empty when it has none. */
    public Map<String, Object> settings() {
        Map<String, Object> settings = new LinkedHashMap<>();
        if (content.get("settings") instanceof Map<?, ?> written) {
            written.forEach((name, value) -> settings.put(String.valueOf(name), value));
        }
        return settings;
    }

    /** Whoever corrected, and the notes, which may name anybody. */
    private static void removeAuthors(Object clip) {
        if (clip instanceof Map<?, ?> one && one.get("corrections") instanceof List<?> corrections) {
            corrections.forEach(c -> {
                if (c instanceof Map<?, ?> correction) {
                    correction.keySet().removeAll(Set.of("by", "note"));
                }
            });
        }
    }

    /** Notes the day in the file, for whoever wonders where the pictures are. */
    public void writeTidied(LocalDate today) throws IOException {
        if (content.get("clips") instanceof List<?> clips) {
            clips.forEach(WrittenRun::removeAuthors);
        }
        content.put(TIDIED, today.toString());
        JsonFile.write(file, content);
    }
}
