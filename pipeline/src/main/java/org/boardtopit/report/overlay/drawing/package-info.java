/** Paints a scene onto the pixels of a frame, with OpenCV's drawing functions; native memory stays in here. */
package org.boardtopit.report.overlay.drawing;
