package org.boardtopit.report.tables;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** A second opinion on a table: the grammar of RFC 4180, section 2, as one regular expression for a field. */
final class Rfc4180 {
    private Rfc4180() {}

    static List<List<String>> read(String text, char separator) {
        // field = (DQUOTE *(TEXTDATA / COMMA / CR / LF / 2DQUOTE) DQUOTE) / *TEXTDATA, then COMMA or CRLF
        String separated = Pattern.quote(String.valueOf(separator));
        Matcher field = Pattern.compile(
                        "\\G(?:\"((?:[^\"]|\"\")*+)\"|([^\"\\r\\n" + separated + "]*+))(" + separated + "|\\r\\n)")
                .matcher(text);
        List<List<String>> rows = new ArrayList<>();
        List<String> row = new ArrayList<>();
        int end = 0;
        while (field.find()) {
            row.add(field.group(1) == null ? field.group(2) : field.group(1).replace("\"\"", "\""));
            if (field.group(3).equals("\r\n")) {
                rows.add(row);
                row = new ArrayList<>();
            }
            end = field.end();
        }
        if (end != text.length()) {
            throw new IllegalArgumentException("not RFC 4180 from character " + end);
        }
        return rows;
    }
}
