package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.ByteBuffer;
import java.util.List;
import org.boardtopit.models.djl.TorchEngine;
import org.junit.jupiter.api.Test;

/**
 * The converted networks against the runtime that the published graphs were made for: the same pictures through both.
 *
 * <p>The detector's graph is the published file. The landmark graph is the published file with the tuned weights written into
 * it ({@code convert.py put-weights}). Outside source: TensorFlow Lite 2.19 (Maven: org.bytedeco:tensorflow-lite), built-in
 * kernels.
 */
class ReferenceRuntimeParityTest {

    private static final double ALLOWED = 1e-3; // of the tensor's largest value; measured: under 1e-5
    private static final int HEAT_MAP_OUTPUT =
            3; // of the graph's five: landmarks, presence, segmentation, heat maps, world

    @Test
    void landmarkNetworkComputesTheHeatMapsOfTheReferenceRuntime() throws NetworkUnfitException {
        NetworkStore store = new NetworkStore(new TorchEngine());
        try (ReferenceRuntime reference = new ReferenceRuntime("full-tuned.tflite");
                LandmarkPool pool = store.openLandmarks("full", 1)) {
            LandmarkWorker worker = pool.workers().get(0);
            for (ByteBuffer rgb : pictures("full", pool.card())) {
                reference.run(rgb, 1 / 255.0, 0);
                float[] expected = pointsFirst(reference.output(HEAT_MAP_OUTPUT, 64 * 64 * 39));
                assertSame(expected, worker.compute(rgb)[0]);
            }
        }
    }

    @Test
    void detectorComputesTheBoxesAndScoresOfTheReferenceRuntime() throws NetworkUnfitException {
        NetworkStore store = new NetworkStore(new TorchEngine());
        try (ReferenceRuntime reference = new ReferenceRuntime("detector.tflite");
                PersonDetector detector = store.openDetector("detector")) {
            for (ByteBuffer rgb : pictures("detector", detector.card())) {
                reference.run(rgb, 2 / 255.0, -1);
                float[][] found = ((DetectorWorker) detector).compute(rgb);
                assertSame(reference.output(0, 2254 * 12), found[0]);
                assertSame(reference.output(1, 2254), found[1]);
            }
        }
    }

    /** Rows, columns, 39 points of the graph -> the 33 points of the body, rows, columns. */
    private static float[] pointsFirst(float[] maps) {
        float[] result = new float[33 * 64 * 64];
        for (int point = 0; point < 33; point++) {
            for (int cell = 0; cell < 64 * 64; cell++) {
                result[point * 64 * 64 + cell] = maps[cell * 39 + point];
            }
        }
        return result;
    }

    private static void assertSame(float[] expected, float[] found) {
        assertEquals(expected.length, found.length);
        double max = 0;
        double difference = 0;
        for (int i = 0; i < expected.length; i++) {
            max = Math.max(max, Math.abs(expected[i]));
            difference = Math.max(difference, Math.abs((double) expected[i] - found[i]));
        }
        assertTrue(max > 1, "the reference runtime gives numbers, was " + max);
        assertTrue(difference <= ALLOWED * max, difference + " of " + max);
    }

    private static List<ByteBuffer> pictures(String network, NetworkCard card) throws NetworkUnfitException {
        NetworkFiles files = NetworkFiles.shipped(network);
        return List.of(
                NetworkReference.read(files, card, card.references().get(0)).rgb(),
                NetworkReference.read(files, card, card.references().get(1)).rgb(),
                NetworkReference.read(files, card, card.references().get(2)).rgb());
    }
}
