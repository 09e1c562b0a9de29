package org.boardtopit.wording;

import java.util.Locale;

/** Languages of the page, the observations and the pictures. Each is complete: none falls back to another. */
public enum Language {
    ENGLISH("en", Locale.UK),
    GERMAN("de", Locale.GERMANY);

    private final String code;
    private final Locale locale;

    Language(String code, Locale locale) {
        this.code = code;
        this.locale = locale;
    }

    /** Two letters, ISO 639-1. */
    public String code() {
        return code;
    }

    /** By which numbers and dates are written. */
    public Locale locale() {
        return locale;
    }
}
