package org.boardtopit.report.overlay.drawing;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import javax.imageio.ImageIO;
import org.boardtopit.report.overlay.CameraScene;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class CameraPictureTest {
    private static final String DEVICE = "Telephone 7";

    @TempDir
    private Path folder;

    /** A JPEG file with the Exif segment that cameras write (CIPA DC-008): here the maker alone, tag 0x010f. */
    private Path photograph() throws IOException {
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        ImageIO.write(new BufferedImage(160, 90, BufferedImage.TYPE_3BYTE_BGR), "jpg", plain);
        ByteBuffer tiff = ByteBuffer.allocate(38).order(ByteOrder.LITTLE_ENDIAN);
        tiff.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
        tiff.putShort((short) 1)
                .putShort((short) 0x010f)
                .putShort((short) 2)
                .putInt(DEVICE.length() + 1)
                .putInt(26);
        tiff.putInt(0).put(DEVICE.getBytes(StandardCharsets.US_ASCII));
        byte[] jpeg = plain.toByteArray();
        int length = 2 + 6 + tiff.capacity();
        ByteArrayOutputStream file = new ByteArrayOutputStream();
        file.write(jpeg, 0, 2);
        file.write(
                new byte[] {(byte) 0xff, (byte) 0xe1, (byte) (length >> 8), (byte) length, 'E', 'x', 'i', 'f', 0, 0});
        file.write(tiff.array());
        file.write(jpeg, 2, jpeg.length - 2);
        return Files.write(folder.resolve("photograph.jpg"), file.toByteArray());
    }

    @Test
    void tellsNothingOfPlaceOrDevice() throws IOException {
        Path photograph = photograph();
        assertTrue(Files.readString(photograph, StandardCharsets.ISO_8859_1).contains(DEVICE));
        Path drawn = folder.resolve("drawn.jpg");

        CameraPicture.write(photograph, new CameraScene(List.of(), List.of(), List.of()), drawn);

        String bytes = Files.readString(drawn, StandardCharsets.ISO_8859_1);
        assertFalse(bytes.contains(DEVICE) || bytes.contains("Exif"));
    }
}
