package org.boardtopit.pose;

import java.nio.ByteBuffer;
import java.util.Arrays;
import org.boardtopit.models.BodyPoint;
import org.boardtopit.models.LandmarkNetwork;
import org.boardtopit.models.LandmarkReading;
import org.boardtopit.models.NetworkCard;

/** Sees a red dot as a knee and a green one as a toe; takes what is left of the middle for the athlete's left. */
class DotNetwork implements LandmarkNetwork {
    static final int SIZE_PX = 64;

    @Override
    public NetworkCard card() {
        throw new UnsupportedOperationException("a scripted network has no card");
    }

    @Override
    public int inputSizePx() {
        return SIZE_PX;
    }

    @Override
    public LandmarkReading read(ByteBuffer rgb) {
        float[] numbers = new float[LandmarkReading.LENGTH];
        Arrays.fill(numbers, Float.NaN);
        for (int i = 3; i < numbers.length; i += 4) {
            numbers[i] = 0;
        }
        report(rgb, 0, BodyPoint.LEFT_KNEE, numbers);
        report(rgb, 1, BodyPoint.LEFT_TOE, numbers);
        return LandmarkReading.of(numbers);
    }

    private static void report(ByteBuffer rgb, int channel, BodyPoint left, float[] numbers) {
        double sum = 0;
        double x = 0;
        double y = 0;
        for (int row = 0; row < SIZE_PX; row++) {
            for (int column = 0; column < SIZE_PX; column++) {
                double light = rgb.get(3 * (row * SIZE_PX + column) + channel) & 0xff;
                sum += light;
                x += light * (column + 0.5);
                y += light * (row + 0.5);
            }
        }
        if (sum > 0) {
            BodyPoint point = x / sum < SIZE_PX / 2.0 ? left : left.otherSide();
            int at = point.index() * LandmarkReading.NUMBERS_PER_POINT;
            numbers[at] = (float) (x / sum);
            numbers[at + 1] = (float) (y / sum);
            numbers[at + 2] = 2;
            numbers[at + 3] = 1;
        }
    }
}
