/** Plots as SVG inside a page: lines, bars and words, coloured by the page's style sheet. Nothing here knows what is measured. */
package org.boardtopit.report.plot;
