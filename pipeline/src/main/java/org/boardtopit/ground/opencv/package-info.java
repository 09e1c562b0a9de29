/** The background of a clip, followed with OpenCV. */
package org.boardtopit.ground.opencv;
