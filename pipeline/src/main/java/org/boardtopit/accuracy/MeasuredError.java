package org.boardtopit.accuracy;

/**
 * One measured value against its truth, in the unit of the measure.
 *
 * @param error measured less true; NaN when there is a truth and it was not measured
 * @param sd standard deviation that was stated with the value; NaN when none was
 */
record MeasuredError(Measure measure, double error, double sd) {

    /** From values in the pipeline's own unit. */
    static MeasuredError of(Measure measure, double measured, double truth, double sd) {
        return new MeasuredError(measure, measure.perUnit() * (measured - truth), measure.perUnit() * sd);
    }

    /** A value that comes without a standard deviation. */
    static MeasuredError of(Measure measure, double measured, double truth) {
        return of(measure, measured, truth, Double.NaN);
    }
}
