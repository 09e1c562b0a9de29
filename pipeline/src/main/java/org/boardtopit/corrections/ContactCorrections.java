package org.boardtopit.corrections;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.boardtopit.clips.Correction;
import org.boardtopit.clips.Correction.Field;
import org.boardtopit.clips.Label;
import org.boardtopit.contacts.Contact;
import org.boardtopit.contacts.ContactKind;
import org.boardtopit.contacts.ContactTimeline;
import org.boardtopit.contacts.Foot;
import org.boardtopit.pose.ClipLandmarks;

/**
 * Puts contacts right, in two steps: which contacts there are and what they are (kind, foot, remove, add), from which everything
 * is measured anew; then when they touch and leave, which changes only what is beside them
 * ({@code docs/decisions/0022}). Numbers of contacts are those of what the program found.
 */
public final class ContactCorrections {
    private static final String CONTACT = "contact";
    private static final String VALUE = "value";

    private final List<Correction> corrections;
    private final ClipLandmarks clip;
    private final ClipInstants instants;

    /** Of one clip. */
    public ContactCorrections(List<Correction> corrections, ClipLandmarks clip) {
        this.corrections = List.copyOf(corrections);
        this.clip = clip;
        this.instants = new ClipInstants(clip);
    }

    /** Makes a contact at the instants at which a person saw it. */
    @FunctionalInterface
    public interface Seeing {
        Contact seen(ContactKind kind, Foot foot, double touchdownS, double toeOffS, double sdS);
    }

    /**
     * Contacts whose instants were put right.
     *
     * @param contacts all of the attempt
     * @param touchdowns which of them touch at another time now, by their place in the list
     * @param toeOffs which leave at another time now
     */
    public record Timed(ContactTimeline contacts, Set<Integer> touchdowns, Set<Integer> toeOffs) {
        public Timed {
            touchdowns = Set.copyOf(touchdowns);
            toeOffs = Set.copyOf(toeOffs);
        }

        /** True when nothing was put right. */
        public boolean isAsFound() {
            return touchdowns.isEmpty() && toeOffs.isEmpty();
        }
    }

    /**
     * The landmarks with left and right exchanged when all three contacts of the jump stand on the other foot than was found, for
     * then the sides are wrong throughout; else empty.
     *
     * @param found with the landmarks as they are
     */
    public Optional<ClipLandmarks> withOtherSides(ContactTimeline found) {
        Map<Integer, Correction> feet = byContact(found, Fields.FOOT);
        boolean others = corrections.stream().anyMatch(c -> Fields.STRUCTURE.contains(c.field()));
        if (feet.isEmpty() || others) {
            return Optional.empty();
        }
        int jump = 0;
        int turned = 0;
        for (int i = 0; i < found.contacts().size(); i++) {
            Contact contact = found.contacts().get(i);
            if (LegalOrder.isOnOneFoot(contact.kind())) {
                jump++;
                turned += feet.containsKey(i) && foot(feet.get(i)) != contact.foot() ? 1 : 0;
            }
        }
        return jump == 3 && turned == 3 ? Optional.of(CorrectedLandmarks.sidesExchanged(clip)) : Optional.empty();
    }

    /**
     * The contacts that there are, called what they are.
     *
     * @param found what the program found
     * @throws RefusedCorrectionException when that is no triple jump
     */
    public ContactTimeline called(ContactTimeline found, Seeing seeing) {
        Optional<Correction> first = corrections.stream()
                .filter(c -> Fields.STRUCTURE.contains(c.field()) || c.field() == Field.FOOT)
                .findFirst();
        if (first.isEmpty()) {
            return found;
        }
        if (found.pattern().isPresent()) {
            throw new RefusedCorrectionException(
                    first.get(),
                    "field",
                    "the contacts of a drill follow its pattern: put the pattern right on the attempts sheet");
        }
        List<Contact> contacts = new ArrayList<>(kept(found, seeing));
        Map<Contact, Correction> added = new HashMap<>();
        for (Correction correction : corrections) {
            if (correction.field() == Field.ADD) {
                Contact contact = added(correction, contacts, seeing);
                contacts.add(contact);
                added.put(contact, correction);
            }
        }
        contacts.sort(Comparator.comparingDouble(ContactCorrections::sightS));
        LegalOrder.require(contacts, c -> added.getOrDefault(c, first.get()));
        ContactTimeline called = new ContactTimeline(contacts, found.sequenceConfidence(), found.remarks());
        return called.isComplete() ? new ContactTimeline(contacts, 1, List.of()) : called;
    }

    /** A contact whose touchdown lies before the clip comes first. */
    private static double sightS(Contact contact) {
        return Double.isNaN(contact.touchdownS()) ? Double.NEGATIVE_INFINITY : contact.touchdownS();
    }

    private List<Contact> kept(ContactTimeline found, Seeing seeing) {
        Map<Integer, Correction> removed = byContact(found, Fields.REMOVE);
        Map<Integer, Correction> kinds = byContact(found, Fields.KIND);
        Map<Integer, Correction> feet = byContact(found, Fields.FOOT);
        Map<Integer, Correction> toeOffs = byContact(found, Fields.TOE_OFF);
        List<Contact> kept = new ArrayList<>();
        for (int i = 0; i < found.contacts().size(); i++) {
            Contact contact = found.contacts().get(i);
            if (removed.containsKey(i)) {
                requireAlone(i, removed.get(i), List.of(kinds, feet, toeOffs, byContact(found, Fields.TOUCHDOWN)));
            } else if (kinds.containsKey(i) || feet.containsKey(i)) {
                kept.add(called(contact, kinds.get(i), feet.get(i), toeOffs.get(i), seeing));
            } else {
                kept.add(contact);
            }
        }
        return kept;
    }

    private static void requireAlone(int contact, Correction removed, List<Map<Integer, Correction>> others) {
        for (Map<Integer, Correction> other : others) {
            if (other.containsKey(contact)) {
                throw new RefusedCorrectionException(
                        other.get(contact), CONTACT, "contact " + contact + " is removed on line " + removed.line());
            }
        }
    }

    /** Into the pit and out of it a contact becomes another thing; it is made anew. */
    private Contact called(
            Contact contact, Correction kindSaid, Correction footSaid, Correction toeOffSaid, Seeing seeing) {
        ContactKind kind = kindSaid == null ? contact.kind() : word(ContactKind.values(), kindSaid.kind());
        boolean pit = kind == ContactKind.PIT;
        Foot foot = footSaid != null ? foot(footSaid) : pit ? Foot.BOTH : contact.foot();
        if (pit != (foot == Foot.BOTH)) {
            throw new RefusedCorrectionException(
                    footSaid != null ? footSaid : kindSaid,
                    VALUE,
                    pit
                            ? "in the pit both feet land: the foot is both"
                            : "a " + kind.label() + " is on one foot: say which with a line foot, L or R");
        }
        if (pit == (contact.kind() == ContactKind.PIT)) {
            return contact.called(kind, foot);
        }
        if (!pit && toeOffSaid == null) {
            throw new RefusedCorrectionException(
                    kindSaid, VALUE, "a " + kind.label() + " has a toe-off: say when with a line toe_off_frame");
        }
        double toeOffS = pit ? Double.NaN : instants.fromS(toeOffSaid);
        if (toeOffS <= contact.touchdownS()) {
            throw new RefusedCorrectionException(toeOffSaid, VALUE, "the toe-off is not after the touchdown");
        }
        return seeing.seen(kind, foot, contact.touchdownS(), toeOffS, instants.sdS());
    }

    private Contact added(Correction correction, List<Contact> others, Seeing seeing) {
        ContactKind kind = word(ContactKind.values(), correction.kind());
        double fromS = instants.fromS(correction);
        double toS = instants.toS(correction);
        for (Contact other : others) {
            double endS = Double.isNaN(toS) ? fromS : toS;
            boolean apart = endS < other.touchdownS() || fromS > end(other);
            if (!apart) {
                throw new RefusedCorrectionException(
                        correction,
                        VALUE,
                        "at that time there is a contact already: "
                                + other.kind().label() + " " + other.foot().label() + " at "
                                + instants.inWords(other.touchdownS()));
            }
        }
        return seeing.seen(kind, word(Foot.values(), correction.foot()), fromS, toS, instants.sdS());
    }

    private static double end(Contact contact) {
        return Double.isNaN(contact.toeOffS()) ? contact.touchdownS() : contact.toeOffS();
    }

    /**
     * The contacts touching and leaving when the analyst saw it.
     *
     * @param found what the program found, by whose numbers the corrections go
     * @param called the same with the right contacts in it ({@link #called})
     * @throws RefusedCorrectionException when an instant lies outside the clip or contacts would come in another order
     */
    public Timed timed(ContactTimeline found, ContactTimeline called) {
        Map<Integer, Correction> touchdowns = byContact(found, Fields.TOUCHDOWN);
        Map<Integer, Correction> toeOffs = byContact(found, Fields.TOE_OFF);
        List<Contact> contacts = new ArrayList<>(called.contacts());
        Map<Integer, Correction> reasons = new HashMap<>();
        Set<Integer> touching = new HashSet<>();
        Set<Integer> leaving = new HashSet<>();
        for (int i = 0; i < found.contacts().size(); i++) {
            Correction touchdown = touchdowns.get(i);
            Correction toeOff = toeOffs.get(i);
            if (touchdown != null || toeOff != null) {
                int place = place(found.contacts().get(i), called.contacts());
                contacts.set(place, timed(contacts.get(place), touchdown, toeOff));
                reasons.put(place, touchdown != null ? touchdown : toeOff);
                add(touching, place, touchdown);
                add(leaving, place, toeOff);
            }
        }
        requireOrder(contacts, reasons);
        ContactTimeline timed =
                new ContactTimeline(contacts, called.sequenceConfidence(), called.remarks(), called.pattern());
        return new Timed(timed, touching, leaving);
    }

    private static void add(Set<Integer> places, int place, Correction said) {
        if (said != null) {
            places.add(place);
        }
    }

    /** Where a contact that was found is now. */
    private static int place(Contact found, List<Contact> contacts) {
        for (int i = 0; i < contacts.size(); i++) {
            Contact one = contacts.get(i);
            boolean same = Double.isNaN(found.touchdownS())
                    ? one.toeOffS() == found.toeOffS()
                    : one.touchdownS() == found.touchdownS();
            if (same) {
                return i;
            }
        }
        throw new IllegalStateException("a contact that was found is missing: " + found);
    }

    private Contact timed(Contact contact, Correction touchdown, Correction toeOff) {
        if (toeOff != null && contact.kind() == ContactKind.PIT) {
            throw new RefusedCorrectionException(toeOff, "field", "the landing in the pit has no toe-off");
        }
        double downS = touchdown == null ? contact.touchdownS() : instants.fromS(touchdown);
        double offS = toeOff == null ? contact.toeOffS() : instants.fromS(toeOff);
        if (downS >= offS) {
            throw new RefusedCorrectionException(
                    touchdown != null ? touchdown : toeOff,
                    VALUE,
                    "the touchdown at " + instants.inWords(downS) + " would not be before the toe-off at "
                            + instants.inWords(offS));
        }
        return contact.timed(
                downS,
                touchdown == null ? contact.touchdownSdS() : instants.sdS(),
                offS,
                toeOff == null ? contact.toeOffSdS() : instants.sdS());
    }

    private void requireOrder(List<Contact> contacts, Map<Integer, Correction> reasons) {
        for (int i = 1; i < contacts.size(); i++) {
            Correction reason = reasons.getOrDefault(i, reasons.get(i - 1));
            double endS = end(contacts.get(i - 1));
            if (reason != null && contacts.get(i).touchdownS() <= endS) {
                throw new RefusedCorrectionException(
                        reason,
                        VALUE,
                        "contacts would overlap: " + contacts.get(i).kind().label() + " would touch down at "
                                + instants.inWords(contacts.get(i).touchdownS()) + ", and "
                                + contacts.get(i - 1).kind().label() + " before it ends at " + instants.inWords(endS));
            }
        }
    }

    /** Which contact each correction of some fields is about; one each. */
    private Map<Integer, Correction> byContact(ContactTimeline found, Set<Field> fields) {
        Map<Integer, Correction> byContact = new HashMap<>();
        for (Correction correction : corrections) {
            if (!fields.contains(correction.field())) {
                continue;
            }
            int contact = number(correction, found.contacts());
            Correction earlier = byContact.putIfAbsent(contact, correction);
            if (earlier != null
                    && (earlier.field() != correction.field() || !earlier.text().equals(correction.text()))) {
                throw new RefusedCorrectionException(
                        correction,
                        VALUE,
                        "line " + earlier.line() + " says otherwise of the same contact: "
                                + earlier.field().label() + " " + earlier.text());
            }
        }
        return byContact;
    }

    private static int number(Correction correction, List<Contact> found) {
        String said = correction.contact();
        if (Character.isDigit(said.charAt(0))) {
            int number = Integer.parseInt(said);
            if (number >= found.size()) {
                throw new RefusedCorrectionException(
                        correction,
                        CONTACT,
                        "there is no contact " + number + ": "
                                + (found.isEmpty()
                                        ? "none was found in this clip; add what is missing"
                                        : "0 to " + (found.size() - 1) + " were found in this clip"));
            }
            return number;
        }
        for (int i = 0; i < found.size(); i++) {
            if (found.get(i).kind().label().equals(said)) {
                return i;
            }
        }
        throw new RefusedCorrectionException(
                correction, CONTACT, "no " + said + " was found in this clip; add it, or give the contact's number");
    }

    private static Foot foot(Correction correction) {
        return word(Foot.values(), correction.foot());
    }

    private static <T extends Label> T word(T[] values, String label) {
        for (T value : values) {
            if (value.label().equals(label)) {
                return value;
            }
        }
        throw new IllegalArgumentException("a word that was read but is not known: " + label);
    }

    /** Fields that go together. */
    private static final class Fields {
        private static final Set<Field> FOOT = Set.of(Field.FOOT);
        private static final Set<Field> KIND = Set.of(Field.KIND);
        private static final Set<Field> REMOVE = Set.of(Field.REMOVE);
        private static final Set<Field> STRUCTURE = Set.of(Field.KIND, Field.REMOVE, Field.ADD);
        private static final Set<Field> TOUCHDOWN = Set.of(Field.TOUCHDOWN_FRAME, Field.TOUCHDOWN_S);
        private static final Set<Field> TOE_OFF = Set.of(Field.TOE_OFF_FRAME, Field.TOE_OFF_S);
    }
}
