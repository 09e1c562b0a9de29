package org.boardtopit.report.overlay;

import java.text.Normalizer;
import java.util.Map;

/**
 * Text reduced to what the drawn letters can show: printable ASCII, the umlauts of German, the degree sign and plus-minus.
 *
 * <p>Other letters with marks follow the transliteration of machine-readable travel documents (ICAO Doc 9303 part 3, section 6:
 * ligatures become two letters); other marks are dropped; what is left over becomes a question mark.
 */
public final class PlainText {
    /** Drawn as a letter with two dots. */
    private static final String UMLAUTS = "\u00c4\u00d6\u00dc\u00e4\u00f6\u00fc";

    private static final Map<Character, String> LETTERS = Map.ofEntries(
            Map.entry('\u00df', "ss"),
            Map.entry('\u1e9e', "SS"),
            Map.entry('\u00c5', "Aa"),
            Map.entry('\u00e5', "aa"),
            Map.entry('\u00c6', "Ae"),
            Map.entry('\u00e6', "ae"),
            Map.entry('\u00d8', "Oe"),
            Map.entry('\u00f8', "oe"),
            Map.entry('\u0152', "Oe"),
            Map.entry('\u0153', "oe"),
            Map.entry('\u00de', "Th"),
            Map.entry('\u00fe', "th"),
            Map.entry('\u00d0', "D"),
            Map.entry('\u00f0', "d"),
            Map.entry('\u0110', "D"),
            Map.entry('\u0111', "d"),
            Map.entry('\u0141', "L"),
            Map.entry('\u0142', "l"),
            Map.entry('\u0131', "i"));

    private static final Map<Character, String> SIGNS = Map.ofEntries(
            Map.entry('\u00b0', "\u00b0"),
            Map.entry('\u00b1', "\u00b1"),
            Map.entry('\u00d7', "x"),
            Map.entry('\u2018', "'"),
            Map.entry('\u2019', "'"),
            Map.entry('\u201c', "\""),
            Map.entry('\u201d', "\""),
            Map.entry('\u2010', "-"),
            Map.entry('\u2011', "-"),
            Map.entry('\u2012', "-"),
            Map.entry('\u2013', "-"),
            Map.entry('\u2014', "-"),
            Map.entry('\u2212', "-"),
            Map.entry('\u2026', "..."),
            Map.entry('\u00a0', " "),
            Map.entry('\u2009', " "),
            Map.entry('\u202f', " "));

    private PlainText() {}

    public static String of(String text) {
        StringBuilder plain = new StringBuilder(text.length() + 8);
        // Composed first, so that a letter and a mark typed one after the other are found in the table as well.
        String composed = Normalizer.normalize(text, Normalizer.Form.NFC);
        composed.codePoints().forEach(c -> append(plain, c));
        return plain.toString();
    }

    private static void append(StringBuilder plain, int codePoint) {
        if (isPrintableAscii(codePoint) || UMLAUTS.indexOf(codePoint) >= 0) {
            plain.append((char) codePoint);
        } else if (Character.isWhitespace(codePoint)) {
            plain.append(' ');
        } else {
            plain.append(transliterated(codePoint));
        }
    }

    private static String transliterated(int codePoint) {
        if (Character.isBmpCodePoint(codePoint)) {
            String known = LETTERS.getOrDefault((char) codePoint, SIGNS.get((char) codePoint));
            if (known != null) {
                return known;
            }
        }
        String base = Normalizer.normalize(Character.toString(codePoint), Normalizer.Form.NFD);
        return isPrintableAscii(base.charAt(0)) ? base.substring(0, 1) : "?";
    }

    private static boolean isPrintableAscii(int codePoint) {
        return codePoint >= 0x20 && codePoint < 0x7f;
    }
}
