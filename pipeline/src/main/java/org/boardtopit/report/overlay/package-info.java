/**
 * What an overlay video shows, as records: nothing here measures and nothing here draws.
 *
 * <p>Two planes occur. <em>Frame px</em> are the pixels of one upright frame. The <em>fixed picture</em> is the plane in
 * which the background stands still for the whole clip, also when the camera pans; each frame brings the map from it.
 */
package org.boardtopit.report.overlay;
