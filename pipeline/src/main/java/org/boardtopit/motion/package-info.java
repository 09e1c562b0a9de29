/** From landmarks to a repaired motion in the plane of the run. */
package org.boardtopit.motion;
