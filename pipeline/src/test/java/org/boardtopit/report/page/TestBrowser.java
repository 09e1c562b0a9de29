package org.boardtopit.report.page;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.logging.Level;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.Assumptions;
import org.openqa.selenium.By;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.logging.LogEntry;
import org.openqa.selenium.logging.LogType;
import org.openqa.selenium.logging.LoggingPreferences;

/** The browser of this machine without a window. Nothing is fetched: where there is none, the test is skipped. */
final class TestBrowser implements AutoCloseable {
    /** Where distributions put them; elsewhere they are told by BOARDTOPIT_BROWSER and BOARDTOPIT_BROWSER_DRIVER. */
    private static final List<String> BROWSERS =
            List.of("/usr/bin/chromium", "/usr/bin/chromium-browser", "/usr/bin/google-chrome");

    private static final List<String> DRIVERS = List.of(
            "/usr/bin/chromedriver", "/usr/lib/chromium/chromedriver", "/usr/lib/chromium-browser/chromedriver");

    private final ChromeDriver driver;
    private boolean scripts = true;

    private TestBrowser(ChromeDriver driver) {
        this.driver = driver;
    }

    /** Skips the test when this machine has no browser or no driver for it. */
    static TestBrowser open() {
        Optional<Path> browser = find("BOARDTOPIT_BROWSER", BROWSERS);
        Optional<Path> binary = find("BOARDTOPIT_BROWSER_DRIVER", DRIVERS);
        Assumptions.assumeTrue(
                browser.isPresent() && binary.isPresent(),
                "no browser on this machine: install chromium and chromium-driver to run this test");
        ChromeDriverService service = new ChromeDriverService.Builder()
                .usingDriverExecutable(binary.get().toFile())
                .build();
        ChromeOptions options = new ChromeOptions();
        options.setBinary(browser.get().toFile());
        // As root and in small containers a browser starts in no other way.
        options.addArguments("--headless=new", "--no-sandbox", "--disable-dev-shm-usage", "--disable-gpu");
        LoggingPreferences logs = new LoggingPreferences();
        logs.enable(LogType.BROWSER, Level.ALL);
        options.setCapability("goog:loggingPrefs", logs);
        return new TestBrowser(new ChromeDriver(service, options));
    }

    private static Optional<Path> find(String variable, List<String> places) {
        String told = System.getenv(variable);
        return (told == null ? places : List.of(told))
                .stream().map(Path::of).filter(Files::isExecutable).findFirst();
    }

    ChromeDriver driver() {
        return driver;
    }

    /** As a phone or a desk has it. */
    TestBrowser width(int widthPx) {
        boolean phone = widthPx < 600;
        driver.executeCdpCommand(
                "Emulation.setDeviceMetricsOverride",
                Map.of("width", widthPx, "height", 844, "deviceScaleFactor", phone ? 2 : 1, "mobile", phone));
        return this;
    }

    /**
     * What style sheets ask for.
     *
     * @param scheme light or dark
     * @param medium screen or print
     */
    TestBrowser media(String scheme, String medium) {
        driver.executeCdpCommand(
                "Emulation.setEmulatedMedia",
                Map.of("media", medium, "features", List.of(Map.of("name", "prefers-color-scheme", "value", scheme))));
        return this;
    }

    /** For good. */
    TestBrowser withoutScripts() {
        driver.executeCdpCommand("Emulation.setScriptExecutionDisabled", Map.of("value", true));
        scripts = false;
        return this;
    }

    /** Anew, also when it is the page that is open. */
    TestBrowser open(String url) {
        driver.get("about:blank");
        driver.get(url);
        if (scripts) { // a key that was pressed just before may still be on its way
            waitFor("return document.readyState === 'complete' && location.href === '" + url + "'");
        }
        return this;
    }

    Object run(String script, Object... arguments) {
        return driver.executeScript(script, arguments);
    }

    double number(String script, Object... arguments) {
        return ((Number) run(script, arguments)).doubleValue();
    }

    List<String> texts(String selector) {
        return driver.findElements(By.cssSelector(selector)).stream()
                .map(element -> element.getText())
                .toList();
    }

    /** Until a script returns true; 20 s at most. */
    void waitFor(String condition) {
        long end = System.nanoTime() + 20_000_000_000L;
        while (!Boolean.TRUE.equals(run(condition))) {
            if (System.nanoTime() > end) {
                throw new AssertionError("in 20 s never: " + condition);
            }
            LockSupport.parkNanos(50_000_000);
        }
    }

    /** What the console says of the pages so far, but for what is only told; each is given once. */
    List<String> troubles() {
        return StreamSupport.stream(driver.manage().logs().get(LogType.BROWSER).spliterator(), false)
                .filter(entry -> entry.getLevel().intValue() >= Level.WARNING.intValue())
                .map(LogEntry::getMessage)
                .toList();
    }

    /** What axe-core finds of serious or critical impact, by the rules of WCAG 2.2 A and AA and good practice. */
    List<String> barriers() {
        run(axe());
        Object found = driver.executeAsyncScript("""
                const done = arguments[arguments.length - 1];
                axe.run(document, {resultTypes: ['violations']}).then(
                  r => done(r.violations.filter(v => v.impact === 'serious' || v.impact === 'critical')
                    .map(v => v.id + ': ' + v.nodes.slice(0, 3).map(n => n.html).join(' | '))),
                  e => done([String(e)]));
                """);
        return ((List<?>) found).stream().map(Object::toString).toList();
    }

    private static String axe() {
        try (InputStream in = TestBrowser.class.getResourceAsStream("/axe.min.js")) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
