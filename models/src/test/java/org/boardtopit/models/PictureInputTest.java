package org.boardtopit.models;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.nio.ByteBuffer;
import java.nio.FloatBuffer;
import java.util.List;
import org.boardtopit.models.NetworkCard.Channels;
import org.boardtopit.models.NetworkCard.Input;
import org.boardtopit.models.NetworkCard.Layout;
import org.boardtopit.models.NetworkCard.Values;
import org.junit.jupiter.api.Test;

class PictureInputTest {
    private static final int SIZE = 32;
    private static final int PIXELS = SIZE * SIZE;

    private final ByteBuffer rgb = ByteBuffer.allocateDirect(3 * PIXELS);

    PictureInputTest() {
        for (int i = 0; i < 3 * PIXELS; i++) {
            rgb.put(i, (byte) (i % 3 == 0 ? 200 : i % 3 == 1 ? 100 : i / 3)); // red 200, green 100, blue counts pixels
        }
    }

    @Test
    void rgbBytesAreHandedOverAsTheyAre() {
        ByteBuffer same = input(Channels.rgb, Layout.nhwc, Values.bytes).prepare(rgb.position(5));

        assertEquals(3 * PIXELS, same.remaining());
        assertEquals((byte) 200, same.get(0));
        assertEquals(5, rgb.position(), "the caller's position is left alone");
        rgb.put(0, (byte) 7);
        assertEquals(7, same.get(0), "no copy");
    }

    @Test
    void planesOfFloatsAreScaledByTheirOwnColour() {
        ByteBuffer prepared = input(Channels.rgb, Layout.nchw, Values.floats).prepare(rgb);

        FloatBuffer floats = prepared.asFloatBuffer();
        assertEquals(3 * PIXELS, floats.remaining());
        assertEquals(200 * 0.5f + 1, floats.get(0));
        assertEquals(100 * 0.25f + 2, floats.get(PIXELS));
        assertEquals(31 * 2f + 3, floats.get(2 * PIXELS + 31));
    }

    @Test
    void blueComesFirstWhenTheCardSaysSoAndScalesFollowTheCardsOrder() {
        FloatBuffer floats =
                input(Channels.bgr, Layout.nhwc, Values.floats).prepare(rgb).asFloatBuffer();

        assertEquals(31 * 0.5f + 1, floats.get(3 * 31));
        assertEquals(100 * 0.25f + 2, floats.get(3 * 31 + 1));
        assertEquals(200 * 2f + 3, floats.get(3 * 31 + 2));
    }

    @Test
    void blueFirstBytesAreCopied() {
        ByteBuffer bytes = input(Channels.bgr, Layout.nchw, Values.bytes).prepare(rgb);

        assertEquals(3 * PIXELS, bytes.remaining());
        assertEquals(31, bytes.get(31));
        assertEquals((byte) 200, bytes.get(2 * PIXELS + 31));
    }

    @Test
    void refusesBuffersThatAreNotDirectOrTooSmall() {
        PictureInput input = input(Channels.rgb, Layout.nhwc, Values.bytes);

        assertThrows(IllegalArgumentException.class, () -> input.prepare(ByteBuffer.allocate(3 * PIXELS)));
        assertThrows(IllegalArgumentException.class, () -> input.prepare(ByteBuffer.allocateDirect(3 * PIXELS - 1)));
    }

    private static PictureInput input(Channels channels, Layout layout, Values values) {
        return new PictureInput(
                new Input(SIZE, channels, layout, values, List.of(0.5, 0.25, 2.0), List.of(1.0, 2.0, 3.0)));
    }
}
