package org.boardtopit.synthetic;

import java.util.List;
import org.boardtopit.contacts.Foot;

/**
 * A drill that is to be drawn.
 *
 * @param contacts feet in the order of time; both only at the end
 * @param approach true for three running strides before it, false for a start from standing on the first foot
 * @param slow true for 1 to 3.5 m/s as in skipping, false for 2.2 to 6.5 m/s
 */
public record DrawnDrill(List<Foot> contacts, boolean approach, boolean slow) {

    public DrawnDrill {
        contacts = List.copyOf(contacts);
    }
}
