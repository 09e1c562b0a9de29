package org.boardtopit.synthetic;

import java.util.List;

/** A jumper of whom everything is known. World: along from the take-off line, across to the athlete's left, height; metres. */
public interface Jumper {
    List<TrueContact> contacts();

    double statureM();

    double endS();

    /** Middle of the hips: along, height. */
    double[] hips(double timeS);

    /** All points at a time: [point][along, across, height]. */
    double[][] points(double timeS);
}
