package org.boardtopit.clips;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Instants as an analyst writes them: {@code 131}, a frame; {@code 131.5}, between two; {@code 2.183s}, seconds from the first
 * frame. A comma stands for the dot where numbers have one.
 *
 * @param value number of a frame, or seconds
 * @param isFrame which of the two
 */
record CorrectionValue(double value, boolean isFrame) {
    private static final Pattern INSTANT = Pattern.compile("([0-9]+(?:[.,][0-9]+)?) ?(s?)");

    /** Longer than any clip: a slip of the pen. */
    private static final double MOST = 10_000_000;

    /** An instant of either kind; throws IllegalArgumentException with what would be right. */
    static CorrectionValue parse(String text) {
        Matcher found = INSTANT.matcher(text.strip().toLowerCase(Locale.ROOT));
        if (!found.matches()) {
            throw new IllegalArgumentException(
                    "must be a frame such as 131 or seconds such as 2.183s, was " + InputException.quoted(text));
        }
        double value = Double.parseDouble(found.group(1).replace(',', '.'));
        if (value > MOST) {
            throw new IllegalArgumentException("is no instant of a clip, was " + InputException.quoted(text));
        }
        return new CorrectionValue(value, found.group(2).isEmpty());
    }

    /** Two instants of one kind, the second after the first: {@code 40-62} or {@code 0.667s-1.033s}. */
    static List<CorrectionValue> span(String text) {
        String[] ends = text.replace('\u2013', '-').split("-", -1);
        if (ends.length != 2) {
            throw new IllegalArgumentException(
                    "must be two frames such as 40-62 or two times such as 0.667s-1.033s, was "
                            + InputException.quoted(text));
        }
        return inOrder(List.of(parse(ends[0]), parse(ends[1])), text);
    }

    /** One instant or two, apart by blanks. */
    static List<CorrectionValue> oneOrTwo(List<String> words, String text) {
        if (words.isEmpty() || words.size() > 2) {
            throw new IllegalArgumentException(
                    "must have a touchdown and, but for the pit, a toe-off, was " + InputException.quoted(text));
        }
        List<CorrectionValue> instants = new ArrayList<>();
        for (String word : words) {
            instants.add(parse(word));
        }
        return words.size() == 1 ? instants : inOrder(instants, text);
    }

    private static List<CorrectionValue> inOrder(List<CorrectionValue> ends, String text) {
        if (ends.get(0).isFrame != ends.get(1).isFrame) {
            throw new IllegalArgumentException(
                    "must be two frames or two times, not one of each, was " + InputException.quoted(text));
        }
        if (!(ends.get(1).value > ends.get(0).value)) {
            throw new IllegalArgumentException("must end after it begins, was " + InputException.quoted(text));
        }
        return ends;
    }
}
