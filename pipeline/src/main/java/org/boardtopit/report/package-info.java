/** From measures to table rows and to the scene of the overlay video. */
package org.boardtopit.report;
