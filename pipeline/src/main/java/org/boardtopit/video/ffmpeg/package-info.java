/**
 * Reading and writing video with FFmpeg's C libraries, called through their Java presets.
 *
 * <p>The build of FFmpeg used is the LGPL one: H.264 is written by OpenH264. Native memory is freed by the class that
 * made it; nothing native leaves this package.
 */
package org.boardtopit.video.ffmpeg;
