package org.boardtopit.report.tables;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Optional;
import org.boardtopit.clips.TableFormat;

/** How the tables of a finished folder are written, as its tables.json says. */
final class WrittenFormat {
    private static final long MOST_BYTES = 16L << 20;

    private WrittenFormat() {}

    /** Empty when the folder has no tables.json of the program, or a damaged one. */
    static Optional<TableFormat> in(Path folder) throws IOException {
        Path file = folder.resolve(TableSchemas.FILE_NAME);
        if (!Files.isRegularFile(file, LinkOption.NOFOLLOW_LINKS) || Files.size(file) > MOST_BYTES) {
            return Optional.empty();
        }
        try {
            JsonNode group = new JsonMapper().readTree(Files.readAllBytes(file));
            String separator = group.at("/dialect/delimiter").asText();
            return separator.length() == 1
                    ? Optional.of(new TableFormat(separator.charAt(0), decimal(group)))
                    : Optional.empty();
        } catch (JsonProcessingException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** All numbers have the same; where there is none it is a dot. */
    private static char decimal(JsonNode group) {
        String sign = group.findPath("decimalChar").asText(".");
        return sign.equals(",") ? ',' : '.';
    }
}
