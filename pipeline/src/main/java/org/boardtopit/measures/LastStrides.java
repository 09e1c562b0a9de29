package org.boardtopit.measures;

/**
 * The last two strides of the approach, from toe to toe.
 *
 * @param penultimateM length of the stride before the last
 * @param lastM length of the stride onto the board
 * @param ratio last over penultimate
 */
public record LastStrides(Reading penultimateM, Reading lastM, Reading ratio) {

    /** From the places of three contacts in a row; the places err independently. */
    static LastStrides of(Reading first, Reading second, Reading board) {
        Reading penultimate = new Reading(second.value() - first.value(), Math.hypot(first.sd(), second.sd()));
        Reading last = new Reading(board.value() - second.value(), Math.hypot(second.sd(), board.sd()));
        double ratio = last.value() / penultimate.value();
        // The middle place lengthens one stride as it shortens the other.
        double ofFirst = ratio * first.sd();
        double ofSecond = (1 + ratio) * second.sd();
        double sd = Math.sqrt(ofFirst * ofFirst + ofSecond * ofSecond + board.sd() * board.sd()) / penultimate.value();
        return new LastStrides(penultimate, last, new Reading(ratio, sd));
    }
}
