package org.boardtopit.report.plot;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import javax.xml.parsers.DocumentBuilderFactory;
import org.boardtopit.report.plot.IntervalPlot.Group;
import org.boardtopit.report.plot.IntervalPlot.Row;
import org.boardtopit.report.plot.IntervalPlot.Shape;
import org.boardtopit.report.plot.RhythmPlot.Beat;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;

class SvgTest {
    private static String text(double value, int decimals) {
        return String.format(Locale.ROOT, "%." + decimals + "f", value);
    }

    /** By the JDK's XML parser, which takes nothing that is not well-formed. */
    private static Element parsed(String svg) throws Exception {
        return DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)))
                .getDocumentElement();
    }

    private static List<Double> numbers(Element svg, String tag, String attribute) {
        NodeList found = svg.getElementsByTagName(tag);
        return java.util.stream.IntStream.range(0, found.getLength())
                .mapToObj(i -> Double.valueOf(((Element) found.item(i)).getAttribute(attribute)))
                .toList();
    }

    @Test
    void hostileWordsStayWords() throws Exception {
        String hostile = "<script>alert(\"x\")</script> & 'y'";
        Element svg =
                parsed(new Svg(10, 10, hostile).text(1, 2, hostile, "\"><b").markup());
        assertEquals(hostile, svg.getAttribute("aria-label"));
        assertEquals(hostile, svg.getElementsByTagName("text").item(0).getTextContent());
        assertEquals(0, svg.getElementsByTagName("script").getLength());
    }

    @Test
    void writesNoMoreDigitsThanCanBeSeen() {
        String svg = new Svg(10, 10, "")
                .circle(1.0 / 3, -0.01, 2, "a")
                .rect(0, 0, -5, 3.25, "b")
                .markup();
        assertTrue(svg.contains("cx=\"0.3\" cy=\"0\" r=\"2\""), svg);
        assertTrue(svg.contains("width=\"0\""), svg);
        assertFalse(svg.contains("0.33"), svg);
    }

    @ParameterizedTest
    @CsvSource({
        "0, 45, 0:10:20:30:40, 0",
        "0, 1.2, 0.0:0.2:0.4:0.6:0.8:1.0:1.2, 1",
        "-7, 39, 0:10:20:30, 0",
        "131, 179, 140:150:160:170, 0"
    })
    void ticksAreRoundNumbersWithinTheScale(double low, double high, String ticks, int decimals) {
        Scale scale = new Scale(low, high, 0, 100);
        List<String> written =
                scale.ticks().stream().map(tick -> text(tick, scale.decimals())).toList();
        assertEquals(List.of(ticks.split(":")), written);
        assertEquals(decimals, scale.decimals());
    }

    @Test
    void barsBeginAtNoughtSoThatTheirLengthsCompare() throws Exception {
        IntervalPlot plot = new IntervalPlot("shares");
        plot.add(new Group(
                "Hop",
                List.of(
                        new Row("1", 20, 19, 21, "20", Shape.BAR, "hop"),
                        new Row("2", 40, 39, 41, "40", Shape.BAR, "hop"))));
        List<Double> widths = numbers(parsed(plot.markup(SvgTest::text)), "rect", "width");
        assertEquals(2, widths.get(1) / widths.get(0), 0.01);
    }

    @Test
    void marksStandWhereTheirNumberIs() throws Exception {
        IntervalPlot plot = new IntervalPlot("knee");
        plot.add(new Group(
                "Board",
                List.of(
                        new Row("1", 150, 140, 160, "150", Shape.DOT, "pd"),
                        new Row("2", 160, 150, 170, "160", Shape.DOT, "pd"),
                        new Row("3", 140, 130, 150, "140", Shape.DOT, "pd"))));
        List<Double> x = numbers(parsed(plot.markup(SvgTest::text)), "circle", "cx");
        assertEquals(x.get(1) - x.get(0), x.get(0) - x.get(2), 0.11);
        assertTrue(x.get(1) > x.get(0));
    }

    @Test
    void aPlotWithoutNumbersIsEmpty() {
        assertTrue(new IntervalPlot("").add(new Group("Hop", List.of())).isEmpty());
        assertTrue(new RhythmPlot("").add(new RhythmPlot.Line("1", List.of())).isEmpty());
    }

    @Test
    void supportsAreAsLongAsTheirTimes() throws Exception {
        RhythmPlot plot = new RhythmPlot("rhythm");
        plot.add(new RhythmPlot.Line(
                "1", List.of(new Beat(0, 0.1, 0.6, "", "", "hop"), new Beat(0.6, 0.2, 1.2, "", "", "step"))));
        Element svg = parsed(plot.markup(SvgTest::text));
        List<Double> widths = numbers(svg, "rect", "width");
        List<Double> starts = numbers(svg, "rect", "x");
        assertEquals(2, widths.get(1) / widths.get(0), 0.02);
        assertEquals(0.6 / 0.1, (starts.get(1) - starts.get(0)) / widths.get(0), 0.05);
    }

    @Test
    void aSupportOfUnknownTimeIsNoBlock() throws Exception {
        RhythmPlot plot = new RhythmPlot("rhythm");
        plot.add(new RhythmPlot.Line("1", List.of(new Beat(0, Double.NaN, 0.6, "", "", "hop"))));
        assertEquals(List.of(0.0), numbers(parsed(plot.markup(SvgTest::text)), "rect", "width"));
    }

    @Test
    void theLongestAttemptStandsHighest() throws Exception {
        SeriesPlot plot = new SeriesPlot("series")
                .add(new SeriesPlot.Point("1", 12.1, "12.10", "pd"))
                .add(new SeriesPlot.Point("2", Double.NaN, "x", "pd"))
                .add(new SeriesPlot.Point("3", 12.6, "12.60", "pb"));
        Element svg = parsed(plot.markup());
        List<Double> y = numbers(svg, "circle", "cy");
        assertEquals(2, y.size());
        assertTrue(y.get(1) < y.get(0), "up is longer");
        assertEquals("x", svg.getElementsByTagName("text").item(2).getTextContent());
    }
}
