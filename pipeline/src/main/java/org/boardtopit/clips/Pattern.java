package org.boardtopit.clips;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/**
 * What a drill clip shows: which foot comes down after which, and what each flight between them is called.
 *
 * <p>Written as words or as feet. A word is a flight: hop = the next contact is of the same foot, step (or bound) = of the
 * other foot, jump = of both feet, in the pit or elsewhere; so three words have four contacts. Feet are the contacts
 * themselves; the flight between equal feet is a hop, to both feet a jump, to another foot a step. The one word skip stands
 * for R R L L R R and so on, for as many contacts as there are.
 *
 * @param flights names of the flights in the order of time; of a skip the one name SKIP
 * @param feet the contacts as written; empty where the words leave the feet open
 */
public record Pattern(List<Flight> flights, List<Feet> feet) {
    /** What would be right, for messages. */
    static final String EXAMPLES = "words such as hop-hop-hop or step-step-jump, skip, or feet such as R R L L";

    private static final Map<String, Flight> WORDS = Map.of(
            "hop", Flight.HOP, "step", Flight.STEP, "bound", Flight.STEP, "jump", Flight.JUMP, "skip", Flight.SKIP);
    private static final Map<String, Feet> FEET = Map.of("l", Feet.LEFT, "r", Feet.RIGHT, "both", Feet.BOTH);

    /** From one contact to the next. */
    public enum Flight {
        /** To the same foot. */
        HOP,
        /** To the other foot, or from both to one. */
        STEP,
        /** To both feet. */
        JUMP,
        /** A skip's, to the same and to the other foot in turn. */
        SKIP
    }

    /** What stands on the ground in a contact. */
    public enum Feet {
        LEFT,
        RIGHT,
        BOTH;

        /** The other foot; of both, both. */
        public Feet other() {
            return this == LEFT ? RIGHT : this == RIGHT ? LEFT : BOTH;
        }
    }

    public Pattern {
        flights = List.copyOf(flights);
        feet = List.copyOf(feet);
        if (flights.isEmpty()) {
            throw new IllegalArgumentException("a pattern needs a flight");
        }
        if (!feet.isEmpty() && feet.size() != flights.size() + 1) {
            throw new IllegalArgumentException(
                    "contacts must be one more than flights, were " + feet.size() + " and " + flights.size());
        }
    }

    /**
     * Reads a pattern; letters may be small or capital, between them stand hyphens or spaces.
     *
     * @throws IllegalArgumentException with a message for the user, saying what would be right
     */
    public static Pattern parse(String text) {
        List<String> parts = List.of(text.strip().toLowerCase(Locale.ROOT).split("[ -]+", -1));
        for (String part : parts) {
            if (!WORDS.containsKey(part) && !FEET.containsKey(part)) {
                throw new IllegalArgumentException("must be " + EXAMPLES + ", was " + InputException.quoted(text)
                        + (part.isEmpty() ? "" : ", in which " + InputException.quoted(part) + " is unknown"));
            }
        }
        if (parts.stream().allMatch(WORDS::containsKey)) {
            return ofWords(parts.stream().map(WORDS::get).toList());
        }
        if (parts.stream().allMatch(FEET::containsKey)) {
            return ofFeet(parts.stream().map(FEET::get).toList());
        }
        throw new IllegalArgumentException(
                "must be all words or all feet, not some of each, was " + InputException.quoted(text));
    }

    private static Pattern ofWords(List<Flight> flights) {
        if (flights.contains(Flight.SKIP) && flights.size() > 1) {
            throw new IllegalArgumentException(
                    "skip stands alone and for as many contacts as there are; write other mixtures as feet, such as R R L");
        }
        int jump = flights.indexOf(Flight.JUMP);
        if (jump >= 0 && flights.subList(jump, flights.size()).stream().anyMatch(f -> f != Flight.JUMP)) {
            throw new IllegalArgumentException(
                    "after a jump, which lands on both feet, words do not say which foot comes"
                            + " next; write feet, such as both R R L");
        }
        return new Pattern(flights, List.of());
    }

    private static Pattern ofFeet(List<Feet> feet) {
        if (feet.size() < 2) {
            throw new IllegalArgumentException("needs two contacts or more, such as R R L L");
        }
        List<Flight> flights = new ArrayList<>();
        for (int i = 1; i < feet.size(); i++) {
            boolean same = feet.get(i) == feet.get(i - 1);
            flights.add(feet.get(i) == Feet.BOTH ? Flight.JUMP : same ? Flight.HOP : Flight.STEP);
        }
        return new Pattern(flights, feet);
    }

    /** True for a pattern that goes on for as many contacts as there are. */
    public boolean isSkip() {
        return flights.get(0) == Flight.SKIP;
    }

    /** True for hop-step-jump in words: the triple jump itself, from any approach. Written as feet it stays a drill. */
    public boolean isTripleJump() {
        return feet.isEmpty() && flights.equals(List.of(Flight.HOP, Flight.STEP, Flight.JUMP));
    }

    /**
     * Which feet may come down one after the other: one order where feet are written or the first is known, else one for
     * each foot. Of a skip the four contacts that come again and again, of which any may be the first.
     *
     * @param first the foot of the first contact, where it is known otherwise
     */
    public List<List<Feet>> orders(Optional<TakeoffFoot> first) {
        if (!feet.isEmpty()) {
            return List.of(feet);
        }
        if (isSkip()) {
            return List.of(List.of(Feet.RIGHT, Feet.RIGHT, Feet.LEFT, Feet.LEFT));
        }
        if (first.isPresent()) {
            return List.of(from(first.get() == TakeoffFoot.LEFT ? Feet.LEFT : Feet.RIGHT));
        }
        return flights.get(0) == Flight.JUMP ? List.of(from(Feet.BOTH)) : List.of(from(Feet.LEFT), from(Feet.RIGHT));
    }

    private List<Feet> from(Feet first) {
        List<Feet> order = new ArrayList<>(List.of(first));
        for (Flight flight : flights) {
            Feet last = order.get(order.size() - 1);
            order.add(flight == Flight.JUMP ? Feet.BOTH : flight == Flight.HOP ? last : last.other());
        }
        return order;
    }

    /** The foot of the first contact where feet are written; empty for both and where words leave it open. */
    public Optional<TakeoffFoot> firstFoot() {
        if (feet.isEmpty() || feet.get(0) == Feet.BOTH) {
            return Optional.empty();
        }
        return Optional.of(feet.get(0) == Feet.LEFT ? TakeoffFoot.LEFT : TakeoffFoot.RIGHT);
    }

    /** As it may be written in a sheet. */
    @Override
    public String toString() {
        if (feet.isEmpty()) {
            return String.join(
                    "-",
                    flights.stream().map(f -> f.name().toLowerCase(Locale.ROOT)).toList());
        }
        return String.join(
                " ",
                feet.stream()
                        .map(f -> f == Feet.BOTH ? "both" : f.name().substring(0, 1))
                        .toList());
    }
}
