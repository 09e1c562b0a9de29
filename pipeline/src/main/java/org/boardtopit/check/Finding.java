package org.boardtopit.check;

/**
 * One thing to know before the night.
 *
 * @param weight whether something will be missing in the morning
 * @param place the file or sheet that it is about
 * @param what is so
 * @param right what would be right; empty when that goes without saying
 */
public record Finding(Weight weight, String place, String what, String right) {

    /** PROBLEM: something will not be measured, or wrongly. REMARK: it will be measured, less well than it could be. */
    public enum Weight {
        PROBLEM,
        REMARK
    }

    public Finding {
        if (what.isBlank()) {
            throw new IllegalArgumentException("a finding says something");
        }
    }

    static Finding problem(String place, String what, String right) {
        return new Finding(Weight.PROBLEM, place, what, right);
    }

    static Finding remark(String place, String what, String right) {
        return new Finding(Weight.REMARK, place, what, right);
    }

    /** In one line. */
    public String line() {
        return (place.isEmpty() ? "" : place + ": ") + what + (right.isEmpty() ? "" : "; " + right);
    }
}
