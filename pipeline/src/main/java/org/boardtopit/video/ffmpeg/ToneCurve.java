package org.boardtopit.video.ffmpeg;

import java.nio.ByteBuffer;
import java.util.Optional;
import org.boardtopit.video.ClipFacts.Tone;

/**
 * Brings pictures of high dynamic range into the range that everything behind expects.
 *
 * <p>Method: each stored value becomes light on a screen of 1000 cd/m2 by the functions of ITU-R BT.2100 (tables 4 and 5; for
 * hybrid log-gamma the system gamma 1.2, taken channel by channel), 203 cd/m2 being the white of paper (ITU-R BT.2408); above
 * {@value #KNEE} of that white, highlights are pressed together so that nothing is cut off; the result is stored with the
 * gamma 2.4 of ITU-R BT.1886. A table of 256 values for each channel: fast, and as fine as 8 bits can be.
 *
 * <p>Without it such a clip is grey and flat (PQ) or too bright (HLG), and a network has not been trained on either.
 */
final class ToneCurve {
    private static final double WHITE_CD = 203;
    private static final double SCREEN_CD = 1000;
    private static final double KNEE = 0.6;
    private static final double STORED_GAMMA = 2.4;
    private static final int BLOCK = 1 << 14;

    private final byte[] table = new byte[256];
    private final byte[] block = new byte[BLOCK];

    private ToneCurve(Tone tone) {
        for (int v = 0; v < 256; v++) {
            double light = tone == Tone.PQ ? pqCd(v / 255.0) : hlgCd(v / 255.0);
            double stored = Math.pow(pressed(light / WHITE_CD), 1 / STORED_GAMMA);
            table[v] = (byte) Math.round(255 * Math.min(1, stored));
        }
    }

    /** Empty for the usual tone, with which nothing is to be done. */
    static Optional<ToneCurve> of(Tone tone) {
        return tone == Tone.STANDARD ? Optional.empty() : Optional.of(new ToneCurve(tone));
    }

    /** BT.2100 table 4, the electro-optical transfer function. */
    private static double pqCd(double value) {
        double m1 = 2610.0 / 16384;
        double m2 = 2523.0 / 4096 * 128;
        double c1 = 3424.0 / 4096;
        double c2 = 2413.0 / 4096 * 32;
        double c3 = 2392.0 / 4096 * 32;
        double root = Math.pow(value, 1 / m2);
        return 10_000 * Math.pow(Math.max(0, root - c1) / (c2 - c3 * root), 1 / m1);
    }

    /** BT.2100 table 5: the inverse of the camera's function, then the screen's. */
    private static double hlgCd(double value) {
        double a = 0.17883277;
        double b = 1 - 4 * a;
        double c = 0.5 - a * Math.log(4 * a);
        double scene = value <= 0.5 ? value * value / 3 : (Math.exp((value - c) / a) + b) / 12;
        return SCREEN_CD * Math.pow(scene, 1.2);
    }

    /** Straight up to the knee, then ever flatter towards 1, without a kink. */
    private static double pressed(double white) {
        double over = white - KNEE;
        double room = 1 - KNEE;
        return over <= 0 ? white : KNEE + room * over / (over + room);
    }

    /** Of one stored value, 0 to 255. */
    int of(int stored) {
        return table[stored] & 0xff;
    }

    /** Changes all bytes in place. */
    void apply(ByteBuffer pixels) {
        for (int at = 0; at < pixels.capacity(); at += BLOCK) {
            int n = Math.min(BLOCK, pixels.capacity() - at);
            pixels.get(at, block, 0, n);
            for (int i = 0; i < n; i++) {
                block[i] = table[block[i] & 0xff];
            }
            pixels.put(at, block, 0, n);
        }
    }
}
