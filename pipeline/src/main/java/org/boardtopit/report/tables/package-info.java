/**
 * The tables of a run and its record, as files.
 *
 * <p>RFC 4180: UTF-8, with a byte order mark only where one is asked for, a header row, rows that end in CR LF, quotes where a cell needs them.
 * Numbers are in SI units with the unit in the column's name. A number that is null, NaN or infinite is an empty cell:
 * not measurable. Text cells are made harmless for spreadsheet programs. The names and the order of files and columns
 * are fixed, because other people's spreadsheets depend on them. tables.json tells programs what every column holds.
 */
package org.boardtopit.report.tables;
