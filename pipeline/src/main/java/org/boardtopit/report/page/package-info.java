/**
 * The page of a competition: index.html, one file that needs nothing but the pictures and videos beside it.
 *
 * <p>Flow: {@link org.boardtopit.report.page.PageRows} are joined to {@code Series} of {@code Attempt}s, these become views (records
 * of finished text and plots), and templates lay the views out. Templates decide nothing; words are in the bundle {@code page}.
 */
package org.boardtopit.report.page;
