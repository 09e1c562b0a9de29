/** Drawn by code: a triple jumper, cameras and pictures of which everything is known. Our own (SYN); no real athlete. */
package org.boardtopit.synthetic;
