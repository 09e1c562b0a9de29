package org.boardtopit.models;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import javax.imageio.ImageIO;

/**
 * Crops of jumpers with known truth, SYN: drawn pictures of invented athletes, none of which were used in training, cut by
 * models/convert/crops.py around the true body.
 */
final class TestPictures {
    private TestPictures() {}

    /** One crop: the px of the athlete's standing height, and the true places of the joints in px of the crop. */
    record Truth(String picture, double standingHeightPx, Map<String, Double> numbers) {
        double xPx(BodyPoint point) {
            return Objects.requireNonNull(numbers.get(column(point, "x")));
        }

        double yPx(BodyPoint point) {
            return Objects.requireNonNull(numbers.get(column(point, "y")));
        }

        private static String column(BodyPoint point, String axis) {
            return point.name().toLowerCase(java.util.Locale.ROOT) + "_" + axis + "_px";
        }
    }

    static List<Truth> truths() {
        List<String> lines = new String(read("crops/truth.csv"), StandardCharsets.UTF_8)
                .lines()
                .toList();
        String[] header = lines.get(0).split(",", -1);
        List<Truth> truths = new ArrayList<>();
        for (String line : lines.subList(1, lines.size())) {
            String[] cells = line.split(",", -1);
            Map<String, Double> numbers = new HashMap<>();
            for (int i = 2; i < cells.length; i++) {
                numbers.put(header[i], Double.valueOf(cells[i]));
            }
            truths.add(new Truth(cells[0], Double.parseDouble(cells[1]), numbers));
        }
        return truths;
    }

    /** A crop as interleaved RGB in a direct buffer. */
    static ByteBuffer rgb(String picture) {
        try (InputStream stream = TestPictures.class.getResourceAsStream("crops/" + picture + ".png")) {
            BufferedImage image = ImageIO.read(Objects.requireNonNull(stream, picture));
            ByteBuffer rgb = ByteBuffer.allocateDirect(3 * image.getWidth() * image.getHeight());
            for (int y = 0; y < image.getHeight(); y++) {
                for (int x = 0; x < image.getWidth(); x++) {
                    int pixel = image.getRGB(x, y);
                    rgb.put((byte) (pixel >> 16)).put((byte) (pixel >> 8)).put((byte) pixel);
                }
            }
            return rgb.rewind();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] read(String resource) {
        try (InputStream stream = TestPictures.class.getResourceAsStream(resource)) {
            return Objects.requireNonNull(stream, resource).readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
