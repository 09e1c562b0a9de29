package org.boardtopit.report.page;

import com.samskivert.mustache.Mustache;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Base64;
import java.util.Map;

/**
 * Templates of this package, files {@code <name>.mustache} beside it. What is put into them is escaped; only plots, style sheet and
 * script go in as they are. A place for which there is no value is an error and not a gap.
 */
public final class Templates {
    private static final Mustache.Compiler COMPILER =
            Mustache.compiler().strictSections(true).emptyStringIsFalse(true).withLoader(Templates::template);

    private Templates() {}

    /**
     * A template with its values, within {@code layout.mustache}.
     *
     * @param values records, lists and texts
     */
    public static String render(String name, Object values) {
        String style = resource("page.css");
        String script = resource("page.js");
        Map<String, String> shared =
                Map.of("style", style, "styleHash", hash(style), "script", script, "scriptHash", hash(script));
        StringWriter page = new StringWriter();
        COMPILER.compile(template(name)).execute(values, shared, page);
        return page.toString();
    }

    /** By which a browser knows that style and script are ours: the page allows no others. */
    private static String hash(String text) {
        try {
            byte[] digest = MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
            return Base64.getEncoder().encodeToString(digest);
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    private static Reader template(String name) {
        return new StringReader(resource(name + ".mustache"));
    }

    private static String resource(String name) {
        try (InputStream in = Templates.class.getResourceAsStream(name)) {
            if (in == null) {
                throw new IllegalStateException("the program lacks its file " + name);
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
