package org.boardtopit.report.page;

import com.samskivert.mustache.Mustache;
import com.samskivert.mustache.Template;
import java.io.IOException;
import java.io.InputStream;
import java.io.Reader;
import java.io.StringReader;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
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
        Template template = COMPILER.compile(template(name));
        StringWriter page = new StringWriter();
        template.execute(values, Map.of("style", resource("page.css"), "script", resource("page.js")), page);
        return page.toString();
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
