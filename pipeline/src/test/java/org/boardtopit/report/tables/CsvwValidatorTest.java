package org.boardtopit.report.tables;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The validator finds what is wrong, and only that.
 *
 * <p>Outside example: countries and their populations, after the example of two tables with a foreign key in W3C's "Metadata
 * Vocabulary for Tabular Data" (17 December 2015); columns, keys and rows from memory (MEM-M), dialect ours.
 */
class CsvwValidatorTest {
    private static final String METADATA = """
            {"@context": ["http://www.w3.org/ns/csvw", {"@language": "en"}],
             "dialect": {"delimiter": ";", "lineTerminators": ["\\r\\n"]},
             "null": "",
             "tables": [
              {"url": "countries.csv", "tableSchema": {
                "columns": [
                  {"name": "countryCode", "titles": ["countryCode"], "datatype": {"base": "string", "format": "^[A-Z]{2}$"}, "required": true},
                  {"name": "latitude", "titles": ["latitude"], "datatype": {"base": "number", "format": {"decimalChar": ","}, "minimum": -90, "maximum": 90}},
                  {"name": "island", "titles": ["island"], "datatype": {"base": "boolean", "format": "yes|no"}},
                  {"name": "name", "titles": ["name"], "datatype": {"base": "string"}}],
                "primaryKey": "countryCode"}},
              {"url": "country_slice.csv", "tableSchema": {
                "columns": [
                  {"name": "countryRef", "titles": ["countryRef"], "datatype": {"base": "string"}},
                  {"name": "year", "titles": ["year"], "datatype": {"base": "integer"}},
                  {"name": "population", "titles": ["population"], "datatype": {"base": "integer", "minimum": 0}}],
                "primaryKey": ["countryRef", "year"],
                "foreignKeys": [{"columnReference": "countryRef",
                  "reference": {"resource": "countries.csv", "columnReference": "countryCode"}}]}}]}
            """;

    private static final String COUNTRIES = """
            countryCode;latitude;island;name
            AD;42,5;no;Andorra
            AE;23,4;;"United; Arab Emirates"
            AF;33,9;no;Afghanistan
            """;

    private static final String SLICE = """
            countryRef;year;population
            AF;1960;9616353
            AF;1961;9799379
            AD;1960;
            """;

    @TempDir
    private Path folder;

    @BeforeEach
    void aValidFolder() throws IOException {
        Files.writeString(folder.resolve("tables.json"), METADATA);
        Files.writeString(folder.resolve("countries.csv"), COUNTRIES.replace("\n", "\r\n"));
        Files.writeString(folder.resolve("country_slice.csv"), SLICE.replace("\n", "\r\n"));
    }

    private void replace(String file, String text, String by) throws IOException {
        Path path = folder.resolve(file);
        String before = Files.readString(path);
        String after = before.replace(text, by);
        assertEquals(false, before.equals(after), "nothing was broken: " + text);
        Files.writeString(path, after);
    }

    @Test
    void aFolderThatFitsItsDescriptionHasNoProblem() throws IOException {
        assertEquals(List.of(), CsvwValidator.problems(folder));
    }

    @ParameterizedTest(name = "{1} by {2}")
    @CsvSource(
            delimiter = '|',
            value = {
                "countries.csv | latitude;island | island;latitude | countries.csv: column 2 is island, described is latitude",
                "countries.csv | ;island; | ; | countries.csv: the header has 3 columns, described are 4",
                "countries.csv | AD;42,5;no; | AD;42,5; | countries.csv row 1: has 3 cells",
                "countries.csv | AD;42,5 | AD;42.5 | countries.csv row 1 latitude: '42.5' is no number",
                "countries.csv | 42,5 | 142,5 | countries.csv row 1 latitude: 142,5 is more than 90",
                "countries.csv | 42,5 | -91 | countries.csv row 1 latitude: -91 is less than -90",
                "countries.csv | 42,5;no | 42,5;nein | countries.csv row 1 island: 'nein' is no truth",
                "countries.csv | AE; | Ae; | countries.csv row 2 countryCode: 'Ae' is none of ^[A-Z]{2}$",
                "countries.csv | AE;23 | ;23 | countries.csv row 2 countryCode: is empty and required",
                "countries.csv | AE;23 | AD;23 | countries.csv row 2: the key [AD] is there twice",
                "countries.csv | Afghanistan | \"Afghan | countries.csv: cannot be read: not RFC 4180 from character 99",
                "country_slice.csv | 1961 | 1960 | country_slice.csv row 2: the key [AF, 1960] is there twice",
                "country_slice.csv | AD;1960 | XX;1960 | country_slice.csv: [XX] is not in countries.csv once",
                "country_slice.csv | 9616353 | 9616353,5 | country_slice.csv row 1 population: '9616353,5' is no integer",
                "tables.json | \"columnReference\": \"countryCode\" | \"columnReference\": \"code\" | countries.csv: has no column code",
                "tables.json | \"required\" | \"needed\" | countries.csv countryCode: unknown property needed",
                "tables.json | \"base\": \"boolean\" | \"base\": \"yesno\" | countries.csv island: datatype yesno is not checked",
            })
    void findsWhatIsBroken(String file, String text, String by, String problem) throws IOException {
        replace(file, text, by);

        assertEquals(problem, CsvwValidator.problems(folder).get(0));
    }

    @Test
    void aTableThatIsNotDescribedIsAProblem() throws IOException {
        Files.writeString(folder.resolve("other.csv"), "a\r\n");
        assertEquals(List.of("other.csv: is not described"), CsvwValidator.problems(folder));
    }
}
