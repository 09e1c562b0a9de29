package org.boardtopit.models;

import com.fasterxml.jackson.annotation.JsonSubTypes;
import com.fasterxml.jackson.annotation.JsonTypeInfo;
import com.fasterxml.jackson.annotation.JsonTypeName;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.exc.MismatchedInputException;
import com.fasterxml.jackson.databind.exc.UnrecognizedPropertyException;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;

/**
 * What there is to know about one network: how to feed it, how to read it, where it comes from and what it is poor at.
 * It is the content of {@code card.json}; docs/networks.md explains every key.
 *
 * @param name short name by which the network is chosen: lower-case letters, digits and hyphens
 * @param title one line for lists
 * @param file the TorchScript file beside the card
 * @param sha256 of that file, 64 hexadecimal digits
 * @param output how its tensors are read; decides whether it finds persons or landmarks
 * @param points for landmark networks, the body point of every output channel, in order; null for a channel that has none
 *     of ours. Empty for detectors
 * @param sdFactor the advised factor on the reported standard deviations, 1 when they can be taken as they are
 * @param references names of the stored references: {@code references/<name>.png} and {@code .json} beside the card
 * @param licence name of the licence of the network
 * @param sources the files it was made from
 * @param training how it was trained, in a few sentences
 * @param limits what it is poor at, a sentence each
 */
public record NetworkCard(
        String name,
        String title,
        String file,
        String sha256,
        Input input,
        Output output,
        List<BodyPoint> points,
        double sdFactor,
        List<String> references,
        String licence,
        List<Source> sources,
        String training,
        List<String> limits) {

    private static final ObjectReader READER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_MISSING_CREATOR_PROPERTIES)
            .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
            .build()
            .readerFor(NetworkCard.class);

    public NetworkCard {
        requireMatch("name", name, "[a-z0-9-]+");
        requireMatch("file", file, "[A-Za-z0-9._-]+");
        requireMatch("sha256", sha256, "[0-9a-f]{64}");
        Objects.requireNonNull(title, "title must be given");
        Objects.requireNonNull(input, "input must be given");
        Objects.requireNonNull(output, "output must be given");
        Objects.requireNonNull(licence, "licence must be given");
        Objects.requireNonNull(training, "training must be given");
        points = Collections.unmodifiableList(new ArrayList<>(Objects.requireNonNull(points, "points must be given")));
        references = List.copyOf(Objects.requireNonNull(references, "references must be given"));
        references.forEach(r -> requireMatch("references", r, "[A-Za-z0-9._-]+"));
        sources = List.copyOf(Objects.requireNonNull(sources, "sources must be given"));
        limits = List.copyOf(Objects.requireNonNull(limits, "limits must be given"));
        if (!(sdFactor > 0 && sdFactor <= 10)) {
            throw new IllegalArgumentException("sdFactor must be in (0, 10], was " + sdFactor);
        }
        requirePointsFit(output, points);
    }

    /** True for a network that reads body points, false for one that finds persons. */
    public boolean readsLandmarks() {
        return !(output instanceof AnchorBoxes);
    }

    /**
     * Reads a card.
     *
     * @param place where the text comes from, for messages
     * @throws NetworkUnfitException naming the place and what is wrong
     */
    public static NetworkCard parse(String json, String place) throws NetworkUnfitException {
        try {
            return READER.readValue(json);
        } catch (JsonProcessingException e) {
            String at = e.getLocation() == null ? "" : ":" + e.getLocation().getLineNr();
            throw new NetworkUnfitException(place + at + ": " + reason(e), e);
        }
    }

    private static String reason(JsonProcessingException e) {
        if (e instanceof UnrecognizedPropertyException unknown) {
            return "there is no key " + unknown.getPropertyName();
        }
        if (e instanceof MismatchedInputException && e.getOriginalMessage().startsWith("Missing creator property '")) {
            return "key " + e.getOriginalMessage().split("'", -1)[1] + " is missing";
        }
        return e.getCause() instanceof RuntimeException checked ? checked.getMessage() : e.getOriginalMessage();
    }

    private static void requireMatch(String key, String value, String pattern) {
        if (value == null || !value.matches(pattern)) {
            throw new IllegalArgumentException(key + " must match " + pattern + ", was " + value);
        }
    }

    private static void requireTensor(int tensor) {
        if (tensor < 0 || tensor > 15) {
            throw new IllegalArgumentException("output.tensor must be 0 to 15, was " + tensor);
        }
    }

    private static void requirePointsFit(Output output, List<BodyPoint> points) {
        if (output instanceof AnchorBoxes) {
            if (!points.isEmpty()) {
                throw new IllegalArgumentException("points must be empty for a detector");
            }
            return;
        }
        Set<BodyPoint> seen = EnumSet.noneOf(BodyPoint.class);
        for (BodyPoint point : points) {
            if (point != null && !seen.add(point)) {
                throw new IllegalArgumentException("points must name a body point once, " + point + " is named twice");
            }
        }
        if (seen.isEmpty()) {
            throw new IllegalArgumentException("points must name at least one body point");
        }
    }

    /**
     * The picture as the network wants it: one square picture of a batch of one.
     *
     * @param sizePx side of the square
     * @param channels order of the colours
     * @param layout order of the numbers: rows, columns, colours ({@code nhwc}) or colours, rows, columns ({@code nchw})
     * @param values what is handed over: {@code bytes} 0 to 255, which the network brings to its own range, or
     *     {@code floats}, which this program computes as byte * scale + offset
     * @param scale three numbers, one per colour in the order of {@code channels}; of information only for {@code bytes}
     * @param offset three numbers, as scale
     */
    public record Input(
            int sizePx, Channels channels, Layout layout, Values values, List<Double> scale, List<Double> offset) {
        public Input {
            if (sizePx < 32 || sizePx > 1024) {
                throw new IllegalArgumentException("input.sizePx must be 32 to 1024, was " + sizePx);
            }
            Objects.requireNonNull(channels, "input.channels must be rgb or bgr");
            Objects.requireNonNull(layout, "input.layout must be nhwc or nchw");
            Objects.requireNonNull(values, "input.values must be bytes or floats");
            scale = requireThree("input.scale", scale);
            offset = requireThree("input.offset", offset);
        }

        private static List<Double> requireThree(String key, List<Double> numbers) {
            if (numbers == null || numbers.size() != 3 || numbers.stream().anyMatch(Objects::isNull)) {
                throw new IllegalArgumentException(key + " must have three numbers, was " + numbers);
            }
            return List.copyOf(numbers);
        }
    }

    /** Order of the colours of a pixel. */
    public enum Channels {
        rgb,
        bgr
    }

    /** Order of the numbers of a picture. */
    public enum Layout {
        nhwc,
        nchw
    }

    /** Type of the numbers of a picture. */
    public enum Values {
        bytes,
        floats
    }

    /** How the tensors of a network are read. */
    @JsonTypeInfo(use = JsonTypeInfo.Id.NAME, property = "kind")
    @JsonSubTypes({
        @JsonSubTypes.Type(HeatMaps.class),
        @JsonSubTypes.Type(PlainPoints.class),
        @JsonSubTypes.Type(AnchorBoxes.class)
    })
    public sealed interface Output permits HeatMaps, PlainPoints, AnchorBoxes {}

    /**
     * One square map per point, channels first; see {@link HeatMapReader}.
     *
     * @param tensor place of the tensor among the network's outputs, from 0
     * @param cells side of a map
     * @param weights {@code logits}: the share of a cell is the soft-max; {@code shares}: it is the cell's value over the
     *     sum of the map's positive values
     * @param blurPx standard deviation of the blur that the training put on the maps, which is taken off
     */
    @JsonTypeName("heat_maps")
    public record HeatMaps(int tensor, int cells, Weights weights, double blurPx) implements Output {
        public HeatMaps {
            requireTensor(tensor);
            if (cells < 8 || cells > 512) {
                throw new IllegalArgumentException("output.cells must be 8 to 512, was " + cells);
            }
            Objects.requireNonNull(weights, "output.weights must be logits or shares");
            if (!(blurPx >= 0 && blurPx < 100)) {
                throw new IllegalArgumentException("output.blurPx must be 0 to 100, was " + blurPx);
            }
        }
    }

    /** What the number of a heat map's cell is. */
    public enum Weights {
        logits,
        shares
    }

    /**
     * Some numbers per point, x and y first.
     *
     * @param tensor place of the tensor among the network's outputs, from 0
     * @param numbersPerPoint 2 or more
     * @param unit {@code pixels} of the input picture, or {@code fractions} of its side
     * @param score place of the point's score among its numbers; null when there is none
     * @param scoreAs {@code probability} 0 to 1, or {@code logit}
     * @param sdPx standard deviation to take for every point, as the network says nothing about it
     */
    @JsonTypeName("points")
    public record PlainPoints(int tensor, int numbersPerPoint, Unit unit, Integer score, Score scoreAs, double sdPx)
            implements Output {
        public PlainPoints {
            requireTensor(tensor);
            if (numbersPerPoint < 2 || numbersPerPoint > 16) {
                throw new IllegalArgumentException("output.numbersPerPoint must be 2 to 16, was " + numbersPerPoint);
            }
            Objects.requireNonNull(unit, "output.unit must be pixels or fractions");
            Objects.requireNonNull(scoreAs, "output.scoreAs must be probability or logit");
            if (score != null && (score < 2 || score >= numbersPerPoint)) {
                throw new IllegalArgumentException("output.score must be 2 to numbersPerPoint - 1, was " + score);
            }
            if (!(sdPx > 0 && sdPx < 1000)) {
                throw new IllegalArgumentException("output.sdPx must be more than 0, was " + sdPx);
            }
        }
    }

    /** Unit of plain points. */
    public enum Unit {
        pixels,
        fractions
    }

    /** Scale of the score of plain points. */
    public enum Score {
        probability,
        logit
    }

    /** Boxes with two body key points against fixed anchors, and their scores; see {@link DetectionDecoder}. */
    @JsonTypeName("anchor_boxes")
    public record AnchorBoxes() implements Output {}

    /**
     * A file that the network was made from.
     *
     * @param origin the published package, or "this project"
     * @param version of the package; empty when it has none
     * @param file name in the package
     * @param sha256 of the file
     * @param change what was done with it
     */
    public record Source(String origin, String version, String file, String sha256, String change) {
        public Source {
            Objects.requireNonNull(origin, "sources.origin must be given");
            Objects.requireNonNull(version, "sources.version must be given");
            Objects.requireNonNull(file, "sources.file must be given");
            Objects.requireNonNull(change, "sources.change must be given");
            requireMatch("sources.sha256", sha256, "[0-9a-f]{64}");
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%s %s %s (%s)", origin, version, file, change);
        }
    }
}
