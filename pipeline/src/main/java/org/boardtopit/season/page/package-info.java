/** The page of a season, made with the template and the plots of the competition's page. */
package org.boardtopit.season.page;
