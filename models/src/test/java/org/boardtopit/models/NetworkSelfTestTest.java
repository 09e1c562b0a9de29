package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;
import java.util.zip.CRC32;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import java.util.zip.ZipOutputStream;
import org.boardtopit.models.djl.TorchEngine;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The safety part with the real library: sound networks pass, damaged ones are refused before anything is measured. */
class NetworkSelfTestTest {

    @TempDir
    Path folder;

    @ParameterizedTest
    @CsvSource({"full, 1", "full, 2", "detector, 1"})
    void shippedNetworksPassOnThisMachine(String name, int workers) throws NetworkUnfitException {
        SelfTestResult result = new NetworkStore(new TorchEngine()).verify(name, workers);

        assertEquals(3, result.references());
        assertTrue(result.largestRelativeDifference() < 1e-4, result.toString());
        assertTrue(result.largestPointDifferencePx() < 0.05, result.toString());
    }

    @ParameterizedTest
    @ValueSource(doubles = {-1, 1.2})
    void aNetworkThatLoadsButComputesWrongNumbersIsRefused(double factor) throws Exception {
        byte[] wrong = withLargestWeightsTimes(NetworkFiles.shipped("full").read("full.pt"), (float) factor);
        write("wrong", wrong, sha256(wrong));

        NetworkUnfitException e = assertThrows(NetworkUnfitException.class, () -> store().openLandmarks("wrong", 2));

        assertTrue(
                e.getMessage().startsWith("network wrong is not fit to measure on this machine: on reference"),
                e.getMessage());
        assertTrue(e.getMessage().contains("of the largest value"), e.getMessage());
    }

    /** Shows that the damage of the test above is in the weights, not in how the file is written again. */
    @Test
    void theSameFileWrittenAgainUnchangedPasses() throws Exception {
        byte[] same = withLargestWeightsTimes(NetworkFiles.shipped("full").read("full.pt"), 1);
        write("same", same, sha256(same));

        assertEquals(3, store().verify("same", 1).references());
    }

    @Test
    void aFileThatIsNotTheCardsIsNotEvenLoaded() throws Exception {
        byte[] right = NetworkFiles.shipped("full").read("full.pt");
        write("wrong", withLargestWeightsTimes(right, -1), sha256(right));

        NetworkUnfitException e = assertThrows(NetworkUnfitException.class, () -> store().openLandmarks("wrong", 1));

        assertTrue(e.getMessage().contains("full.pt is not the file that the card names"), e.getMessage());
    }

    @Test
    void aFileThatIsNoNetworkIsRefusedInOneLine() throws Exception {
        byte[] text = "no network".getBytes(StandardCharsets.UTF_8);
        write("text", text, sha256(text));

        NetworkUnfitException e = assertThrows(NetworkUnfitException.class, () -> store().openLandmarks("text", 1));

        assertTrue(e.getMessage().contains("full.pt is not a TorchScript file that can be read"), e.getMessage());
        assertEquals(1, e.getMessage().lines().count());
    }

    private NetworkStore store() {
        return new NetworkStore(new TorchEngine(), Optional.of(folder));
    }

    /** A network of the user's with the card and references of the shipped one, and another file. */
    private void write(String name, byte[] module, String sha256) throws IOException {
        NetworkFiles shipped = NetworkFiles.shipped("full");
        Path mine =
                Files.createDirectories(folder.resolve(name + "/references")).getParent();
        Files.write(mine.resolve("full.pt"), module);
        String card = new String(shipped.read("card.json"), StandardCharsets.UTF_8)
                .replace("\"name\": \"full\"", "\"name\": \"" + name + "\"")
                .replaceFirst("\"sha256\": \"[0-9a-f]+\"", "\"sha256\": \"" + sha256 + "\"");
        Files.writeString(mine.resolve("card.json"), card, StandardCharsets.UTF_8);
        for (String file : new String[] {
            "board.png", "board.json", "right-to-left.png", "right-to-left.json", "phone.png", "phone.json"
        }) {
            Files.write(mine.resolve("references/" + file), shipped.read("references/" + file));
        }
    }

    /** Writes the archive again with all numbers of its largest constant, the weights of one layer of many, times a factor. */
    private static byte[] withLargestWeightsTimes(byte[] archive, float factor) throws IOException {
        String largest = largestEntry(archive);
        ByteArrayOutputStream result = new ByteArrayOutputStream();
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive));
                ZipOutputStream out = new ZipOutputStream(result)) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                byte[] content = in.readAllBytes();
                put(out, entry.getName(), entry.getName().equals(largest) ? times(content, factor) : content);
            }
        }
        return result.toByteArray();
    }

    private static String largestEntry(byte[] archive) throws IOException {
        String largest = "";
        int size = 0;
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(archive))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                int length = in.readAllBytes().length;
                if (entry.getName().contains("/constants/") && length > size) {
                    largest = entry.getName();
                    size = length;
                }
            }
        }
        return largest;
    }

    private static byte[] times(byte[] floats, float factor) {
        ByteBuffer numbers = ByteBuffer.wrap(floats).order(ByteOrder.LITTLE_ENDIAN);
        for (int i = 0; i < floats.length; i += Float.BYTES) {
            numbers.putFloat(i, numbers.getFloat(i) * factor);
        }
        return floats;
    }

    private static void put(ZipOutputStream out, String name, byte[] content) throws IOException {
        CRC32 crc = new CRC32();
        crc.update(content);
        ZipEntry entry = new ZipEntry(name);
        entry.setMethod(ZipEntry.STORED);
        entry.setSize(content.length);
        entry.setCrc(crc.getValue());
        out.putNextEntry(entry);
        out.write(content);
        out.closeEntry();
    }

    private static String sha256(byte[] content) throws Exception {
        return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(content));
    }
}
