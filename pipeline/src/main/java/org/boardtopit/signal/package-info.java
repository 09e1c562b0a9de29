/** Filters, interpolation, robust fits and plane geometry: pure functions, no I/O, no native code. */
package org.boardtopit.signal;
