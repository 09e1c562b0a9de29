package org.boardtopit.report.overlay.drawing;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.file.Path;
import org.boardtopit.report.tables.WholeFile;
import org.bytedeco.javacpp.BytePointer;
import org.bytedeco.javacpp.IntPointer;
import org.bytedeco.opencv.global.opencv_imgcodecs;
import org.bytedeco.opencv.opencv_core.Mat;

/** Writes pictures as JPEG, whole or not at all; nothing but the pixels is in them. */
final class JpegFile {
    private JpegFile() {}

    /**
     * Replaces an earlier file of that name.
     *
     * @param quality 0 to 100, as OpenCV counts
     */
    static void write(Mat picture, int quality, Path target) throws IOException {
        // Encoded in memory: OpenCV opens no file whose name is outside the system's own letters.
        try (BytePointer encoded = new BytePointer();
                IntPointer settings = new IntPointer(opencv_imgcodecs.IMWRITE_JPEG_QUALITY, quality)) {
            if (!opencv_imgcodecs.imencode(".jpg", picture, encoded, settings)) {
                throw new IOException(target + " cannot be encoded");
            }
            byte[] bytes = new byte[(int) encoded.limit()];
            encoded.get(bytes);
            WholeFile.write(target, ByteBuffer.wrap(bytes));
        }
    }
}
