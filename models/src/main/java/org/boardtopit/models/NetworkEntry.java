package org.boardtopit.models;

import java.util.Optional;

/**
 * One line in the list of networks.
 *
 * @param name by which it is chosen
 * @param shipped true for a network of this program, false for one of the user's
 * @param card its card; empty when it cannot be used
 * @param problem why it cannot be used; empty when it has a card
 */
public record NetworkEntry(String name, boolean shipped, Optional<NetworkCard> card, String problem) {
    public NetworkEntry {
        if (card.isPresent() != problem.isEmpty()) {
            throw new IllegalArgumentException("an entry has either a card or a problem, was " + card + ", " + problem);
        }
    }
}
