/**
 * What goes into a run: the competition's sheets, the cameras' marks and the clips, joined.
 *
 * <p>Unknown text is empty, an unknown number is NaN, an unknown thing is an empty Optional. Whatever the user can put
 * right is an {@link org.boardtopit.clips.InputException} of one line; everything is read and checked before the first
 * clip is opened.
 */
package org.boardtopit.clips;
