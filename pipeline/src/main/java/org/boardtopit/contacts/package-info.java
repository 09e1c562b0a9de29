/** When which foot is on the ground, and which contact of the attempt it is. */
package org.boardtopit.contacts;
