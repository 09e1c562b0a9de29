package org.boardtopit.ground.opencv;

import java.util.Optional;
import org.boardtopit.signal.Homography;
import org.boardtopit.synthetic.DrawnScene;
import org.boardtopit.synthetic.SyntheticFrameReader;
import org.boardtopit.video.VideoException;
import org.bytedeco.javacpp.Pointer;

/**
 * Surveys clips of as many frames as the arguments say and prints how many bytes the process holds after each. Runs in a Java
 * machine of its own whose heap has a fixed size and is touched at the start, so that what is added is native.
 */
final class SurveyMemory {
    private SurveyMemory() {}

    public static void main(String[] args) throws VideoException {
        DrawnScene scene = new DrawnScene(1700, 620, 1);
        for (String frames : args) {
            SyntheticFrameReader reader = new SyntheticFrameReader(
                    scene,
                    640,
                    360,
                    30,
                    Integer.parseInt(frames),
                    t -> new Homography(1, 0, 260 + 200 * Math.sin(t), 0, 1, 110, 0, 0, 1),
                    f -> false);
            new BackgroundSurvey(Optional.empty()).survey(reader);
            System.out.println(Pointer.physicalBytes());
        }
    }
}
