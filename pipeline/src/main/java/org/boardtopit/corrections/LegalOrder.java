package org.boardtopit.corrections;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.boardtopit.clips.Correction;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.Foot;

/**
 * The order in which the contacts of a triple jump follow each other, and on which feet.
 *
 * <p>The hop lands on the foot from which it was taken off, the step on the other one, from which the jump is made (World Athletics,
 * Technical Rules, TR31; from memory).
 */
final class LegalOrder {
    private static final Map<ContactKind, Integer> RANK = Map.of(
            ContactKind.APPROACH, 0,
            ContactKind.BOARD, 1,
            ContactKind.HOP_LANDING, 2,
            ContactKind.STEP_LANDING, 3,
            ContactKind.PIT, 4);

    private LegalOrder() {}

    /** True of the three contacts of the jump. */
    static boolean isOnOneFoot(ContactKind kind) {
        return kind == ContactKind.BOARD || kind == ContactKind.HOP_LANDING || kind == ContactKind.STEP_LANDING;
    }

    /**
     * Refuses what is no triple jump; some of its contacts may be missing.
     *
     * @param contacts in the order of time
     * @param reason the correction to blame for a contact
     */
    static void require(List<Contact> contacts, Function<Contact, Correction> reason) {
        for (int i = 1; i < contacts.size(); i++) {
            Contact before = contacts.get(i - 1);
            Contact contact = contacts.get(i);
            int step = RANK.get(contact.kind()) - RANK.get(before.kind());
            if (step < 0 || (step == 0 && contact.kind() != ContactKind.APPROACH)) {
                throw new RefusedCorrectionException(
                        reason.apply(contact),
                        "value",
                        "then a " + contact.kind().label() + " would come after a "
                                + before.kind().label()
                                + "; approach, board, hop_landing, step_landing, pit is the order: correct the others too");
            }
        }
        List<Contact> jump = new ArrayList<>(
                contacts.stream().filter(c -> isOnOneFoot(c.kind())).toList());
        for (int i = 1; i < jump.size(); i++) {
            requireFoot(jump.get(0), jump.get(i), reason);
        }
    }

    private static void requireFoot(Contact first, Contact contact, Function<Contact, Correction> reason) {
        boolean changes = contact.kind() == ContactKind.STEP_LANDING;
        Foot right = changes ? first.foot().other() : first.foot();
        if (contact.foot() != right) {
            throw new RefusedCorrectionException(
                    reason.apply(contact),
                    "value",
                    "then the " + first.kind().label() + " would be on "
                            + first.foot().label() + " and the "
                            + contact.kind().label() + " on " + contact.foot().label()
                            + "; board and hop_landing are on one foot, step_landing on the other: correct the feet of"
                            + " all three");
        }
    }
}
