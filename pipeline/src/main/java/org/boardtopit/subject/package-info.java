/** Finds the athlete among officials and spectators and follows them through the clip. */
package org.boardtopit.subject;
