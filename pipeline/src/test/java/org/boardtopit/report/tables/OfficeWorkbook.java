package org.boardtopit.report.tables;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.zip.ZipEntry;
import java.util.zip.ZipFile;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.parsers.ParserConfigurationException;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.SAXException;

/**
 * Reads a workbook with nothing but Java's own zip and XML, after ISO/IEC 29500-1 (SpreadsheetML, clause 18): parts and
 * relationships, cells by their type {@code s}, {@code inlineStr}, {@code n}, number formats through the cells' style.
 */
final class OfficeWorkbook {
    /**
     * A cell.
     *
     * @param type s or inlineStr for text, n for numbers
     * @param numberFormat code of the format; empty for General
     */
    record Cell(String type, String value, String numberFormat) {}

    private final Map<String, Document> parts = new TreeMap<>();
    private final Map<String, String> sheets = new LinkedHashMap<>();
    private final List<String> strings = new ArrayList<>();

    OfficeWorkbook(Path file) throws IOException, SAXException, ParserConfigurationException {
        DocumentBuilderFactory factory = DocumentBuilderFactory.newInstance();
        try (ZipFile zip = new ZipFile(file.toFile())) {
            for (ZipEntry entry : zip.stream().toList()) {
                try (InputStream in = zip.getInputStream(entry)) {
                    parts.put(
                            entry.getName(),
                            factory.newDocumentBuilder().parse(new ByteArrayInputStream(in.readAllBytes())));
                }
            }
        }
        Map<String, String> targets = new LinkedHashMap<>();
        for (Element relation : all(parts.get("xl/_rels/workbook.xml.rels"), "Relationship")) {
            targets.put(relation.getAttribute("Id"), relation.getAttribute("Target"));
        }
        for (Element sheet : all(parts.get("xl/workbook.xml"), "sheet")) {
            String target = targets.get(sheet.getAttribute("r:id"));
            sheets.put(sheet.getAttribute("name"), target.startsWith("/") ? target.substring(1) : "xl/" + target);
        }
        for (Element string : all(parts.get("xl/sharedStrings.xml"), "si")) {
            strings.add(string.getTextContent());
        }
    }

    private static List<Element> all(Document part, String name) {
        NodeList nodes = part.getElementsByTagName(name);
        List<Element> elements = new ArrayList<>();
        for (int i = 0; i < nodes.getLength(); i++) {
            elements.add((Element) nodes.item(i));
        }
        return elements;
    }

    Set<String> partNames() {
        return new TreeSet<>(parts.keySet());
    }

    List<String> sheetNames() {
        return List.copyOf(sheets.keySet());
    }

    /** Elements of a sheet by their name, such as pane, autoFilter or f. */
    List<Element> elements(String sheet, String name) {
        return all(parts.get(sheets.get(sheet)), name);
    }

    /** Cells that hold something, by their reference such as B3. */
    Map<String, Cell> cells(String sheet) {
        Map<String, Cell> cells = new LinkedHashMap<>();
        for (Element cell : elements(sheet, "c")) {
            String type = cell.getAttribute("t").isEmpty() ? "n" : cell.getAttribute("t");
            NodeList values = cell.getElementsByTagName(type.equals("inlineStr") ? "is" : "v");
            if (values.getLength() == 1) {
                String value = values.item(0).getTextContent();
                cells.put(
                        cell.getAttribute("r"),
                        new Cell(
                                type,
                                type.equals("s") ? strings.get(Integer.parseInt(value)) : value,
                                numberFormat(cell.getAttribute("s"))));
            }
        }
        return cells;
    }

    private String numberFormat(String style) {
        Document styles = parts.get("xl/styles.xml");
        Element formats = (Element) styles.getElementsByTagName("cellXfs").item(0);
        NodeList all = formats.getElementsByTagName("xf");
        Element format = (Element) all.item(style.isEmpty() ? 0 : Integer.parseInt(style));
        String id = format.getAttribute("numFmtId");
        Map<String, String> builtIn = Map.of("0", "", "1", "0", "2", "0.00");
        return all(styles, "numFmt").stream()
                .filter(f -> f.getAttribute("numFmtId").equals(id))
                .map(f -> f.getAttribute("formatCode"))
                .findFirst()
                .orElse(builtIn.getOrDefault(id, "built-in " + id));
    }
}
