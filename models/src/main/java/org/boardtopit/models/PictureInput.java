package org.boardtopit.models;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.FloatBuffer;

/** Brings a picture from interleaved RGB bytes into the form that a network's card asks for. One thread at a time. */
final class PictureInput {
    private final NetworkCard.Input input;
    private final int pixels;
    private final boolean asIs;
    private final ByteBuffer target;

    PictureInput(NetworkCard.Input input) {
        this.input = input;
        this.pixels = input.sizePx() * input.sizePx();
        boolean bytes = input.values() == NetworkCard.Values.bytes;
        this.asIs = bytes && input.channels() == NetworkCard.Channels.rgb && input.layout() == NetworkCard.Layout.nhwc;
        int length = asIs ? 0 : pixels * 3 * (bytes ? 1 : Float.BYTES);
        this.target = ByteBuffer.allocateDirect(length).order(ByteOrder.nativeOrder());
    }

    /**
     * The picture as the network wants it.
     *
     * @return a direct buffer from position 0; the given one (as a view) when nothing has to be changed, else one that is
     *     valid until the next call
     */
    ByteBuffer prepare(ByteBuffer rgb) {
        if (!rgb.isDirect() || rgb.capacity() < 3 * pixels) {
            throw new IllegalArgumentException("a picture of " + input.sizePx() + " px is a direct buffer of "
                    + 3 * pixels + " bytes, was " + (rgb.isDirect() ? "" : "not direct, ") + rgb.capacity());
        }
        if (asIs) {
            return rgb.slice(0, 3 * pixels).order(ByteOrder.nativeOrder());
        }
        for (int colour = 0; colour < 3; colour++) {
            int source = input.channels() == NetworkCard.Channels.rgb ? colour : 2 - colour;
            copyColour(rgb, source, colour);
        }
        return target.rewind();
    }

    private void copyColour(ByteBuffer rgb, int source, int colour) {
        boolean planes = input.layout() == NetworkCard.Layout.nchw;
        int at = planes ? colour * pixels : colour;
        int step = planes ? 1 : 3;
        if (input.values() == NetworkCard.Values.bytes) {
            for (int i = 0; i < pixels; i++, at += step) {
                target.put(at, rgb.get(3 * i + source));
            }
            return;
        }
        FloatBuffer floats = target.asFloatBuffer();
        double scale = input.scale().get(colour);
        double offset = input.offset().get(colour);
        for (int i = 0; i < pixels; i++, at += step) {
            floats.put(at, (float) ((rgb.get(3 * i + source) & 0xFF) * scale + offset));
        }
    }
}
