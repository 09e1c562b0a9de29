/** What an analyst put right, laid over what the program found: before, in and after the finding of contacts. */
package org.boardtopit.corrections;
