package org.boardtopit.video.ffmpeg;

import java.util.Arrays;
import java.util.OptionalLong;

/** The packets of a clip's picture track, none decoded. */
final class PacketScan {
    private final long[] stampsUs;
    private final long[] keysUs;
    private final boolean complete;
    private final boolean brokenOff;

    /**
     * Takes the arrays over.
     *
     * @param stampsUs of the packets that are to be shown, in the order they are stored
     * @param keysUs those of them that can be decoded without others
     * @param complete false when there are more
     * @param brokenOff true when the container ended with an error
     */
    PacketScan(long[] stampsUs, long[] keysUs, boolean complete, boolean brokenOff) {
        this.complete = complete;
        this.brokenOff = brokenOff;
        long first = Arrays.stream(stampsUs).min().orElse(0);
        this.stampsUs = Arrays.stream(stampsUs).map(s -> s - first).toArray();
        this.keysUs = Arrays.stream(keysUs).map(s -> s - first).toArray();
    }

    /** Since the earliest of them, in the order they are stored. */
    long[] stampsUs() {
        return stampsUs.clone();
    }

    boolean complete() {
        return complete;
    }

    boolean brokenOff() {
        return brokenOff;
    }

    /** The last picture at or before a time with which decoding can begin. */
    OptionalLong keyBefore(long timeUs) {
        return Arrays.stream(keysUs).filter(key -> key <= timeUs).max();
    }
}
