/** Clips as upright pictures with true time stamps, and the writing of overlay videos. */
package org.boardtopit.video;
