package org.boardtopit.clips;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import org.boardtopit.clips.YamlNode.Entry;
import org.boardtopit.clips.YamlNode.Kind;
import org.boardtopit.clips.YamlNode.Mapping;
import org.boardtopit.clips.YamlNode.Scalar;
import org.boardtopit.clips.YamlNode.Sequence;

/**
 * The keys of one mapping, read strictly: a key that is not known is refused at once, a value of the wrong type or out
 * of range when it is asked for. A key with nothing behind it counts as not given.
 */
public final class YamlKeys {
    private static final String DECIMAL = "[+-]?[0-9]+(\\.[0-9]+)?";
    private static final int LONGEST_TEXT = 200;

    /** Ten times the athletes of a large competition; each is compared with all others. */
    private static final int MOST_ITEMS = 5000;

    /** About eight lines: more than a table's cell can bear. */
    private static final int LONGEST_PROSE = 800;

    private final Path file;
    private final Mapping mapping;

    YamlKeys(Path file, Mapping mapping, List<String> known) throws InputException {
        this.file = file;
        this.mapping = mapping;
        for (Map.Entry<String, Entry> entry : mapping.entries().entrySet()) {
            if (!known.contains(entry.getKey())) {
                throw unknown(entry.getKey(), entry.getValue(), known);
            }
        }
    }

    /** The keys at the top of a file. */
    public static YamlKeys read(Path file, List<String> known) throws InputException {
        return new YamlKeys(file, YamlReader.read(file), known);
    }

    /**
     * The same for a text that is not in a file of the user's.
     *
     * @param name stands for the file in messages
     */
    public static YamlKeys read(Path name, String text, List<String> known) throws InputException {
        return new YamlKeys(name, YamlReader.read(name, text), known);
    }

    private InputException unknown(String key, Entry at, List<String> known) {
        String hint = NearMiss.hint(key, known);
        String problem = "unknown key " + InputException.quoted(key)
                + (hint.isEmpty() ? "; known here are " + String.join(", ", known) : hint);
        return new InputException(file, at.line(), Integer.toString(at.column()), problem);
    }

    /** Text in or without quotes; empty when not given. */
    public String text(String key) throws InputException {
        return text(key, LONGEST_TEXT);
    }

    /** Some sentences; empty when not given. */
    public String prose(String key) throws InputException {
        return text(key, LONGEST_PROSE);
    }

    private String text(String key, int longest) throws InputException {
        Scalar scalar = scalar(key, "a text");
        if (scalar == null) {
            return "";
        }
        String text = scalar.text().strip();
        if (text.length() > longest) {
            throw at(scalar, key + " is longer than " + longest + " characters");
        }
        if (text.chars().anyMatch(Character::isISOControl)) {
            throw at(scalar, key + " must stay on one line and hold no control characters");
        }
        return text;
    }

    /** A number within a range; NaN when not given. */
    public double number(String key, double least, double most, String example) throws InputException {
        Scalar scalar = scalar(key, "a number such as " + example);
        if (scalar == null) {
            return Double.NaN;
        }
        if (scalar.kind() != Kind.NUMBER || !scalar.text().matches(DECIMAL)) {
            throw at(
                    scalar,
                    key + " must be a number such as " + example + ", with a dot and without quotes, was "
                            + InputException.quoted(scalar.text()));
        }
        double value = Double.parseDouble(scalar.text());
        if (value < least || value > most) {
            throw at(scalar, key + " must be from " + plain(least) + " to " + plain(most) + ", was " + scalar.text());
        }
        return value;
    }

    /**
     * Words out of known ones, as a list or a single one; none when not given.
     *
     * @param what one of them is called in messages
     */
    public List<String> words(String key, Collection<String> known, String what) throws InputException {
        YamlNode node = node(key);
        if (node == null) {
            return List.of();
        }
        List<String> words = new ArrayList<>();
        for (YamlNode item : node instanceof Sequence sequence ? sequence.items() : List.of(node)) {
            if (!(item instanceof Scalar scalar)) {
                throw at(item, key + " must be a list of names such as [" + what + "]");
            }
            String word = scalar.text().strip();
            if (!known.contains(word)) {
                throw at(
                        item,
                        key + ": there is no " + what + " " + InputException.quoted(word) + NearMiss.hint(word, known));
            }
            words.add(word);
        }
        return words;
    }

    /** True when there is something behind the key. */
    public boolean has(String key) {
        return node(key) != null;
    }

    /** True when there are further keys behind the key. */
    public boolean holdsKeys(String key) {
        return node(key) instanceof Mapping;
    }

    /** A whole number within a range. */
    public OptionalInt whole(String key, int least, int most, String example) throws InputException {
        double value = number(key, least, most, example);
        if (Double.isNaN(value)) {
            return OptionalInt.empty();
        }
        if (value != Math.rint(value)) {
            throw problem(key, key + " must be a whole number such as " + example);
        }
        return OptionalInt.of((int) value);
    }

    private static String plain(double limit) {
        return limit == Math.rint(limit) ? Long.toString((long) limit) : Double.toString(limit);
    }

    /** One of a few words. */
    public <T> Optional<T> oneOf(String key, Map<String, T> words) throws InputException {
        String word = text(key);
        if (word.isEmpty()) {
            return Optional.empty();
        }
        T value = words.get(word);
        if (value == null) {
            throw problem(
                    key,
                    key + " must be one of " + String.join(", ", words.keySet()) + ", was "
                            + InputException.quoted(word));
        }
        return Optional.of(value);
    }

    /** Some words of a fixed list, each once, as a list such as {@code [one, other]}; none when not given. */
    public <T> Set<T> someOf(String key, Map<String, T> words) throws InputException {
        YamlNode node = node(key);
        if (node == null) {
            return Set.of();
        }
        String all = String.join(", ", words.keySet());
        if (!(node instanceof Sequence sequence)) {
            throw at(node, key + " must be a list such as [" + all + "]");
        }
        Set<T> found = new LinkedHashSet<>();
        for (YamlNode item : sequence.items()) {
            T value = item instanceof Scalar scalar ? words.get(scalar.text().strip()) : null;
            if (value == null || !found.add(value)) {
                String was = item instanceof Scalar scalar ? ", was " + InputException.quoted(scalar.text()) : "";
                throw at(item, key + " must have some of " + all + ", each once" + was);
            }
        }
        return found;
    }

    public Optional<LocalDate> date(String key) throws InputException {
        String text = text(key);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        try {
            return Optional.of(LocalDate.parse(text));
        } catch (DateTimeParseException e) {
            throw problem(
                    key,
                    key + " must be a day of the calendar written year-month-day such as 2026-06-14, was "
                            + InputException.quoted(text));
        }
    }

    /** An existing file in the folder of the YAML file or below it; symbolic links may not lead out of it either. */
    public Optional<Path> file(String key) throws InputException {
        String text = text(key);
        if (text.isEmpty()) {
            return Optional.empty();
        }
        Path folder = file.toAbsolutePath().normalize().getParent();
        try {
            Path wanted = Path.of(text);
            Path found = folder.resolve(wanted).normalize();
            if (wanted.isAbsolute() || !found.startsWith(folder)) {
                throw outside(key, text);
            }
            if (!Files.isRegularFile(found)) {
                throw problem(
                        key,
                        key + ": there is no file " + InputException.quoted(text) + " in the folder of "
                                + file.getFileName());
            }
            if (!found.toRealPath().startsWith(folder.toRealPath())) {
                throw outside(key, text);
            }
            return Optional.of(found);
        } catch (InvalidPathException | IOException e) {
            throw problem(key, key + ": " + InputException.quoted(text) + " cannot be read as a file");
        }
    }

    private InputException outside(String key, String text) {
        return problem(
                key,
                key + " must be a path relative to the folder of " + file.getFileName()
                        + " that does not leave it, was " + InputException.quoted(text));
    }

    /** The mapping under a key, with its own known keys; an empty one when not given. */
    public YamlKeys keys(String key, List<String> known) throws InputException {
        YamlNode node = node(key);
        if (node == null) {
            return new YamlKeys(file, new Mapping(mapping.line(), mapping.column(), Map.of()), known);
        }
        if (node instanceof Mapping inner) {
            return new YamlKeys(file, inner, known);
        }
        throw at(node, key + " must hold lines such as '" + known.get(0) + ": ...'");
    }

    /** The mappings of a list, each with the same known keys. */
    public List<YamlKeys> list(String key, List<String> known) throws InputException {
        YamlNode node = node(key);
        if (node == null) {
            return List.of();
        }
        if (!(node instanceof Sequence sequence)) {
            throw at(node, key + " must be a list; begin each item with '- " + known.get(0) + ": ...'");
        }
        if (sequence.items().size() > MOST_ITEMS) {
            throw at(
                    sequence.items().get(MOST_ITEMS),
                    key + " has " + sequence.items().size() + " items, at most " + MOST_ITEMS + " are read");
        }
        List<YamlKeys> items = new ArrayList<>();
        for (YamlNode item : sequence.items()) {
            if (!(item instanceof Mapping inner)) {
                throw at(item, "each item of " + key + " must begin with '- " + known.get(0) + ": ...'");
            }
            items.add(new YamlKeys(file, inner, known));
        }
        return items;
    }

    /** An error at the value of a key, or at the beginning of the mapping when the key is not given. */
    public InputException problem(String key, String problem) {
        Entry entry = mapping.entries().get(key);
        return at(entry == null ? mapping : entry.value(), problem);
    }

    private Scalar scalar(String key, String wanted) throws InputException {
        YamlNode node = node(key);
        if (node == null || node instanceof Scalar) {
            return (Scalar) node;
        }
        throw at(
                node,
                key + " must be " + wanted + ", was " + (node instanceof Sequence ? "a list" : "a group of keys"));
    }

    /** Null when the key is absent or has nothing behind it. */
    private YamlNode node(String key) {
        Entry entry = mapping.entries().get(key);
        if (entry == null || (entry.value() instanceof Scalar scalar && scalar.kind() == Kind.NOTHING)) {
            return null;
        }
        return entry.value();
    }

    private InputException at(YamlNode node, String problem) {
        return new InputException(file, node.line(), Integer.toString(node.column()), problem);
    }
}
