package org.boardtopit.ground.opencv;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Random;
import java.util.zip.CRC32;
import java.util.zip.Deflater;
import javax.imageio.ImageIO;
import org.boardtopit.video.VideoException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

@Timeout(60)
class ReferencePictureTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(strings = {"png", "jpg"})
    void readsAPicture(String format) throws IOException {
        Path file = folder.resolve("stand." + format);
        ImageIO.write(new BufferedImage(64, 48, BufferedImage.TYPE_INT_RGB), format, file.toFile());
        try (ReferencePicture picture = ReferencePicture.read(file)) {
            assertEquals(64, picture.widthPx());
            assertEquals(48, picture.heightPx());
        }
    }

    /** A PNG file of 40000 x 40000 grey pixels whose rows are not even there (PNG specification, chunks IHDR, IDAT, IEND). */
    @Test
    void aSmallFileCannotUnfoldIntoGigabytes() throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        DataOutputStream png = new DataOutputStream(bytes);
        png.write(new byte[] {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'});
        ByteArrayOutputStream head = new ByteArrayOutputStream();
        DataOutputStream fields = new DataOutputStream(head);
        fields.writeInt(40_000);
        fields.writeInt(40_000);
        fields.write(new byte[] {8, 0, 0, 0, 0});
        chunk(png, "IHDR", head.toByteArray());
        Deflater deflater = new Deflater();
        deflater.setInput(new byte[1000]);
        deflater.finish();
        byte[] packed = new byte[100];
        int n = deflater.deflate(packed);
        chunk(png, "IDAT", java.util.Arrays.copyOf(packed, n));
        chunk(png, "IEND", new byte[0]);
        Path file = Files.write(folder.resolve("bomb.png"), bytes.toByteArray());

        String message = refusal(file);

        assertTrue(
                message.endsWith(
                        "the reference picture has 1600 million pixels, at most 250 are read; make it smaller"),
                message);
    }

    private static void chunk(DataOutputStream png, String name, byte[] content) throws IOException {
        byte[] type = name.getBytes(StandardCharsets.US_ASCII);
        CRC32 crc = new CRC32();
        crc.update(type);
        crc.update(content);
        png.writeInt(content.length);
        png.write(type);
        png.write(content);
        png.writeInt((int) crc.getValue());
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void aDamagedPictureIsRefusedOrReadInPart(int seed) throws IOException {
        Random random = new Random(seed);
        Path file = folder.resolve("stand.jpg");
        ImageIO.write(
                new BufferedImage(320, 240, BufferedImage.TYPE_INT_RGB), seed % 2 == 0 ? "png" : "jpg", file.toFile());
        byte[] bytes = Files.readAllBytes(file);
        for (int i = 0; i < 20; i++) {
            bytes[random.nextInt(bytes.length)] = (byte) random.nextInt(256);
        }
        Files.write(file, bytes);
        try (ReferencePicture picture = ReferencePicture.read(file)) {
            assertTrue(picture.widthPx() > 0);
        } catch (VideoException e) {
            assertTrue(e.getMessage().contains("stand.jpg: "), e.getMessage());
        }
    }

    @Test
    void aTextIsNotAPicture() throws IOException {
        Path file = Files.writeString(folder.resolve("stand.png"), "name,along_m\n", StandardCharsets.UTF_8);
        assertTrue(refusal(file).endsWith("stand.png: not a picture; a JPEG or PNG is needed"), refusal(file));
        Path empty = Files.createFile(folder.resolve("empty.png"));
        assertTrue(refusal(empty).contains("empty.png: not a picture but an empty file"), refusal(empty));
    }

    private static String refusal(Path file) {
        return assertThrows(
                        VideoException.class, () -> ReferencePicture.read(file).close())
                .getMessage();
    }
}
