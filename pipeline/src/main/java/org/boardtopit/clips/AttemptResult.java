package org.boardtopit.clips;

/** The result of an attempt as a field-event card has it (rules of the event). */
public enum AttemptResult {
    VALID("o"),
    FAILED("x"),
    PASSED("-"),
    RETIRED("r");

    private final String symbol;

    AttemptResult(String symbol) {
        this.symbol = symbol;
    }

    /** o, x, - or r. */
    public String symbol() {
        return symbol;
    }
}
