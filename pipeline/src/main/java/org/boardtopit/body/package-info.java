/** The body as a chain of segments: published masses and centres, and the centre of mass from the points seen. Pure. */
package org.boardtopit.body;
