package org.boardtopit.signal;

/** A series after gap filling, which remembers what was filled. */
public final class FilledSeries {

    private final double[] values;
    private final boolean[] filled;

    FilledSeries(double[] values, boolean[] filled) {
        this.values = values;
        this.filled = filled;
    }

    /** All values; NaN where a gap was left open. */
    public double[] values() {
        return values.clone();
    }

    /** True when the value of a sample was made by filling. */
    public boolean isFilled(int sample) {
        return filled[sample];
    }

    /** Share of all samples that were filled, 0 to 1; 0 for an empty series. */
    public double filledShare() {
        return filledShare(0, filled.length);
    }

    /** Share of the samples from {@code from} to before {@code to} that were filled, 0 to 1; 0 for none. */
    public double filledShare(int from, int to) {
        int count = 0;
        for (int i = from; i < to; i++) {
            count += filled[i] ? 1 : 0;
        }
        return to > from ? (double) count / (to - from) : 0;
    }
}
