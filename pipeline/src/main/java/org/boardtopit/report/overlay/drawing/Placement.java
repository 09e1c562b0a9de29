package org.boardtopit.report.overlay.drawing;

import org.boardtopit.signal.Point2;

/** Where a point of a pose comes to lie in the painted picture; unknown stays unknown. */
@FunctionalInterface
interface Placement {
    Placement UNMOVED = p -> p;

    Point2 of(Point2 point);
}
