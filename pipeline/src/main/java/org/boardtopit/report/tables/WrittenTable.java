package org.boardtopit.report.tables;

import java.io.Closeable;
import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.apache.commons.csv.QuoteMode;

/**
 * A table of an earlier run, read row after row in the form that its beginning shows: with or without a byte order mark, and
 * separated by what follows the name of the first column.
 */
final class WrittenTable implements Closeable {
    static final char BYTE_ORDER_MARK = '\uFEFF';

    /**
     * What the beginning of a file shows of its form.
     *
     * @param bom whether it begins with a byte order mark
     */
    record Form(char separator, boolean bom) {
        CSVFormat csv() {
            return CSVFormat.RFC4180
                    .builder()
                    .setDelimiter(separator)
                    .setQuoteMode(QuoteMode.MINIMAL)
                    .get();
        }

        private static Form of(Path file) throws IOException {
            try (Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8)) {
                int c = text.read();
                boolean bom = c == BYTE_ORDER_MARK;
                while (c >= 0) {
                    if (c == ',' || c == ';' || c == '\t') {
                        return new Form((char) c, bom);
                    }
                    c = text.read();
                }
                return new Form(',', bom);
            }
        }
    }

    private final Form form;
    private final CSVParser parser;
    private final Iterator<CSVRecord> records;
    private final List<String> header;

    private WrittenTable(Form form, CSVParser parser) {
        this.form = form;
        this.parser = parser;
        this.records = parser.iterator();
        this.header = records.hasNext() ? List.of(records.next().values()) : List.of();
    }

    /** Opens a table behind its header. */
    static WrittenTable open(Path file) throws IOException {
        Form form = Form.of(file);
        Reader text = Files.newBufferedReader(file, StandardCharsets.UTF_8);
        try {
            if (form.bom() && text.read() != BYTE_ORDER_MARK) {
                throw new IOException(file + " changed while it was read");
            }
            return new WrittenTable(form, form.csv().parse(text));
        } catch (UncheckedIOException e) {
            text.close();
            throw damaged(1, e);
        } catch (IOException e) {
            text.close();
            throw e;
        }
    }

    /** The file is no table of ours any more; the message says where. */
    static final class DamagedException extends IOException {
        private static final long serialVersionUID = 1L;

        DamagedException(long line, UncheckedIOException cause) {
            super("line " + line + ": the quotes do not match, or the file is cut off", cause);
        }
    }

    Form form() {
        return form;
    }

    /** Names of the columns; empty when the file is. */
    List<String> header() {
        return header;
    }

    /** The cells of the next row, as many as it has; null behind the last one. */
    String[] next() throws IOException {
        try {
            return records.hasNext() ? records.next().values() : null;
        } catch (UncheckedIOException e) {
            throw damaged(parser.getCurrentLineNumber(), e);
        }
    }

    /** Of the file, where the row that was read last ends. */
    long line() {
        return parser.getCurrentLineNumber();
    }

    /** Bytes that are no UTF-8 come in the same way and are told as what they are. */
    private static IOException damaged(long line, UncheckedIOException e) {
        return e.getCause() instanceof CharacterCodingException coding ? coding : new DamagedException(line, e);
    }

    @Override
    public void close() throws IOException {
        parser.close();
    }
}
