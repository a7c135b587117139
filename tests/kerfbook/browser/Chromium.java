package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.fail;

import java.io.File;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.openqa.selenium.By;
import org.openqa.selenium.JavascriptExecutor;
import org.openqa.selenium.Keys;
import org.openqa.selenium.WebElement;
import org.openqa.selenium.chrome.ChromeDriver;
import org.openqa.selenium.chrome.ChromeDriverService;
import org.openqa.selenium.chrome.ChromeOptions;
import org.openqa.selenium.support.ui.ExpectedCondition;
import org.openqa.selenium.support.ui.WebDriverWait;

/** Debian's Chromium without a window. It notes every breach of the content security policy and every error of a script. */
final class Chromium implements AutoCloseable {
    private static final Path BROWSER = Path.of("/usr/bin/chromium");
    private static final Path DRIVER = Path.of("/usr/bin/chromedriver");
    private static final String LISTEN = "window.troubles = [];"
        + "addEventListener('securitypolicyviolation', e => troubles.push('policy: ' + e.violatedDirective + ' ' + e.blockedURI), true);"
        + "addEventListener('error', e => troubles.push('error: ' + (e.message || e.target?.src || e.target?.href)), true);"
        + "addEventListener('unhandledrejection', e => troubles.push('rejected: ' + e.reason));";

    private static final String TAGS = "['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']";
    private static final String COLOURS = "['color-contrast', 'link-in-text-block']";
    private static final String AXE = new String(Site.resource("/axe.min.js"), StandardCharsets.UTF_8);
    /** Violations only: what passed would be thousands of nodes to carry over for nothing. */
    private static final String RUN = "const [done] = arguments; axe.run(document, Object.assign({ resultTypes: ['violations'] }, options))"
        + ".then(r => done(r.violations.map(v => `${v.id}, ${v.nodes.length} times, first ${v.nodes[0].html}`)), e => done([String(e)]));";

    final ChromeDriver driver;

    Chromium() {
        if (!Files.isExecutable(BROWSER) || !Files.isExecutable(DRIVER)) {
            fail("Chromium or its driver is missing: apt-get install -y chromium chromium-driver");
        }
        ChromeOptions options = new ChromeOptions();
        options.setBinary(BROWSER.toFile());
        options.addArguments("--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run", "--disable-background-networking",
            "--disable-component-update", "--disable-sync", "--disable-dev-shm-usage", "--lang=en-GB");
        File driverFile = DRIVER.toFile();
        driver = new ChromeDriver(new ChromeDriverService.Builder().usingDriverExecutable(driverFile).build(), options);
        driver.manage().timeouts().scriptTimeout(Duration.ofSeconds(60));
        driver.executeCdpCommand("Page.addScriptToEvaluateOnNewDocument", Map.of("source", LISTEN));
        size(1440);
    }

    /** Width in CSS pixels, with the height of a screen of that kind. */
    void size(int width) {
        driver.executeCdpCommand("Emulation.setDeviceMetricsOverride", Map.of("width", width, "height", width > 1000 ? 900 : width > 500 ? 1180 : 640,
            "deviceScaleFactor", 1, "mobile", false));
    }

    void media(String... pairs) {
        List<Map<String, String>> features = new java.util.ArrayList<>();
        for (int i = 0; i < pairs.length; i += 2) {
            features.add(Map.of("name", pairs[i], "value", pairs[i + 1]));
        }
        driver.executeCdpCommand("Emulation.setEmulatedMedia", Map.of("features", features));
    }

    /** Opens an address anew and waits until its page stands. */
    void open(String address) {
        signIn(address);
        driver.get("about:blank");
        driver.get(address);
        settled();
    }

    /** Gives the browser the session that its site says, or none; the page itself takes no part. */
    void signIn(String address) {
        URI site = URI.create(address);
        String origin = site.getScheme() + "://" + site.getAuthority();
        String name = "kerfbook-" + site.getPort();
        driver.executeCdpCommand("Network.deleteCookies", Map.of("name", name, "url", origin));
        Site.session(origin).ifPresent(secret -> driver.executeCdpCommand("Network.setCookie",
            Map.of("name", name, "value", secret, "url", origin, "httpOnly", true, "sameSite", "Strict")));
    }

    /** Waits until there is a heading and nothing is being asked. */
    void settled() {
        waitFor(now -> !now.findElements(By.cssSelector("main h1")).isEmpty());
        driver.executeAsyncScript("const done = arguments[0]; requestAnimationFrame(() => requestAnimationFrame(done));");
    }

    <T> T waitFor(ExpectedCondition<T> condition) {
        return new WebDriverWait(driver, Duration.ofSeconds(15), Duration.ofMillis(30)).until(condition);
    }

    void waitForTitle(String start) {
        waitFor(now -> now.getTitle().startsWith(start));
        settled();
    }

    String heading() {
        return driver.findElement(By.cssSelector("main h1")).getText();
    }

    WebElement one(String css) {
        return driver.findElement(By.cssSelector(css));
    }

    List<WebElement> all(String css) {
        return driver.findElements(By.cssSelector(css));
    }

    WebElement byId(String id) {
        return driver.findElement(By.id(id));
    }

    /** Puts a text in place of what stands in a box, as somebody at the keyboard does. */
    void type(String id, String text) {
        WebElement box = byId(id);
        box.sendKeys(Keys.chord(Keys.CONTROL, "a"), Keys.DELETE);
        box.sendKeys(text);
    }

    void choose(String id, String value) {
        new org.openqa.selenium.support.ui.Select(byId(id)).selectByValue(value);
    }

    Object js(String script, Object... arguments) {
        return ((JavascriptExecutor) driver).executeScript(script, arguments);
    }

    /** The address behind the hash. */
    String route() {
        return (String) js("return location.hash");
    }

    void requireNoTroubles(String where) {
        assertEquals(List.of(), js("return window.troubles"), where);
    }

    /** What breaks WCAG 2.2 A and AA or axe's best practices on the page as it stands. */
    List<?> violations() {
        return violations(Check.ALL);
    }

    List<?> violations(Check check) {
        if (!Boolean.TRUE.equals(js("return typeof axe === 'object'"))) {
            js(AXE);
        }
        return (List<?>) driver.executeAsyncScript("const options = " + check.options + "; " + RUN);
    }

    /** Which of axe's rules. Colours take most of its time, and do not hang on the width; the others do not hang on the colours. */
    enum Check {
        ALL("{ runOnly: " + TAGS + " }"),
        COLOURS("{ runOnly: " + Chromium.COLOURS + " }"),
        SHAPES("{ runOnly: " + TAGS + ", rules: Object.fromEntries(" + Chromium.COLOURS + ".map(rule => [rule, { enabled: false }])) }");

        private final String options;

        Check(String options) {
            this.options = options;
        }
    }

    @Override
    public void close() {
        driver.quit();
    }
}
