package org.boardtopit.report.tables;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.databind.ObjectWriter;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;

/** Writes a JSON file for people and programs. A number that is not finite is null, as JSON has no other word for it. */
final class JsonFile {
    private static final ObjectWriter WRITER = writer();

    private JsonFile() {}

    /** Replaces the file; an earlier one stays untouched until the new one is complete. */
    static void write(Path file, Map<String, Object> content) throws IOException {
        String json = WRITER.writeValueAsString(content);
        WholeFile.write(file, out -> out.append(json).append('\n'));
    }

    private static ObjectWriter writer() {
        SimpleModule numbers = new SimpleModule();
        numbers.addSerializer(Double.class, new FiniteOrNull());
        // The printer's own line end would be the machine's.
        DefaultPrettyPrinter printer = new DefaultPrettyPrinter();
        printer.indentObjectsWith(new DefaultIndenter("  ", "\n"));
        return JsonMapper.builder().addModule(numbers).build().writer(printer);
    }

    private static final class FiniteOrNull extends StdSerializer<Double> {
        private static final long serialVersionUID = 1L;

        private FiniteOrNull() {
            super(Double.class);
        }

        @Override
        public void serialize(Double value, JsonGenerator json, SerializerProvider provider) throws IOException {
            if (Double.isFinite(value)) {
                json.writeNumber(value);
            } else {
                json.writeNull();
            }
        }
    }
}
