package org.boardtopit.clips;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.boardtopit.clips.AttemptEntry.Consent;
import org.boardtopit.clips.Safeguards.Consents;

/**
 * Which clips are withheld. A row's own word counts. Where it has none, a refusal of the same athlete in another row counts,
 * and last what the meet sheet says of clips without a word.
 */
final class ConsentCheck {
    private final Consents unsaid;
    private final Map<String, Integer> refusedOnLine = new HashMap<>();

    ConsentCheck(Consents unsaid, List<AttemptEntry> entries) {
        this.unsaid = unsaid;
        for (AttemptEntry entry : entries) {
            if (entry.consent() == Consent.NO) {
                athlete(entry).ifPresent(a -> refusedOnLine.putIfAbsent(a, entry.line()));
            }
        }
    }

    private static Optional<String> athlete(AttemptEntry entry) {
        if (!entry.bib().isEmpty()) {
            return Optional.of("bib " + entry.bib());
        }
        return entry.athlete().isEmpty() ? Optional.empty() : Optional.of("name " + entry.athlete());
    }

    /** The reason for withholding a clip with this row, or with none. */
    Optional<String> reason(Optional<AttemptEntry> entry) {
        Consent said = entry.map(AttemptEntry::consent).orElse(Consent.NOT_SAID);
        if (said != Consent.NOT_SAID) {
            return refusal(entry);
        }
        Integer line =
                entry.flatMap(ConsentCheck::athlete).map(refusedOnLine::get).orElse(null);
        if (line != null) {
            return Optional.of("the attempts sheet says consent: no for this athlete, on line " + line);
        }
        return unsaid == Consents.REQUIRED
                ? Optional.of("the attempts sheet does not say consent: yes, which meet.yaml requires")
                : Optional.empty();
    }

    /** The reason that a row gives by itself. */
    static Optional<String> refusal(Optional<AttemptEntry> entry) {
        return entry.filter(e -> e.consent() == Consent.NO).map(e -> "the attempts sheet says consent: no");
    }
}
