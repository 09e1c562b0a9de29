package org.boardtopit.clips;

import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import javax.crypto.Mac;
import javax.crypto.spec.SecretKeySpec;

/**
 * Other names for the athletes of one competition, the same in every run and whatever the order of the sheets, and different
 * in every competition.
 *
 * <p>A pseudonym is the beginning of HMAC-SHA-256 (RFC 2104) of competition, day and bib, or the name where there is no bib,
 * written in letters and digits that make no words. Who has the key and a list of those who may have started can find out by
 * trying; without a key in the sheet everybody has it.
 */
final class Pseudonyms {
    private static final String PREFIX = "athlete-";
    /** No vowels, and nothing that looks like something else. */
    private static final String LETTERS = "bcdfghjkmnpqrstvwxz23456789";

    /** 27^5 is 14 million: two of a hundred athletes share one in a competition of 3000; then all get longer. */
    private static final int SHORTEST = 5;

    private static final int LONGEST = 20;

    /** Stays from one competition to the next, on purpose: whoever gives an id asks for that. */
    private static final String ID_PREFIX = "id-";

    /** 27^8 is 3 * 10^11: two of ten thousand athletes of a club's years share one in 6000 clubs. */
    private static final int ID_LENGTH = 8;

    private final String key;

    private final Map<String, String> byIdentity = new LinkedHashMap<>();
    private final Map<String, String> bibByName;

    private Pseudonyms(MeetSheet meet, String key) {
        this.key = key;
        bibByName = meet.athletes().stream()
                .filter(a -> !a.bib().isEmpty() && !a.name().isEmpty())
                .collect(Collectors.toMap(Athlete::name, Athlete::bib, (first, second) -> ""));
        Set<String> identities = new TreeSet<>();
        meet.athletes().forEach(a -> identity(a.bib(), a.name()).ifPresent(identities::add));
        entries(meet).forEach(e -> identity(e.bib(), e.athlete()).ifPresent(identities::add));
        String competition =
                meet.competition() + "\n" + meet.date().map(Object::toString).orElse("");
        int length = SHORTEST;
        do {
            byIdentity.clear();
            for (String identity : identities) {
                byIdentity.put(identity, pseudonym(competition + "\n" + identity, key, length));
            }
            length++;
        } while (Set.copyOf(byIdentity.values()).size() < identities.size() && length <= LONGEST);
    }

    /**
     * The sheet with other names in place of the athletes' own, as it asks for; whoever reads it from then on never meets a
     * name.
     *
     * @param key what the pseudonyms are made with beside what the sheet says; may be empty
     */
    static MeetSheet applied(MeetSheet meet, String key) {
        boolean bibs = meet.safeguards().names() == Safeguards.Names.PSEUDONYMS_AND_BIBS;
        if (meet.safeguards().names() == Safeguards.Names.SHOW) {
            return meet;
        }
        Pseudonyms pseudonyms = new Pseudonyms(meet, key);
        List<Athlete> athletes = new ArrayList<>();
        meet.athletes().forEach(a -> athletes.add(pseudonyms.of(a, bibs)));
        Optional<AttemptSheet> attempts = meet.attempts()
                .map(sheet -> new AttemptSheet(
                        sheet.file(),
                        sheet.entries().stream()
                                .map(e -> pseudonyms.of(e, bibs))
                                .toList()));
        return meet.with(attempts, athletes);
    }

    private static List<AttemptEntry> entries(MeetSheet meet) {
        return meet.attempts().map(AttemptSheet::entries).orElse(List.of());
    }

    /** The bib tells athletes apart; a name alone counts as the bib that the sheet has for it. */
    private Optional<String> identity(String bib, String name) {
        String number = bib.isEmpty() ? bibByName.getOrDefault(name, "") : bib;
        if (number.isEmpty() && name.isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(number.isEmpty() ? "name " + name : "bib " + number);
    }

    private String of(String bib, String name) {
        return identity(bib, name).map(byIdentity::get).orElse("");
    }

    private Athlete of(Athlete a, boolean bibs) {
        String pseudonym = of(a.bib(), a.name());
        String bib = bibs && !a.bib().isEmpty() ? pseudonym : a.bib();
        String id = a.id().isEmpty()
                ? ""
                : pseudonym("id\n" + a.id(), key, ID_LENGTH).replace(PREFIX, ID_PREFIX);
        return new Athlete(bib, pseudonym, a.sex(), a.statureM(), a.bornYear(), a.level(), a.team(), id);
    }

    private AttemptEntry of(AttemptEntry e, boolean bibs) {
        String pseudonym = of(e.bib(), e.athlete());
        return e.named(bibs && !e.bib().isEmpty() ? pseudonym : e.bib(), pseudonym);
    }

    private static String pseudonym(String what, String key, int length) {
        byte[] digest = hmac(what, key);
        StringBuilder letters = new StringBuilder(PREFIX);
        for (int i = 0; i < length; i++) {
            letters.append(LETTERS.charAt((digest[i] & 0xff) % LETTERS.length()));
        }
        return letters.toString();
    }

    private static byte[] hmac(String what, String key) {
        try {
            Mac mac = Mac.getInstance("HmacSHA256");
            byte[] secret = ("boardtopit pseudonyms " + key).getBytes(StandardCharsets.UTF_8);
            mac.init(new SecretKeySpec(secret, "HmacSHA256"));
            return mac.doFinal(what.getBytes(StandardCharsets.UTF_8));
        } catch (GeneralSecurityException e) {
            throw new IllegalStateException("every Java platform has HmacSHA256", e);
        }
    }
}
