package org.boardtopit.report.tables;

/**
 * What a cell may hold, in the words of the W3C's vocabulary for tabular data.
 *
 * @param base string, integer, decimal, boolean or date
 * @param words of a string: regular expression of all that it may be; null when any text may stand there
 */
record CellType(String base, String words) {
    static final CellType TEXT = new CellType("string", null);
    static final CellType WHOLE = new CellType("integer", null);
    static final CellType NUMBER = new CellType("decimal", null);
    static final CellType YES_OR_NO = new CellType("boolean", null);

    /** A day of the calendar, year-month-day. */
    static final CellType DATE = new CellType("date", null);

    static CellType word(String words) {
        return new CellType("string", words);
    }
}
