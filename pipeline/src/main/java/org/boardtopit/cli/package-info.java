/**
 * The command line: puts the stages together, and is the only place that prints or ends the process.
 *
 * <p>Results and progress go to standard output, errors and warnings to standard error, each error on one line.
 */
package org.boardtopit.cli;
