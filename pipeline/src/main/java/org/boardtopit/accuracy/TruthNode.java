package org.boardtopit.accuracy;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.boardtopit.clips.InputException;

/** An object of a JSON file that knows its place, so that what is missing or wrong in it can be said in one line. */
final class TruthNode {
    private static final JsonMapper MAPPER = JsonMapper.builder(JsonFactory.builder()
                    .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
                    .build())
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build();

    private final Path file;
    private final String path;
    private final JsonNode node;

    private TruthNode(Path file, String path, JsonNode node) {
        this.file = file;
        this.path = path;
        this.node = node;
    }

    /** The object at the top of the file. */
    static TruthNode read(Path file) throws InputException {
        if (!Files.isRegularFile(file)) {
            throw new InputException(file, "there is no such file");
        }
        try {
            TruthNode top = new TruthNode(file, "", MAPPER.readTree(file.toFile()));
            if (!top.node.isObject()) {
                throw new InputException(file, "must hold a JSON object");
            }
            return top;
        } catch (JsonProcessingException e) {
            JsonLocation at = e.getLocation();
            String problem = "this is not JSON: " + e.getOriginalMessage();
            throw at == null
                    ? new InputException(file, problem)
                    : new InputException(file, at.getLineNr(), Integer.toString(at.getColumnNr()), problem);
        } catch (IOException e) {
            throw new InputException(
                    file, "the file cannot be read (" + e.getClass().getSimpleName() + ")");
        }
    }

    boolean has(String key) {
        return node.hasNonNull(key);
    }

    double number(String key) throws InputException {
        JsonNode value = node.get(key);
        if (value == null || !value.isNumber()) {
            throw problem(key, "must be a number");
        }
        return value.asDouble();
    }

    /** A number above 0. */
    double positive(String key) throws InputException {
        double value = number(key);
        if (!(value > 0)) {
            throw problem(key, "must be above 0, was " + value);
        }
        return value;
    }

    String text(String key) throws InputException {
        JsonNode value = node.get(key);
        if (value == null || !value.isTextual()) {
            throw problem(key, "must be a text");
        }
        return value.asText();
    }

    TruthNode object(String key) throws InputException {
        JsonNode value = node.get(key);
        if (value == null || !value.isObject()) {
            throw problem(key, "must be an object");
        }
        return new TruthNode(file, place(key), value);
    }

    /** The objects of a list that is not empty. */
    List<TruthNode> objects(String key) throws InputException {
        JsonNode list = list(key);
        List<TruthNode> items = new ArrayList<>();
        for (int i = 0; i < list.size(); i++) {
            String item = key + "[" + i + "]";
            if (!list.get(i).isObject()) {
                throw problem(item, "must be an object");
            }
            items.add(new TruthNode(file, place(item), list.get(i)));
        }
        return items;
    }

    /** All numbers of a list, or of a list of lists one after the other. */
    List<Double> numbers(String key, int count) throws InputException {
        List<Double> numbers = new ArrayList<>();
        boolean sound = true;
        for (JsonNode item : list(key)) {
            for (JsonNode value : item.isArray() ? item : List.of(item)) {
                sound &= value.isNumber();
                numbers.add(value.asDouble());
            }
        }
        if (!sound || numbers.size() != count) {
            throw problem(key, "must hold " + count + " numbers");
        }
        return numbers;
    }

    private JsonNode list(String key) throws InputException {
        JsonNode value = node.get(key);
        if (value == null || !value.isArray() || value.isEmpty()) {
            throw problem(key, "must be a list that is not empty");
        }
        return value;
    }

    InputException problem(String key, String problem) {
        return new InputException(file, place(key) + " " + problem);
    }

    private String place(String key) {
        return path.isEmpty() ? key : path + "." + key;
    }
}
