package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.awt.image.BufferedImage;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** A network of the user's: points of both knees, 3 numbers each, with one channel between that is none of ours. */
class NetworkStoreTest {
    // SHA-256 of the bytes "module": CALC, sha256sum.
    private static final String MODULE_SHA256 = "120970d812836f19888625587a4606a5ad23cef31c8684e601771552548fc6b9";

    @TempDir
    Path folder;

    private final FakeEngine engine = new FakeEngine(new float[] {10, 20, 0.5f, 0, 0, 0, 30, 40, 0.75f});

    @Test
    void opensANetworkOfTheUsersAndMapsItsPoints() throws Exception {
        write(NetworkCardTest.CARD, "module");

        try (LandmarkPool pool = store().openLandmarks("mine", 2)) {
            assertEquals(2, pool.size());
            LandmarkReading reading = pool.worker(1).read(ByteBuffer.allocateDirect(3 * 64 * 64));
            assertEquals(10, reading.xPx(BodyPoint.LEFT_KNEE, 0));
            assertEquals(40, reading.yPx(BodyPoint.RIGHT_KNEE, 0));
            assertEquals(0.75, reading.mass(BodyPoint.RIGHT_KNEE, 0));
            assertEquals(5, reading.sdPx(BodyPoint.RIGHT_KNEE, 0));
        }
        assertEquals(0, engine.open());
    }

    @Test
    void listsShippedNetworksAndThoseOfTheUsersAndSaysWhatIsWrong() throws Exception {
        write(NetworkCardTest.CARD.replace("\"mine\"", "\"other\""), "module");

        List<NetworkEntry> entries = store().list();

        assertEquals(
                List.of("detector", "full", "mine"),
                entries.stream().map(NetworkEntry::name).toList());
        assertTrue(entries.get(1).shipped());
        assertTrue(entries.get(1).card().isPresent());
        assertFalse(entries.get(2).shipped());
        assertTrue(entries.get(2).problem().contains("names the network other"));
    }

    @Test
    void aFolderOfTheUsersDoesNotHideAShippedNetwork() throws Exception {
        Files.createDirectory(folder.resolve("full"));

        assertEquals("full", store().card("full").name());
    }

    @Test
    void refusesAFileThatIsNotTheCards() throws Exception {
        write(NetworkCardTest.CARD, "another");

        String message = refusal("mine");

        assertTrue(message.contains("mine.pt is not the file that the card names"), message);
        assertTrue(message.contains(MODULE_SHA256), message);
    }

    @Test
    void saysWhichNetworksThereAre() {
        assertTrue(refusal("fool").contains("there is no network fool; there are detector, full"));
    }

    @Test
    void refusesADetectorWhereLandmarksAreWanted() {
        assertTrue(refusal("detector").contains("finds persons"));
    }

    @Test
    void refusesAFolderThatIsNotThere() {
        Path none = folder.resolve("none");

        assertThrows(IllegalArgumentException.class, () -> new NetworkStore(engine, Optional.of(none)));
    }

    @Test
    void aNetworkWithoutReferencesIsVerifiedAgainstNothing() throws Exception {
        write(NetworkCardTest.CARD, "module");

        assertEquals(0, store().verify("mine", 2).references());
    }

    @Test
    void timesANetworkOnAllItsWorkers() throws Exception {
        write(NetworkCardTest.CARD, "module");

        NetworkTiming timing = store().time("mine", 3, 20);

        assertEquals(3, timing.workers());
        assertEquals(60, timing.pictures());
        assertTrue(timing.picturesPerSecond() > 0);
        assertEquals(0, engine.open());
    }

    /** The tensor is 10, 20, 0.5, 0, 0, 0, 30, 40, 0.75; every fourth number is kept. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "9 | 40 | 10, 0, 0.75    | 10 |",
                "9 | 40 | 10, 0.03, 0.75 | 10 |",
                "9 | 40 | 10, 0.05, 0.75 | 10 | computes 0.00000 where 0.0500000 is stored (tensor 0, number 4)",
                "8 | 40 | 10, 0          | 10 | gives tensor 0 with 9 numbers, its reference has 8",
                "9 | 40 | 10, 0          | 10 | its reference has 9 and keeps 2",
                "9 | 40 | 10, 0, 0.75    | 11 | reads LEFT_KNEE (mode 0) 1.00 px",
            })
    void comparesEveryWorkerWithTheStoredAnswer(int count, double max, String values, double kneeX, String problem)
            throws Exception {
        write(NetworkCardTest.CARD.replace("\"references\": []", "\"references\": [\"black\"]"), "module");
        writeReference(count, max, values, kneeX);

        if (problem == null) {
            assertEquals(1, store().verify("mine", 2).references());
        } else {
            String message = refusal("mine");
            assertTrue(
                    message.startsWith("network mine is not fit to measure on this machine: on reference black"),
                    message);
            assertTrue(message.contains(problem), message);
        }
        assertEquals(0, engine.open(), "nothing stays open");
    }

    @Test
    void aNetworkThatComputesNaNIsUnfit() throws Exception {
        write(NetworkCardTest.CARD.replace("\"references\": []", "\"references\": [\"black\"]"), "module");
        writeReference(9, 40, "10, 0, 0.75", 10);
        FakeEngine broken = new FakeEngine(new float[] {Float.NaN, 20, 0.5f, 0, 0, 0, 30, 40, 0.75f});

        assertThrows(
                NetworkUnfitException.class,
                () -> new NetworkStore(broken, Optional.of(folder)).openLandmarks("mine", 1));
    }

    private NetworkStore store() {
        return new NetworkStore(engine, Optional.of(folder));
    }

    private String refusal(String name) {
        NetworkUnfitException e = assertThrows(NetworkUnfitException.class, () -> store().openLandmarks(name, 1));
        assertEquals(1, e.getMessage().lines().count(), e.getMessage());
        return e.getMessage();
    }

    private void write(String card, String module) throws IOException {
        Path mine = Files.createDirectories(folder.resolve("mine/references")).getParent();
        String json = card.replaceAll("\"0{64}\"", "\"" + MODULE_SHA256 + "\"");
        Files.writeString(mine.resolve("card.json"), json, StandardCharsets.UTF_8);
        Files.writeString(mine.resolve("mine.pt"), module, StandardCharsets.UTF_8);
    }

    private void writeReference(int count, double max, String values, double kneeX) throws IOException {
        Path references = folder.resolve("mine/references");
        ImageIO.write(
                new BufferedImage(64, 64, BufferedImage.TYPE_INT_RGB),
                "png",
                references.resolve("black.png").toFile());
        String json = """
                {"stride": 4, "tensors": [{"count": %d, "max": %s, "values": [%s]}],
                 "points": [[%s, 20, 5, 0.5, 0, 0, 0, 0], [0, 0, 0, 0, 0, 0, 0, 0], [30, 40, 5, 0.75, 0, 0, 0, 0]]}
                """.formatted(count, max, values, kneeX);
        Files.writeString(references.resolve("black.json"), json, StandardCharsets.UTF_8);
    }
}
