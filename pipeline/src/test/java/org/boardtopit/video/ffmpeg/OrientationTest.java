package org.boardtopit.video.ffmpeg;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Matrices a b / c d as in ISO/IEC 14496-12 (p' = p times matrix; MEM-H): a turn by t degrees clockwise, y pointing down, is
 * cos t, sin t / -sin t, cos t.
 */
class OrientationTest {

    @ParameterizedTest(name = "{0} {1} / {2} {3} turns by {4}")
    @CsvSource({
        "  1,  0,  0,  1,   0, ''",
        "  0,  1, -1,  0,  90, transpose=dir=clock",
        " -1,  0,  0, -1, 180, 'hflip,vflip'",
        "  0, -1,  1,  0, 270, transpose=dir=cclock",
        " -1,  0,  0,  1,   0, hflip",
        "  1,  0,  0, -1,   0, vflip",
        "  0,  1,  1,  0, 270, transpose=dir=cclock_flip",
        "  0, -1, -1,  0,  90, transpose=dir=clock_flip"
    })
    void readsTheEightDisplayMatrices(int a, int b, int c, int d, int clockwiseDeg, String filters) {
        Orientation orientation =
                Orientation.ofDisplayMatrix(new int[] {a << 16, b << 16, 0, c << 16, d << 16, 0, 0, 0, 1 << 30});
        assertEquals(clockwiseDeg, orientation.clockwiseDeg());
        assertEquals(filters, String.join(",", orientation.filters()));
    }

    @ParameterizedTest(name = "{0} degrees count as {1}")
    @CsvSource({"3, 0", "44, 0", "46, 90", "92, 90", "178, 180", "265, 270", "359, 0"})
    void takesTheNearestRightAngle(int angleDeg, int clockwiseDeg) {
        double t = Math.toRadians(angleDeg);
        int cos = (int) Math.round(65536 * Math.cos(t));
        int sin = (int) Math.round(65536 * Math.sin(t));
        int[] matrix = {cos, sin, 0, -sin, cos, 0, 0, 0, 1 << 30};
        assertEquals(clockwiseDeg, Orientation.ofDisplayMatrix(matrix).clockwiseDeg());
    }
}
