package org.boardtopit.video;

/**
 * What a quick look tells of a clip that can be opened.
 *
 * @param info as a reader of the clip says it
 * @param times of the stored pictures: of interlaced material each is two frames
 * @param allCounted false when the clip is so long that only its beginning was counted; {@code times} is of that
 * @param tone how bright and dark are stored
 * @param bitDepth bits of a colour value, 8 or more
 * @param brokenOff true when the container ends in the middle of something: the file was cut off
 */
public record ClipFacts(
        VideoInfo info, FrameTimes times, boolean allCounted, Tone tone, int bitDepth, boolean brokenOff) {

    /** The curve between light and stored value. */
    public enum Tone {
        /** The usual one. */
        STANDARD,
        /** Hybrid log-gamma of ITU-R BT.2100, as phones record. */
        HLG,
        /** Perceptual quantisation of ITU-R BT.2100. */
        PQ
    }

    /** Frames that a reader of the clip will give, as far as counted or else as the container says; -1 when unknown. */
    public long frames() {
        if (allCounted) {
            return times.pictures() * (info.interlaced() ? 2 : 1);
        }
        return info.estimatedFrames();
    }

    /** Frames a second, measured; fields of interlaced material. NaN for a single picture. */
    public double fps() {
        return times.fps() * (info.interlaced() ? 2 : 1);
    }
}
