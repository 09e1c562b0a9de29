package org.boardtopit.report.page;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.sun.net.httpserver.Headers;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalInt;
import org.boardtopit.video.VideoException;
import org.boardtopit.video.VideoFrame;
import org.boardtopit.video.VideoWriter;
import org.boardtopit.video.ffmpeg.FfmpegVideoCreator;
import org.boardtopit.wording.Language;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.openqa.selenium.By;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;

/** The page in a real browser, opened from the disk as a coach opens it. Skipped where there is no browser. */
@Timeout(300)
class PageInBrowserTest {
    private static final int SLOW_DOWN = 2;

    @TempDir
    private static Path folder;

    private static TestBrowser browser;

    @BeforeAll
    static void makePages() throws IOException, VideoException {
        browser = TestBrowser.open();
        PageRows rows = rows();
        Files.createDirectories(folder.resolve("overlays"));
        video(folder.resolve("overlays/101-1.mp4"), 60);
        video(folder.resolve("overlays/slow-1.mp4"), 60 / SLOW_DOWN);
        for (Language language : Language.values()) {
            Path page = PageWriterTest.writer(folder, language).write(rows);
            Files.move(page, page.resolveSibling(language.code() + ".html"));
        }
    }

    private static PageRows rows() {
        DrawnMeet meet = new DrawnMeet(31);
        meet.series("101", "Runner A").series("102", "Runner B");
        meet.attempt("slow", "", 1, 12.0, false).lastFile(OptionalInt.empty(), true);
        return meet.withTroubles().rows();
    }

    /** 240 frames: four seconds of the clip. */
    private static void video(Path file, int fps) throws VideoException {
        ByteBuffer pixels = ByteBuffer.allocateDirect(64 * 36 * 3);
        try (VideoWriter writer = new FfmpegVideoCreator(1).create(file, 64, 36, fps)) {
            for (int i = 0; i < 240; i++) {
                writer.write(new VideoFrame(i, Math.round(i * 1e6 / fps), 64, 36, pixels));
            }
            writer.finish(List.of());
        }
    }

    @AfterAll
    static void close() {
        if (browser != null) {
            browser.close();
        }
    }

    @AfterEach
    void theConsoleIsSilent() {
        assertEquals(List.of(), browser.troubles());
    }

    private static String page(String language) {
        return folder.resolve(language + ".html").toUri().toString();
    }

    private static TestBrowser english(int widthPx) {
        return browser.width(widthPx).media("light", "screen").open(page("en"));
    }

    @ParameterizedTest
    @CsvSource({
        "en, 390, light", "en, 390, dark", "en, 1440, light", "en, 1440, dark",
        "de, 390, light", "de, 390, dark", "de, 1440, light", "de, 1440, dark"
    })
    void anybodyCanReadItOnAnyWidth(String language, int widthPx, String scheme) {
        browser.width(widthPx).media(scheme, "screen").open(page(language));
        browser.run("document.querySelectorAll('details').forEach(d => d.open = true)");
        double wide = browser.number("return document.documentElement.scrollWidth");
        assertTrue(wide <= widthPx, wide + " px of page on " + widthPx);
        assertEquals(List.of(), browser.barriers());
        double red =
                browser.number("return parseInt(getComputedStyle(document.body).backgroundColor.match(/\\d+/)[0])");
        assertEquals(scheme.equals("dark"), red < 100, "background " + red);
    }

    @Test
    void lettersInPlotsAreLargeEnoughOnAPhone() {
        english(390);
        double px = browser.number("""
                const text = document.querySelector('.plots svg .pa');
                return parseFloat(getComputedStyle(text).fontSize) * text.getScreenCTM().a""");
        assertTrue(px >= 9, px + " px");
    }

    @ParameterizedTest
    @CsvSource({"390", "1440"})
    void chaptersTakeTheVideoToTheTouchdown(int widthPx) {
        english(widthPx);
        for (int i = 0; i < 4; i++) {
            WebElement chapter =
                    openAttempt(1).findElements(By.cssSelector(".chapter")).get(i);
            double at = Double.parseDouble(chapter.getAttribute("data-at"));
            chapter.click();
            waitForTime("video-1", at);
        }
        assertTrue((Boolean) browser.run("return document.getElementById('video-1').paused"));
    }

    @Test
    void aLinkToAnAttemptOpensIt() {
        english(390);
        browser.driver()
                .findElement(By.cssSelector(".sortable a[href='#attempt-2']"))
                .click();
        waitFor("return document.getElementById('attempt-2').open");
        assertFalse((Boolean) browser.run("return document.getElementById('attempt-1').open"));
    }

    @Test
    void chaptersOfSlowMotionGoByTheTimeOfTheVideo() {
        english(1440);
        int attempt = 13;
        WebElement chapter = openAttempt(attempt).findElement(By.cssSelector(".chapter"));
        double at = Double.parseDouble(chapter.getAttribute("data-at"));
        chapter.click();
        waitForTime("video-" + attempt, SLOW_DOWN * at);
    }

    @Test
    void stepsFromFrameToFrame() {
        english(1440);
        WebElement attempt = openAttempt(1);
        WebElement chapter = attempt.findElement(By.cssSelector(".chapter"));
        double at = Double.parseDouble(chapter.getAttribute("data-at"));
        chapter.click();
        waitForTime("video-1", at);
        attempt.findElement(By.cssSelector("[data-step='1']")).click();
        waitForTime("video-1", at + 1 / 60.0);
        attempt.findElement(By.cssSelector("[data-step='-1']")).click();
        waitForTime("video-1", at);
        WebElement slow = attempt.findElement(By.cssSelector("[data-slow]"));
        slow.click();
        assertEquals(0.25, browser.number("return document.getElementById('video-1').playbackRate"));
        assertEquals("true", slow.getAttribute("aria-pressed"));
        slow.click();
        assertEquals(1, browser.number("return document.getElementById('video-1').playbackRate"));
    }

    private static WebElement openAttempt(int number) {
        WebElement attempt = browser.driver().findElement(By.id("attempt-" + number));
        browser.run("arguments[0].open = true", attempt);
        return attempt;
    }

    private static void waitForTime(String video, double atS) {
        waitFor("const v = document.getElementById('" + video + "');"
                + "return v.readyState > 0 && !v.seeking && Math.abs(v.currentTime - " + atS + ") < 0.002");
    }

    private static void waitFor(String condition) {
        browser.waitFor(condition);
    }

    @Test
    void sortsByAHeadingWithTheMouseAndWithTheKeyboard() {
        english(1440);
        WebElement distance = browser.driver()
                .findElements(By.cssSelector(".sortable th button"))
                .get(2);
        distance.click();
        List<String> down = browser.texts(".sortable tbody tr td:nth-child(3)");
        assertEquals("descending", sorting());
        assertEquals(known(down).stream().sorted(Comparator.reverseOrder()).toList(), known(down));
        assertEquals(13, down.size());
        assertEquals("foul", down.get(12), "what has no distance comes last");
        distance.sendKeys(Keys.ENTER);
        List<String> up = browser.texts(".sortable tbody tr td:nth-child(3)");
        assertEquals("ascending", sorting());
        assertEquals(known(down).stream().sorted().toList(), known(up));
        assertEquals("foul", up.get(12));
    }

    private static String sorting() {
        return browser.driver().findElement(By.cssSelector("[aria-sort]")).getAttribute("aria-sort");
    }

    private static List<Double> known(List<String> texts) {
        List<Double> numbers = new ArrayList<>();
        for (String text : texts) {
            if (!text.equals("foul")) {
                numbers.add(Double.valueOf(text.replaceAll("[^0-9.]", "")));
            }
        }
        return numbers;
    }

    @Test
    void theFirstStopOfTheKeyboardIsTheWayToTheContent() {
        english(1440);
        browser.driver().switchTo().activeElement().sendKeys(Keys.TAB);
        WebElement first = browser.driver().switchTo().activeElement();
        assertEquals("#main", browser.run("return arguments[0].getAttribute('href')", first));
        first.sendKeys(Keys.ENTER);
        assertEquals("main", browser.driver().switchTo().activeElement().getTagName());
    }

    @Test
    void everythingIsThereWithoutScripts() {
        try (TestBrowser plain = TestBrowser.open()) {
            ChromeDriver driver =
                    plain.width(390).withoutScripts().open(page("en")).driver();
            assertEquals(0, driver.findElements(By.cssSelector("th button")).size(), "no dead buttons");
            assertEquals(
                    13,
                    driver.findElements(By.cssSelector(".sortable tbody tr")).size());
            driver.findElement(By.cssSelector("#attempt-1 > summary")).click();
            assertTrue(driver.findElement(By.cssSelector("#attempt-1 table")).isDisplayed());
            assertFalse(driver.findElement(By.cssSelector("#attempt-1 .steps")).isDisplayed());
            String link =
                    driver.findElement(By.cssSelector("#attempt-1 .chapter")).getAttribute("href");
            assertTrue(link.contains("overlays/101-1.mp4#t="), link);
        }
    }

    @Test
    void printsWhatIsFoldedAwayAndLeavesOutWhatPaperCannotPlay() {
        english(1440);
        browser.media("light", "print");
        assertTrue((Boolean) browser.run("return document.querySelector('#attempt-1 table').checkVisibility()"));
        assertFalse((Boolean) browser.run("return document.querySelector('#attempt-1 video').checkVisibility()"));
        browser.media("light", "screen");
        assertFalse((Boolean) browser.run(
                "return document.querySelector('#attempt-1 table').checkVisibility({contentVisibilityAuto: true})"));
    }

    @Test
    void worksFromAWebServer() throws IOException {
        HttpServer server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
        server.createContext("/", PageInBrowserTest::answer);
        server.start();
        try {
            String address = "http://localhost:" + server.getAddress().getPort() + "/en.html";
            browser.width(1440).media("light", "screen").open(address);
            openAttempt(1).findElement(By.cssSelector(".chapter")).click();
            waitFor("return document.getElementById('video-1').currentTime > 1");
            browser.driver().get("about:blank");
            // A browser asks every server for an icon.
            browser.troubles().stream()
                    .filter(line -> !line.contains("favicon.ico"))
                    .forEach(line -> assertEquals("", line));
        } finally {
            server.stop(0);
        }
    }

    /** Parts of files too, as web servers do (RFC 9110, 14): without them no player can jump. */
    private static void answer(HttpExchange exchange) throws IOException {
        Path file = folder.resolve(exchange.getRequestURI().getPath().substring(1));
        if (!Files.isRegularFile(file)) {
            exchange.sendResponseHeaders(404, -1);
            exchange.close();
            return;
        }
        byte[] bytes = Files.readAllBytes(file);
        String range = exchange.getRequestHeaders().getFirst("Range");
        Headers headers = exchange.getResponseHeaders();
        headers.set("Content-Type", file.toString().endsWith(".html") ? "text/html" : "video/mp4");
        int from = 0;
        int to = bytes.length - 1;
        if (range != null) {
            String[] ends = range.substring("bytes=".length()).split("-", -1);
            from = Integer.parseInt(ends[0]);
            to = ends[1].isEmpty() ? to : Integer.parseInt(ends[1]);
            headers.set("Content-Range", "bytes " + from + "-" + to + "/" + bytes.length);
        }
        exchange.sendResponseHeaders(range == null ? 200 : 206, to - from + 1);
        exchange.getResponseBody().write(bytes, from, to - from + 1);
        exchange.close();
    }
}
