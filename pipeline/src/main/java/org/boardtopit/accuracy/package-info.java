/**
 * How far the measures are from the truth, on clips of which it is known: the truth's files, the errors of every measure, how
 * often the stated intervals hold, and the report.
 */
package org.boardtopit.accuracy;
