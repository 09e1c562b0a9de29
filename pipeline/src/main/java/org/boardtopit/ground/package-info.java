/** Where the runway is in the picture: background motion, and metres from marks. */
package org.boardtopit.ground;
