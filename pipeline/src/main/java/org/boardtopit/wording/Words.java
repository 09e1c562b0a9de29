package org.boardtopit.wording;

import java.text.DecimalFormat;
import java.text.DecimalFormatSymbols;
import java.text.MessageFormat;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.FormatStyle;
import java.util.Locale;
import java.util.ResourceBundle;
import java.util.Set;

/**
 * The words of one bundle in one language. Bundles are the files {@code org/boardtopit/wording/<name>_<code>.properties}, UTF-8.
 *
 * <p>A missing key throws: {@code WordsTest} finds those that are not in every language. May be used from several threads.
 */
public final class Words {
    /** Typographic minus: a hyphen is broken from its number at the end of a line. */
    private static final char MINUS = '\u2212';

    private final ResourceBundle bundle;
    private final Language language;

    private Words(ResourceBundle bundle, Language language) {
        this.bundle = bundle;
        this.language = language;
    }

    /**
     * Words.
     *
     * @param name of the bundle, such as {@code page}
     */
    public static Words of(String name, Language language) {
        ResourceBundle bundle = ResourceBundle.getBundle(
                "org.boardtopit.wording." + name,
                Locale.forLanguageTag(language.code()),
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        return new Words(bundle, language);
    }

    public Language language() {
        return language;
    }

    Set<String> keys() {
        return bundle.keySet();
    }

    public boolean has(String key) {
        return bundle.containsKey(key);
    }

    /** As it stands in the bundle: braces and quotes mean nothing here. */
    public String get(String key) {
        return bundle.getString(key);
    }

    /**
     * With values for {@code {0}}, {@code {1}} and so on ({@link MessageFormat}: an apostrophe is written twice). Numbers are to be
     * given as text made by {@link #number}, for only that knows how many digits mean something.
     */
    public String format(String key, Object... values) {
        return new MessageFormat(bundle.getString(key), language.locale()).format(values);
    }

    /**
     * A number as people of the language write it.
     *
     * @param value finite
     * @param decimals behind the decimal sign, all of them written
     */
    public String number(double value, int decimals) {
        DecimalFormatSymbols symbols = DecimalFormatSymbols.getInstance(language.locale());
        symbols.setMinusSign(MINUS);
        DecimalFormat format = new DecimalFormat(decimals == 0 ? "0" : "0." + "0".repeat(decimals), symbols);
        String text = format.format(value);
        boolean zero = text.chars().noneMatch(c -> c >= '1' && c <= '9');
        return zero && text.charAt(0) == MINUS ? text.substring(1) : text;
    }

    /** A day, such as 14 June 2026. */
    public String date(LocalDate day) {
        return DateTimeFormatter.ofLocalizedDate(FormatStyle.LONG)
                .withLocale(language.locale())
                .format(day);
    }
}
