package org.boardtopit.models;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.List;
import javax.imageio.ImageIO;

/**
 * A picture and what the network must answer on it, made by another program than the one that runs the network here.
 *
 * <p>The picture is {@code <name>.png}; the answer is {@code <name>.json}: every {@code stride}-th number of every output
 * tensor, with the tensor's length and its largest absolute value, and, if given, the points read from it in the order of
 * {@link LandmarkReading#toArray()}, one row per entry of the card's points.
 */
final class NetworkReference {

    /**
     * The stored answer.
     *
     * @param points null when there are none
     */
    record Answer(int stride, List<TensorSample> tensors, List<List<Float>> points) {
        Answer {
            if (stride < 1) {
                throw new IllegalArgumentException("stride must be at least 1, was " + stride);
            }
            tensors = List.copyOf(tensors);
            points = points == null ? null : List.copyOf(points);
        }
    }

    /**
     * Some numbers of one tensor.
     *
     * @param count numbers of the whole tensor
     * @param max largest absolute value of the whole tensor
     */
    record TensorSample(int count, float max, List<Float> values) {
        TensorSample {
            if (!(max > 0)) {
                throw new IllegalArgumentException("max must be more than 0, was " + max);
            }
            values = List.copyOf(values);
        }
    }

    private static final ObjectReader READER = JsonMapper.builder()
            .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
            .build()
            .readerFor(Answer.class);

    private final String name;
    private final ByteBuffer rgb;
    private final Answer answer;

    private NetworkReference(String name, ByteBuffer rgb, Answer answer) {
        this.name = name;
        this.rgb = rgb;
        this.answer = answer;
    }

    /** Reads one reference of a network. */
    static NetworkReference read(NetworkFiles files, NetworkCard card, String name) throws NetworkUnfitException {
        String path = "references/" + name;
        try {
            ByteBuffer rgb = picture(files.read(path + ".png"), card.input().sizePx());
            return new NetworkReference(name, rgb, READER.readValue(files.read(path + ".json")));
        } catch (IOException | RuntimeException e) {
            throw new NetworkUnfitException(
                    files.place() + ": reference " + path + " cannot be read: " + e.getMessage(), e);
        }
    }

    private static ByteBuffer picture(byte[] png, int sizePx) throws IOException {
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(png));
        if (image == null || image.getWidth() != sizePx || image.getHeight() != sizePx) {
            throw new IOException("a PNG picture of " + sizePx + " x " + sizePx + " px is expected");
        }
        ByteBuffer rgb = ByteBuffer.allocateDirect(3 * sizePx * sizePx);
        for (int pixel : image.getRGB(0, 0, sizePx, sizePx, null, 0, sizePx)) {
            rgb.put((byte) (pixel >> 16)).put((byte) (pixel >> 8)).put((byte) pixel);
        }
        return rgb.rewind();
    }

    String name() {
        return name;
    }

    /** The picture: interleaved RGB, direct. */
    ByteBuffer rgb() {
        return rgb.duplicate();
    }

    Answer answer() {
        return answer;
    }
}
