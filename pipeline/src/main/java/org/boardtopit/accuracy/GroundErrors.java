package org.boardtopit.accuracy;

import java.util.ArrayList;
import java.util.List;
import org.boardtopit.ground.RunwayCamera;
import org.boardtopit.ground.RunwayView;
import org.boardtopit.signal.Point2;

/**
 * Where the pipeline puts known points of the ground: each goes through the frame's true camera into the picture and through
 * the pipeline's own view back to the runway.
 *
 * @param cameraMoves whether the camera was panned or zoomed
 * @param alongCm place along the runway, found less true
 * @param acrossCm the same across
 */
record GroundErrors(boolean cameraMoves, List<Double> alongCm, List<Double> acrossCm) {
    GroundErrors {
        alongCm = List.copyOf(alongCm);
        acrossCm = List.copyOf(acrossCm);
    }

    /** Of every mark in the picture of every registered frame; nothing without marks in the meet sheet. */
    static GroundErrors of(AttemptTruth truth, RunwayView view) {
        List<Double> along = new ArrayList<>();
        List<Double> across = new ArrayList<>();
        if (view.camera().isPresent()) {
            RunwayCamera camera = view.camera().get();
            for (int f = 0; f < truth.frames().size(); f++) {
                for (Point2 mark : truth.groundMarks()) {
                    Point2 px = truth.camera(f).project(mark.x(), mark.y(), 0);
                    if (truth.inPicture(px) && view.background().frame(f).registered()) {
                        Point2 found = camera.onGround(view.background().toFixed(f, px));
                        along.add(100 * (found.x() - mark.x()));
                        across.add(100 * (found.y() - mark.y()));
                    }
                }
            }
        }
        return new GroundErrors(view.background().cameraMoves(), along, across);
    }
}
