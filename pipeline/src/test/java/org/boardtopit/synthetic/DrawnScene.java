package org.boardtopit.synthetic;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import javax.imageio.ImageIO;
import org.boardtopit.signal.Homography;
import org.boardtopit.signal.Point2;

/**
 * A flat background full of corners, with upright boxes that move before it; coordinates are px of the background, (0, 0) its
 * outer top-left corner. Our own (SYN).
 */
public final class DrawnScene {
    private final int width;
    private final int height;
    private final byte[] grey;
    private final List<Box> boxes = new ArrayList<>();

    /** Something that moves. */
    private record Box(Path2 path, double width, double height, int brightness, boolean flickers) {}

    /** Centre of a box at a time. */
    public interface Path2 {
        Point2 at(double timeS);
    }

    /** A background of that size: a slope, and rectangles of all sizes strewn by the seed. */
    public DrawnScene(int width, int height, long seed) {
        this.width = width;
        this.height = height;
        this.grey = new byte[width * height];
        Random random = new Random(seed);
        double[] v = new double[width * height];
        for (int i = 0; i < v.length; i++) {
            int row = i / width;
            v[i] = 90 + 40.0 * row / height;
        }
        int count = width * height / 900;
        for (int k = 0; k < count; k++) {
            int w = 6 + random.nextInt(34);
            int h = 6 + random.nextInt(34);
            int left = random.nextInt(width);
            int top = random.nextInt(height);
            double value = 40 + random.nextInt(170);
            for (int y = top; y < Math.min(height, top + h); y++) {
                for (int x = left; x < Math.min(width, left + w); x++) {
                    v[y * width + x] = 0.5 * v[y * width + x] + 0.5 * value;
                }
            }
        }
        for (int y = 1; y < height - 1; y++) {
            for (int x = 1; x < width - 1; x++) {
                double sum = 0; // a lens is never sharper than a pixel
                for (int k = 0; k < 9; k++) {
                    sum += v[(y + k / 3 - 1) * width + x + k % 3 - 1];
                }
                grey[y * width + x] = (byte) Math.round(sum / 9);
            }
        }
    }

    /** Adds a box that hides what is behind it. */
    public DrawnScene with(Path2 path, double boxWidth, double boxHeight, int brightness) {
        boxes.add(new Box(path, boxWidth, boxHeight, brightness, false));
        return this;
    }

    /** Adds a box that stays and changes its brightness all the time, like a waving flag. */
    public DrawnScene withFlicker(Point2 centre, double boxWidth, double boxHeight) {
        boxes.add(new Box(t -> centre, boxWidth, boxHeight, 120, true));
        return this;
    }

    /** The whole background without boxes as a PNG file. */
    public Path writeBackground(Path file) {
        BufferedImage image = new BufferedImage(width, height, BufferedImage.TYPE_BYTE_GRAY);
        image.getRaster().setDataElements(0, 0, width, height, grey);
        try {
            ImageIO.write(image, "png", file.toFile());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return file;
    }

    /** Draws what a camera sees into blue, green, red pixels. */
    void draw(Homography frameToScene, double timeS, Random noise, int widthPx, int heightPx, ByteBuffer bgr) {
        for (int y = 0; y < heightPx; y++) {
            for (int x = 0; x < widthPx; x++) {
                Point2 p = frameToScene.apply(x + 0.5, y + 0.5);
                double value = boxAt(p, timeS);
                value = Double.isNaN(value) ? background(p.x() - 0.5, p.y() - 0.5) : value;
                value += 2 * (noise.nextDouble() + noise.nextDouble() - 1);
                byte b = (byte) Math.round(Math.max(0, Math.min(255, value)));
                int i = 3 * (y * widthPx + x);
                bgr.put(i, b);
                bgr.put(i + 1, b);
                bgr.put(i + 2, b);
            }
        }
    }

    private double boxAt(Point2 p, double timeS) {
        double value = Double.NaN;
        for (Box box : boxes) {
            Point2 c = box.path().at(timeS);
            if (Math.abs(p.x() - c.x()) < box.width() / 2 && Math.abs(p.y() - c.y()) < box.height() / 2) {
                // Stripes across, so that a box is not one plain surface.
                double stripe = 25 * Math.signum(Math.sin((p.y() - c.y()) / 5));
                value = box.brightness() + stripe + (box.flickers() ? 80 * Math.sin(40 * timeS) : 0);
            }
        }
        return value;
    }

    private double background(double x, double y) {
        int ix = (int) Math.floor(x);
        int iy = (int) Math.floor(y);
        if (ix < 0 || iy < 0 || ix >= width - 1 || iy >= height - 1) {
            return 0;
        }
        double u = x - ix;
        double v = y - iy;
        int i = iy * width + ix;
        return (1 - v) * ((1 - u) * at(i) + u * at(i + 1)) + v * ((1 - u) * at(i + width) + u * at(i + width + 1));
    }

    private int at(int i) {
        return grey[i] & 0xff;
    }
}
