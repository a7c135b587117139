package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.DynamicTest;
import org.junit.jupiter.api.TestFactory;

/** Runs {@code tests/web/*.test.js} in the browser, against the modules as they are served. Each file calls {@code test(name, body)}. */
class ModulesTest {
    private static final String RUN = "const done = arguments[arguments.length - 1]; const found = [];"
        + "const cases = []; const test = (name, body) => cases.push([name, body]); const load = path => import(path);"
        + "const equal = (a, b, why = '') => { if (!Object.is(a, b) && JSON.stringify(a) !== JSON.stringify(b)) throw new Error(`${why} expected ${JSON.stringify(b)}, was ${JSON.stringify(a)}`); };"
        + "const near = (a, b, off) => { if (!(Math.abs(a - b) <= off)) throw new Error(`expected ${b} ± ${off}, was ${a}`); };"
        + "(async () => { await (new (Object.getPrototypeOf(async () => {}).constructor)('test', 'load', 'equal', 'near', arguments0))(test, load, equal, near);"
        + "for (const [name, body] of cases) { try { await body(); found.push({ name, fault: '' }); } catch (e) { found.push({ name, fault: String(e) }); } } })()"
        + ".then(() => done(found), e => done([{ name: 'the file', fault: String(e) }]));";
    private static Site site;
    private static Chromium browser;

    @BeforeAll
    static void start() {
        browser = new Chromium();
        site = new Site();
    }

    @AfterAll
    static void stop() {
        browser.close();
        site.close();
    }

    @TestFactory
    Stream<DynamicTest> modules_do_what_their_tests_say() {
        browser.open(site.address() + "/#/campaigns");
        List<DynamicTest> tests = new ArrayList<>();
        try (Stream<Path> files = Files.list(Path.of("tests/web"))) {
            for (Path file : files.filter(each -> each.toString().endsWith(".test.js")).sorted().toList()) {
                Object answer = browser.driver.executeAsyncScript("const arguments0 = arguments[0]; " + RUN, Files.readString(file));
                List<?> cases = (List<?>) answer;
                assertFalse(cases.isEmpty(), file + " tests nothing");
                for (Object each : cases) {
                    Map<?, ?> row = (Map<?, ?>) each;
                    tests.add(DynamicTest.dynamicTest(file.getFileName() + ": " + row.get("name"), () -> assertEquals("", row.get("fault"))));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        assertFalse(tests.isEmpty());
        return tests.stream();
    }
}
