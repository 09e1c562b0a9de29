package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Tensors made by hand for a picture of 224 px: cells of 8, 16 and 32 px. CALC. */
class DetectionDecoderTest {
    private final DetectionDecoder decoder = new DetectionDecoder(224);
    private final float[] boxes = new float[DetectionDecoder.ANCHORS * DetectionDecoder.NUMBERS_PER_ANCHOR];
    private final float[] logits = new float[DetectionDecoder.ANCHORS];

    DetectionDecoderTest() {
        Arrays.fill(logits, -20);
    }

    @Test
    void keyPointsCountFromTheCentreOfTheAnchorsCell() {
        // Second row, third column of the fine grid, first of its two anchors: centre 20, 12.
        put((28 + 2) * 2, 2, new float[] {0, 0, 40, 40, 1, 2, 1 + 30, 2 + 40, 3, -9, 0, 0});

        DetectedPerson person = decoder.decode(boxes, logits).get(0);

        assertEquals(1 / (1 + Math.exp(-2)), person.score(), 1e-9);
        assertEquals(21, person.hipXPx(), 1e-6);
        assertEquals(14, person.hipYPx(), 1e-6);
        assertEquals(23, person.shoulderXPx(), 1e-6);
        assertEquals(3, person.shoulderYPx(), 1e-6);
        assertEquals(100, person.sizePx(), 1e-6, "twice the hypotenuse of 30 and 40");
    }

    @Test
    void theMiddleAndTheCoarseGridFollowTheFineOne() {
        int middle = 28 * 28 * 2;
        int coarse = middle + 14 * 14 * 2;
        put(middle, 3, person());
        put(coarse + 6 * (7 * 6 + 6) + 5, 2, person());

        List<DetectedPerson> persons = decoder.decode(boxes, logits);

        assertEquals(2, persons.size());
        assertEquals(8, persons.get(0).hipXPx(), 1e-6);
        assertEquals(208, persons.get(1).hipXPx(), 1e-6);
        assertEquals(208, persons.get(1).hipYPx(), 1e-6, "the very last anchor lies in the last cell");
        assertEquals(2254, coarse + 7 * 7 * 6);
    }

    @Test
    void anchorsOfOnePersonAreAveragedByTheirScores() {
        put(0, logit(0.8), person());
        put(2, logit(0.4), person()); // 8 px to the right: boxes of 40 px share 32 of 48

        List<DetectedPerson> persons = decoder.decode(boxes, logits);

        assertEquals(1, persons.size());
        assertEquals(0.8, persons.get(0).score(), 1e-6);
        assertEquals((0.8 * 4 + 0.4 * 12) / 1.2, persons.get(0).hipXPx(), 1e-6);
    }

    @Test
    void personsWhoseBoxesShareLittleStayApart() {
        put(0, logit(0.8), person());
        put(6, logit(0.9), person()); // 24 px to the right: 16 of 64 is under 0.3

        List<DetectedPerson> persons = decoder.decode(boxes, logits);

        assertEquals(2, persons.size());
        assertEquals(28, persons.get(0).hipXPx(), 1e-6, "the better one first");
    }

    @Test
    void lowScoresAreNobody() {
        put(0, logit(0.29), person());

        assertTrue(decoder.decode(boxes, logits).isEmpty());
    }

    private static float[] person() {
        return new float[] {0, 0, 40, 40, 0, 0, 0, -30, 0, -15, 0, 0};
    }

    private static float logit(double score) {
        return (float) Math.log(score / (1 - score));
    }

    private void put(int anchor, float logit, float[] numbers) {
        logits[anchor] = logit;
        System.arraycopy(numbers, 0, boxes, anchor * DetectionDecoder.NUMBERS_PER_ANCHOR, numbers.length);
    }
}
