package org.boardtopit.clips;

import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import com.fasterxml.jackson.dataformat.yaml.YAMLParser;
import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.boardtopit.clips.YamlNode.Entry;
import org.boardtopit.clips.YamlNode.Kind;
import org.boardtopit.clips.YamlNode.Mapping;
import org.boardtopit.clips.YamlNode.Scalar;
import org.boardtopit.clips.YamlNode.Sequence;
import org.yaml.snakeyaml.LoaderOptions;

/**
 * Reads a YAML file into nodes that know their place.
 *
 * <p>The stream of tokens is read rather than a bound object, because only it has the line and column of every key.
 * Aliases are refused, so a small file cannot unfold into a large one; nesting and size are limited.
 */
final class YamlReader {
    private static final int DEEPEST = 10;

    private final Path file;
    private final YAMLParser parser;

    private YamlReader(Path file, YAMLParser parser) {
        this.file = file;
        this.parser = parser;
    }

    /** The mapping at the top of the file; empty when there is nothing in it but comments. */
    static Mapping read(Path file) throws InputException {
        return read(file, InputText.read(file));
    }

    /** The same of a text; the file is only named in messages. */
    static Mapping read(Path file, String text) throws InputException {
        try (YAMLParser parser = factory().createParser(text)) {
            return new YamlReader(file, parser).document();
        } catch (JsonProcessingException e) {
            throw notYaml(file, e);
        } catch (IOException e) {
            throw new InputException(file, "the file cannot be read (" + e.getMessage() + ")");
        }
    }

    private static YAMLFactory factory() {
        LoaderOptions options = new LoaderOptions();
        options.setNestingDepthLimit(2 * DEEPEST);
        options.setCodePointLimit(InputText.MOST_BYTES);
        options.setMaxAliasesForCollections(0);
        return YAMLFactory.builder().loaderOptions(options).build();
    }

    private static InputException notYaml(Path file, JsonProcessingException e) {
        JsonLocation at = e.getLocation();
        // What was read and what is wrong stand on lines of their own; lines that begin with a blank show the place.
        String problem = e.getOriginalMessage()
                .lines()
                .filter(line -> !line.isBlank() && !line.startsWith(" "))
                .collect(Collectors.joining(", "));
        String advice = problem.contains("(TAB)") ? "; indent with spaces, not with tabs" : "";
        return at == null
                ? new InputException(file, "this is not YAML: " + problem + advice)
                : new InputException(
                        file,
                        at.getLineNr(),
                        Integer.toString(at.getColumnNr()),
                        "this is not YAML: " + problem + advice);
    }

    private Mapping document() throws IOException, InputException {
        JsonToken first = parser.nextToken();
        if (first == null) {
            return new Mapping(1, 1, Map.of());
        }
        YamlNode top = node(0);
        if (parser.nextToken() != null) {
            throw here("a second document begins here; one file holds one");
        }
        if (top instanceof Mapping mapping) {
            return mapping;
        }
        if (top instanceof Scalar scalar && scalar.kind() == Kind.NOTHING) {
            return new Mapping(1, 1, Map.of());
        }
        throw new InputException(
                file, top.line(), Integer.toString(top.column()), "expected lines such as 'competition: Open Meeting'");
    }

    private YamlNode node(int depth) throws IOException, InputException {
        if (depth > DEEPEST) {
            throw here("nested deeper than " + DEEPEST + " levels");
        }
        if (parser.isCurrentAlias()) {
            throw here("aliases (*name) are not read; write the value out");
        }
        return switch (parser.currentToken()) {
            case START_OBJECT -> mapping(depth);
            case START_ARRAY -> sequence(depth);
            case VALUE_NULL -> scalar(Kind.NOTHING);
            case VALUE_TRUE, VALUE_FALSE -> scalar(Kind.TRUE_OR_FALSE);
            case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> scalar(Kind.NUMBER);
            // A key with nothing behind it comes as an empty text.
            default -> scalar(parser.getText().isEmpty() ? Kind.NOTHING : Kind.TEXT);
        };
    }

    private Scalar scalar(Kind kind) throws IOException {
        JsonLocation at = parser.currentTokenLocation();
        return new Scalar(at.getLineNr(), at.getColumnNr(), kind, parser.getText());
    }

    private Sequence sequence(int depth) throws IOException, InputException {
        JsonLocation at = parser.currentTokenLocation();
        List<YamlNode> items = new ArrayList<>();
        while (parser.nextToken() != JsonToken.END_ARRAY) {
            items.add(node(depth + 1));
        }
        return new Sequence(at.getLineNr(), at.getColumnNr(), items);
    }

    private Mapping mapping(int depth) throws IOException, InputException {
        JsonLocation at = parser.currentTokenLocation();
        Map<String, Entry> entries = new LinkedHashMap<>();
        while (parser.nextToken() != JsonToken.END_OBJECT) {
            String key = parser.currentName();
            JsonLocation keyAt = parser.currentTokenLocation();
            Entry earlier = entries.get(key);
            if (earlier != null) {
                throw here("the key " + InputException.quoted(key) + " is already on line " + earlier.line());
            }
            parser.nextToken();
            entries.put(key, new Entry(keyAt.getLineNr(), keyAt.getColumnNr(), node(depth + 1)));
        }
        return new Mapping(at.getLineNr(), at.getColumnNr(), entries);
    }

    private InputException here(String problem) {
        JsonLocation at = parser.currentTokenLocation();
        return new InputException(file, at.getLineNr(), Integer.toString(at.getColumnNr()), problem);
    }
}
