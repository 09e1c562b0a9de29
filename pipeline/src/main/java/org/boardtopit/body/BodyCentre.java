package org.boardtopit.body;

import org.boardtopit.signal.Point2;

/**
 * The centre of mass at one instant.
 *
 * @param place in the plane and unit of the points it was made from; unknown when too little was seen
 * @param massSeen share of the body's mass whose segments were seen at both ends, 0 to 1; the rest was placed by rule
 * @param sd standard deviation in each direction that the points' own uncertainty leaves, same unit; NaN when unknown. It
 *     holds nothing of the table's own error, some 1-2 cm for a given person
 */
public record BodyCentre(Point2 place, double massSeen, double sd) {

    public BodyCentre {
        if (!(massSeen >= 0 && massSeen <= 1 + 1e-9)) {
            throw new IllegalArgumentException("the mass seen is a share, 0 to 1, was " + massSeen);
        }
    }
}
