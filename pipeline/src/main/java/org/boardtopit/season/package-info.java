/** What competitions tell of an athlete: the mean of each, and over several the change, the trend and what comes back. */
package org.boardtopit.season;
