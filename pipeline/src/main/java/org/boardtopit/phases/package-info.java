/** From contacts to the phases of the attempt. */
package org.boardtopit.phases;
