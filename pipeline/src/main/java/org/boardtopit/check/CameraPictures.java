package org.boardtopit.check;

import java.util.Optional;
import org.boardtopit.clips.Camera;
import org.boardtopit.ground.Placement;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.video.VideoFrame;

/** The reference pictures of a competition's cameras and what the marks on them tell. May be used from several threads. */
public interface CameraPictures {

    /**
     * Where a frame lies in the reference picture of a camera; empty when it does not show the same place, or the camera has no
     * picture that can be read.
     */
    Optional<Placement> place(Camera camera, VideoFrame frame);

    /** How a camera sees the runway in its reference picture; empty without marks that agree. */
    Optional<RunwayCamera> seer(Camera camera);
}
