/**
 * The look at a competition in the evening: what will not be measured, what could be better, whether the night is long enough.
 * Measures nothing itself and writes nothing.
 */
package org.boardtopit.check;
