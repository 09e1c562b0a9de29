package org.boardtopit.report.tables;

/**
 * Keeps spreadsheet programs from taking text for a formula.
 *
 * <p>A cell that begins with = + - @, a tab or a line end may be run when the table is opened, so such a cell gets an
 * apostrophe in front, which the programs take as "this is text" (OWASP, "CSV Injection"). The same goes for the
 * full-width forms of the four signs, and for a sign behind blanks, which some programs strip.
 */
final class FormulaGuard {
    private static final String SIGNS = "=+-@\t\r\n\uFF1D\uFF0B\uFF0D\uFF20";

    private FormulaGuard() {}

    static String guard(String text) {
        return startsLikeFormula(text) ? "'" + text : text;
    }

    private static boolean startsLikeFormula(String text) {
        int i = 0;
        while (i < text.length() && isBlank(text.charAt(i))) {
            i++;
        }
        return i < text.length() && SIGNS.indexOf(text.charAt(i)) >= 0;
    }

    /** Blanks that are no sign themselves; invisible control characters count as blanks. */
    private static boolean isBlank(char c) {
        return SIGNS.indexOf(c) < 0
                && (Character.isWhitespace(c)
                        || Character.isSpaceChar(c)
                        || Character.isISOControl(c)
                        || c == '\uFEFF'
                        || c == '\u200B');
    }
}
