/** The athlete in the plane across the runway, from a camera in front or behind whose clip is joined to one from the side. */
package org.boardtopit.frontal;
