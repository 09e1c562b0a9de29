package org.boardtopit.report.page;

import com.samskivert.mustache.Mustache;
import java.util.function.UnaryOperator;

/** Words for a template that is not of this package, by their keys. */
public final class Lookup implements Mustache.CustomContext {
    private final UnaryOperator<String> words;

    /**
     * Words.
     *
     * @param words of a key; throws when there is none
     */
    public Lookup(UnaryOperator<String> words) {
        this.words = words;
    }

    @Override
    public Object get(String key) {
        return words.apply(key);
    }
}
