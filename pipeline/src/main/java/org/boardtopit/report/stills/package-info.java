/**
 * What the still pictures of an attempt show, as records: one at each instant of each contact and flight, the strip of them all, and
 * the runway with the athlete at every contact. Nothing here measures and nothing here draws.
 *
 * <p><em>Still metres</em> are a plane of each still: the plane of the run as the camera sees it, x to the right in the picture, y
 * down, the origin on the ground under what the picture is centred on. So the ground is y = 0 in every still of every attempt.
 */
package org.boardtopit.report.stills;
