package org.boardtopit.contacts;

import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import org.boardtopit.clips.Pattern;

/**
 * All contacts of an attempt in time order.
 *
 * @param contacts approach contacts, then board, hop landing, step landing and pit as far as found, or those of a drill
 * @param sequenceConfidence 0 to 1: how clearly the legal order was the best explanation
 * @param remarks what stood in the way, in plain words; may be empty
 * @param pattern what was looked for; empty for a triple jump from the board
 */
public record ContactTimeline(
        List<Contact> contacts, double sequenceConfidence, List<String> remarks, Optional<Pattern> pattern) {

    public ContactTimeline {
        contacts = List.copyOf(contacts);
        remarks = List.copyOf(remarks);
        for (int i = 1; i < contacts.size(); i++) {
            if (contacts.get(i).touchdownS() < contacts.get(i - 1).touchdownS()) {
                throw new IllegalArgumentException("contacts must be in time order");
            }
        }
    }

    /** Of a triple jump. */
    public ContactTimeline(List<Contact> contacts, double sequenceConfidence, List<String> remarks) {
        this(contacts, sequenceConfidence, remarks, Optional.empty());
    }

    public Optional<Contact> of(ContactKind kind) {
        return contacts.stream().filter(c -> c.kind() == kind).findFirst();
    }

    /**
     * The same contacts with what else their places are in doubt by.
     *
     * @param sdM standard deviation of a place along the runway, in metres; what is not finite adds nothing
     */
    public ContactTimeline withDoubtOfPlaces(DoubleUnaryOperator sdM) {
        List<Contact> wider = contacts.stream()
                .map(c -> c.withDoubtOfPlace(sdM.applyAsDouble(c.toeAlongM())))
                .toList();
        return new ContactTimeline(wider, sequenceConfidence, remarks, pattern);
    }

    /** True for a drill, which has no board and need not end in a pit. */
    public boolean isDrill() {
        return pattern.isPresent() && !pattern.get().isTripleJump();
    }

    /** True when a pattern was looked for and not found; the remark says so. */
    public boolean isPatternMissing() {
        return pattern.isPresent() && contacts.isEmpty();
    }

    /** True when board, hop landing, step landing and pit were all found, or the whole pattern of a drill. */
    public boolean isComplete() {
        if (isDrill()) {
            return !contacts.isEmpty();
        }
        return of(ContactKind.BOARD).isPresent()
                && of(ContactKind.HOP_LANDING).isPresent()
                && of(ContactKind.STEP_LANDING).isPresent()
                && of(ContactKind.PIT).isPresent();
    }
}
