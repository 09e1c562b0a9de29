package org.boardtopit.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.time.LocalDate;
import java.util.Base64;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.boardtopit.observations.Observation.Kind;
import org.boardtopit.wording.Language;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.parser.Parser;
import org.jsoup.select.Elements;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class PageWriterTest {
    @TempDir
    private Path out;

    static PageWriter writer(Path folder, Language language) {
        return new PageWriter(folder, "Brackenfold Open Meeting", Optional.of(LocalDate.of(2026, 6, 14)), language);
    }

    private String text(PageRows rows, Language language) throws IOException {
        return Files.readString(writer(out, language).write(rows), StandardCharsets.UTF_8);
    }

    private Document page(PageRows rows) throws IOException {
        return Jsoup.parse(text(rows, Language.ENGLISH));
    }

    private void put(String... files) throws IOException {
        for (String file : files) {
            Files.createDirectories(out.resolve(file).getParent());
            Files.writeString(out.resolve(file), "x");
        }
    }

    /** Well-formed as the HTML standard of the WHATWG says; its parser is jsoup's. */
    @ParameterizedTest
    @EnumSource(Language.class)
    void isWellFormed(Language language) throws IOException {
        put("overlays/101-1.mp4", "stills/101-2-2-touchdown.jpg", "stills/101-1-strip.jpg", "attempts.csv");
        String page = text(DrawnMeet.of(1, 3), language);
        Parser parser = Parser.htmlParser().setTrackErrors(50);
        Document document = Jsoup.parse(page, "", parser);
        assertEquals(
                List.of(), parser.getErrors().stream().map(Object::toString).toList());
        assertEquals(language.code(), document.selectFirst("html").attr("lang"));
        assertEquals(18, document.select(".sortable tbody tr").size());
        List<String> ids = document.select("[id]").eachAttr("id");
        assertEquals(ids.size(), ids.stream().distinct().count(), "ids are unique");
        for (String target : document.select("a[href^=#]").eachAttr("href")) {
            assertTrue(ids.contains(target.substring(1)), target);
        }
    }

    @ParameterizedTest
    @EnumSource(Language.class)
    void leavesNoPlaceOpen(Language language) throws IOException {
        String page = Jsoup.parse(text(DrawnMeet.of(2, 2), language)).text();
        assertFalse(page.contains("{") || page.contains("null") || page.contains("NaN"), page);
        assertFalse(page.matches(".*\\b[a-z]+_[a-z]+\\b.*"), "a word of the tables");
    }

    @Test
    void speaksTheLanguageOfTheSheet() throws IOException {
        String german = Jsoup.parse(text(DrawnMeet.of(2, 1), Language.GERMAN)).text();
        assertTrue(german.contains("14. Juni 2026 · 6 Versuche gemessen"), german);
        assertTrue(german.contains("Stütz- und Flugzeiten"), german);
        assertTrue(german.matches(".*\\d,\\d.*"));
        assertFalse(german.matches(".*\\d\\.\\d\\d m.*"), "a decimal point");
    }

    @Test
    void hostileNamesStayWords() throws IOException {
        String name = "<script>alert(1)</script>\"'&<img src=x onerror=alert(2)>{{words.title}}";
        DrawnMeet meet = new DrawnMeet(3)
                .attempt("7\"><b>", name, 1, 12.0, false)
                .attempt("7\"><b>", name, 2, 12.5, false)
                .withTroubles();
        meet.observe("7\"><b>-1.mp4", Kind.PRIORITY, "</style><script>x</script>", "a<b & c", 9, 1);
        Document page = page(meet.rows());
        assertEquals(1, page.select("script").size());
        assertEquals(0, page.select("[onerror], img").size());
        assertTrue(page.selectFirst("section.athlete h2").text().contains(name));
        assertTrue(page.text().contains("</style><script>x</script>"));
        assertTrue(page.text().contains("a<b & c"));
    }

    @Test
    void linksToFilesWhoseNamesAreNoUrls() throws IOException {
        String clip = "heat #1 50%? ü";
        DrawnMeet meet = new DrawnMeet(4).attempt(clip, "", 1, 12.0, false);
        put("overlays/" + clip + "-1.mp4", "stills/" + clip + "-1-strip.jpg");
        Document page = page(meet.rows());
        // RFC 3986: %23 #, %25 %, %3F ?, %C3%BC u umlaut in UTF-8
        assertEquals(
                "overlays/heat%20%231%2050%25%3F%20%C3%BC-1.mp4",
                page.selectFirst("video").attr("src"));
        assertEquals(
                "stills/heat%20%231%2050%25%3F%20%C3%BC-1-strip.jpg",
                page.selectFirst(".strip img").attr("src"));
    }

    @Test
    void needsNoNetworkAndLetsNothingElseRun() throws Exception {
        put("overlays/101-1.mp4");
        Document page = page(DrawnMeet.of(5, 1));
        for (Element element : page.select("[src], [href], [srcset], [action]")) {
            String link = element.attr("src") + element.attr("href");
            assertFalse(link.contains(":") || link.startsWith("/"), element.outerHtml());
        }
        assertFalse(page.selectFirst("style").data().contains("url("));
        assertFalse(page.selectFirst("style").data().contains("@import"));
        String policy =
                page.selectFirst("meta[http-equiv=Content-Security-Policy]").attr("content");
        byte[] script = page.selectFirst("script").data().getBytes(StandardCharsets.UTF_8);
        String hash = Base64.getEncoder()
                .encodeToString(MessageDigest.getInstance("SHA-256").digest(script));
        assertTrue(policy.contains("default-src 'none'") && policy.contains("'sha256-" + hash + "'"), policy);
    }

    @Test
    void takesVideosToTheTouchdowns() throws IOException {
        put("overlays/101-1.mp4");
        PageRows rows = DrawnMeet.of(6, 1);
        Elements chapters = page(rows).select("#attempt-1 .chapters a");
        List<String> names = chapters.stream().map(Element::text).toList();
        double board = rows.contacts().get(1).touchdownS();
        assertEquals(4, chapters.size(), "no approach");
        assertEquals(String.format(Locale.ROOT, "Board left %.2f s", board), names.get(0));
        assertTrue(names.get(3).startsWith("Pit"), names.toString());
        // half of a sixtieth of a second later: between the nearest frame and the next
        assertEquals(board + 1.0 / 120, Double.parseDouble(chapters.get(0).attr("data-at")), 6e-4);
        assertEquals(
                "overlays/101-1.mp4#t=" + chapters.get(0).attr("data-at"),
                chapters.get(0).attr("href"));
        assertEquals("4.000", page(rows).selectFirst("#video-1").attr("data-clip-s"));
    }

    @Test
    void doesNotLinkIntoASlowMotionVideoWithoutItsScript() throws IOException {
        put("overlays/8-1.mp4");
        DrawnMeet meet = new DrawnMeet(7).attempt("8", "", 1, 12.0, false).lastFile(OptionalInt.empty(), true);
        assertEquals(
                "overlays/8-1.mp4", page(meet.rows()).selectFirst("a.chapter").attr("href"));
    }

    @Test
    void marksWhatRestsOnACorrection() throws IOException {
        Document page = page(DrawnMeet.of(8, 1));
        // the third attempt's landing of the hop
        assertEquals(1, page.select(".sortable .fix").size());
        assertEquals(1, page.select("#attempt-3 > summary .fix").size());
        List<String> marked = page.select("tbody th:has(.fix)").eachText();
        assertEquals(3, marked.size(), marked.toString());
        assertTrue(marked.get(0).startsWith("Hop landing"), marked.toString());
        assertTrue(marked.get(1).startsWith("Hop ✎") && marked.get(2).startsWith("Step ✎"), marked.toString());
        String why = "Hop landing, touchdown at frame 131 (by A. Keeper): the shoe bears a frame earlier";
        assertTrue(page.selectFirst("#attempt-3").text().contains(why));
        assertEquals(0, page.select("#attempt-2 .fix").size());
        String plots = page.select("svg text").eachText().toString();
        assertTrue(plots.contains("✎3"), plots);
        assertFalse(plots.contains("✎2"), plots);
    }

    @Test
    void aMinorIsNotNamedBesidePictures() throws IOException {
        DrawnMeet meet = new DrawnMeet(9)
                .attempt("31", "Young Runner", 1, 10.0, false)
                .lastFile(OptionalInt.of(2008), false)
                .attempt("32", "Grown Runner", 1, 12.0, false)
                .lastFile(OptionalInt.of(2007), false);
        String page = text(meet.rows(), Language.ENGLISH);
        assertFalse(page.contains("Young"), "turns 18 in 2026 and may still be 17");
        assertTrue(page.contains("Bib 31"));
        assertTrue(page.contains("32 Grown Runner"));
    }

    @Test
    void noNameStandsInWordsOfAPicture() throws IOException {
        put(
                "overlays/101-2.mp4",
                "stills/101-2-strip.jpg",
                "stills/101-2-1-toe_off.jpg",
                "stills/101-2-phases.jpg",
                "comparisons/101-1-101-2.mp4");
        Document page = page(DrawnMeet.of(10, 1));
        assertTrue(page.select("img").size() >= 3);
        for (Element element : page.select("figure, video, svg, .video, details")) {
            assertFalse(element.outerHtml().contains("Runner"), element.outerHtml());
        }
    }

    /** The still nearest in time to the observation at 1.75 s: the board's toe-off at about 1.65, not the flight's middle. */
    @Test
    void showsTheStillOfThePriority() throws IOException {
        put("stills/101-6-1-touchdown.jpg", "stills/101-6-1-toe_off.jpg", "stills/101-6-1-flight.jpg");
        Element first = page(DrawnMeet.of(11, 1)).selectFirst("ol.findings li");
        assertEquals("stills/101-6-1-toe_off.jpg", first.selectFirst("img").attr("src"));
        assertEquals(
                "Board, toe-off. Bib 101, Attempt 6", first.selectFirst("img").attr("alt"));
        assertTrue(first.text().contains("seen in attempts 2, 4, 6"), first.text());
        assertTrue(first.text().contains("Pain means stop."), first.text());
    }

    @Test
    void ofAWithheldClipOnlyItsNameIsTold() throws IOException {
        put("overlays/private.mp4", "stills/private-strip.jpg", "comparisons/101-1-private.mp4");
        Document page = page(DrawnMeet.of(12, 1));
        assertEquals(0, page.select("[src*=private], [href*=private]").size());
        assertTrue(page.selectFirst("#missing").text().contains("Withheld clips: 1."));
        assertTrue(page.selectFirst("#missing").text().contains("private.mp4"));
        assertTrue(page.selectFirst("#missing").text().contains("dusk.mp4: nobody runs through the picture"));
    }

    @Test
    void showsTheViewFromInFrontWithItsAttempt() throws IOException {
        put("overlays/front.mp4", "overlays/9-1.mp4");
        DrawnMeet meet = new DrawnMeet(13).attempt("9", "", 1, 12.0, false).frontView("front", "9-1.mp4");
        assertEquals(
                List.of("overlays/9-1.mp4", "overlays/front.mp4"),
                page(meet.rows()).select("#attempt-1 video").eachAttr("src"));
    }

    @Test
    void saysHowFarAnUnfinishedRunIs() throws IOException {
        DrawnMeet meet = new DrawnMeet(14).attempt("9", "", 1, 12.0, false);
        assertEquals(0, page(meet.rows()).select(".notice").size());
        PageRows half = meet.rows();
        List<PageRows.ClipFile> files = Stream.concat(
                        half.files().stream(),
                        Stream.of(new PageRows.ClipFile("b.mp4", "b", Optional.empty(), false, OptionalInt.empty())))
                .toList();
        PageRows rows = new PageRows(
                files,
                half.attempts(),
                half.phases(),
                half.contacts(),
                half.intervals(),
                half.observations(),
                half.clips());
        assertTrue(page(rows).selectFirst(".notice").text().contains("1 of 2 clips"));
    }

    @Test
    void aRunWithoutAnAttemptHasAPageToo() throws IOException {
        Document page = page(new DrawnMeet(15).withTroubles().rows());
        assertTrue(page.text().contains("No attempt has been measured yet."));
        assertEquals(0, page.select("table").size());
    }

    /** An improvement is told from the judges' distances. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.00 | 12.34 | Improved by 0.34 m on attempt 1.",
                "12.34 | 12.00 | The first was the longest.",
                "12.34 | 12.34 | The first was the longest.",
            })
    void tellsWhoImproved(double first, double second, String line) throws IOException {
        DrawnMeet meet = new DrawnMeet(16).attempt("5", "", 1, first, false).attempt("5", "", 2, second, false);
        Document page = page(meet.rows());
        String card = page.selectFirst(".card").text();
        assertTrue(card.contains(line), card);
    }

    @Test
    void sixtyAttemptsWeighLessThanThreeMegabytes() throws IOException {
        PageRows rows = DrawnMeet.of(17, 10);
        assertEquals(60, rows.attempts().size());
        for (PageRows.ClipFile file : rows.files()) {
            put("overlays/" + file.name() + ".mp4", "stills/" + file.name() + "-strip.jpg");
            for (int contact = 1; contact < 5; contact++) {
                for (String instant : List.of("touchdown", "mid_support", "toe_off", "flight")) {
                    put("stills/" + file.name() + "-" + contact + "-" + instant + ".jpg");
                }
            }
        }
        for (Language language : Language.values()) {
            int bytes = text(rows, language).getBytes(StandardCharsets.UTF_8).length;
            assertTrue(bytes < 3_000_000, bytes + " bytes");
        }
    }
}
