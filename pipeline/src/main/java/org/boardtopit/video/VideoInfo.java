package org.boardtopit.video;

/**
 * What the container says of a clip, after the rotation has been applied.
 *
 * @param widthPx width of the upright picture
 * @param heightPx height of the upright picture
 * @param nominalFps frames a second as the reader delivers them (fields a second for interlaced material); a hint for
 *     progress and encoding, never a source of time
 * @param durationUs duration the container claims, or -1 when it does not say
 * @param estimatedFrames frames to expect, or -1 when unknown
 * @param interlaced true when each picture was two fields and the reader delivers them one by one
 * @param rotationDeg clockwise rotation that the reader applied: 0, 90, 180 or 270
 * @param codec short name of the video codec, for the log
 */
public record VideoInfo(
        int widthPx,
        int heightPx,
        double nominalFps,
        long durationUs,
        long estimatedFrames,
        boolean interlaced,
        int rotationDeg,
        String codec) {

    public VideoInfo {
        if (widthPx < 1 || heightPx < 1) {
            throw new IllegalArgumentException("a picture needs a size, was " + widthPx + " x " + heightPx);
        }
        if (!(nominalFps > 0)) {
            throw new IllegalArgumentException("nominalFps must be positive, was " + nominalFps);
        }
    }
}
