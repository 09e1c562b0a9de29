package org.boardtopit.run;

import java.nio.file.Path;
import java.util.List;
import org.boardtopit.clips.Clip;
import org.boardtopit.clips.MeetSheet;
import org.boardtopit.models.NetworkCard;
import org.boardtopit.pose.Look;
import org.boardtopit.video.ClipOpener;

/**
 * A clip of a finished run, whose landmarks are kept in the folder work of its output.
 *
 * @param meet what its competition says now
 * @param out the output folder
 * @param network which the landmarks were read with, and looks how
 */
public record KeptClip(Clip clip, MeetSheet meet, Path out, NetworkCard network, List<Look> looks) {

    public KeptClip {
        looks = List.copyOf(looks);
    }

    ClipSources sources(ClipOpener opener) {
        return new ClipSources(opener, network, looks, out, ClipDigests.trusting(out));
    }
}
