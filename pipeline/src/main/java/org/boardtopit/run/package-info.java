/** Drives the stages for one clip and for a whole competition. */
package org.boardtopit.run;
