/** Landmarks: the network on each square. */
package org.boardtopit.pose;
