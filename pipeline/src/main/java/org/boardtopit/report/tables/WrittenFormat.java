package org.boardtopit.report.tables;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import org.boardtopit.clips.TableFormat;

/** How the tables of a finished folder are written, as its tables.json and the tables themselves say. */
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
                    ? Optional.of(new TableFormat(
                            separator.charAt(0),
                            decimal(group),
                            hasByteOrderMark(folder.resolve(ClipRow.TABLE.fileName())),
                            Files.isRegularFile(folder.resolve(WorkbookCopy.FILE_NAME), LinkOption.NOFOLLOW_LINKS)))
                    : Optional.empty();
        } catch (JsonProcessingException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    private static boolean hasByteOrderMark(Path table) throws IOException {
        if (!Files.isRegularFile(table, LinkOption.NOFOLLOW_LINKS)) {
            return false;
        }
        try (InputStream in = Files.newInputStream(table)) {
            return Arrays.equals(in.readNBytes(3), "\uFEFF".getBytes(StandardCharsets.UTF_8));
        }
    }

    /** All numbers have the same; where there is none it is a dot. */
    private static char decimal(JsonNode group) {
        String sign = group.findPath("decimalChar").asText(".");
        return sign.equals(",") ? ',' : '.';
    }
}
