/** One fit over the whole clip: the motion that best explains all frames together with what is known of a jumper. */
package org.boardtopit.fit;
