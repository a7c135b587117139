package kerfbook.browser;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.charset.StandardCharsets;
import java.util.HashMap;
import java.util.Map;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Contrast of the colours in the one list, since automatic checks leave text inside pictures undecided. */
class ContrastTest {
    private static final Pattern PAIR = Pattern.compile("--([a-z0-9-]+): light-dark\\((#[0-9A-F]{6}), (#[0-9A-F]{6})\\);");
    private static final Pattern SINGLE = Pattern.compile("--([a-z0-9-]+): (#[0-9A-F]{6});");
    private static final Map<String, String[]> COLOURS = new HashMap<>();

    @BeforeAll
    static void read() {
        String css = new String(Site.resource("/web/styles/colors.css"), StandardCharsets.UTF_8);
        String usual = css.substring(0, css.indexOf("@media"));
        Matcher pairs = PAIR.matcher(usual);
        while (pairs.find()) {
            COLOURS.put(pairs.group(1), new String[] {pairs.group(2), pairs.group(3)});
        }
        Matcher singles = SINGLE.matcher(usual);
        while (singles.find()) {
            COLOURS.put(singles.group(1), new String[] {singles.group(2), singles.group(2)});
        }
    }

    /** PUBLISHED: WCAG 2.2, definition of contrast ratio: black on white 21; #777777 on white 4.48, the well-known grey that just fails. */
    @Test
    void the_formula_gives_the_known_ratios() {
        assertEquals(21, ratio("#000000", "#FFFFFF"), 1e-9);
        assertEquals(4.48, ratio("#777777", "#FFFFFF"), 0.005);
    }

    /** PUBLISHED: WCAG 2.2, success criterion 1.4.3: text at least 4.5 to 1. */
    @ParameterizedTest
    @CsvSource({"ink,paper", "ink,panel", "ink,sunk", "muted,paper", "muted,panel", "muted,sunk", "water,paper", "water,panel", "water,sunk", "water,water-pale", "ink,water-pale",
        "muted,water-pale", "copper,paper", "copper,panel", "copper,sunk", "on-water,water", "on-copper,copper", "bar-text,bar", "bar-quiet,bar",
        "on-heat-1,heat-1", "on-heat-2,heat-2", "on-heat-3,heat-3", "on-heat-4,heat-4", "on-heat-5,heat-5"})
    void text_stands_out(String text, String ground) {
        require(text, ground, 4.5);
    }

    /** PUBLISHED: WCAG 2.2, success criterion 1.4.11: marks and borders of controls at least 3 to 1. */
    @ParameterizedTest
    @CsvSource({"control,paper", "control,panel", "control,sunk", "water,panel", "copper,panel", "ink,hair", "water,hair", "bar-line,bar"})
    void marks_stand_out(String mark, String ground) {
        require(mark, ground, 3);
    }

    private static void require(String one, String other, double least) {
        for (int theme = 0; theme < 2; theme++) {
            double found = ratio(COLOURS.get(one)[theme], COLOURS.get(other)[theme]);
            assertTrue(found >= least, one + " on " + other + (theme == 0 ? " light " : " dark ") + found);
        }
    }

    private static double ratio(String one, String other) {
        double a = luminance(one);
        double b = luminance(other);
        return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
    }

    private static double luminance(String hex) {
        return 0.2126 * linear(hex, 1) + 0.7152 * linear(hex, 3) + 0.0722 * linear(hex, 5);
    }

    private static double linear(String hex, int at) {
        double part = Integer.parseInt(hex.substring(at, at + 2), 16) / 255.0;
        return part <= 0.04045 ? part / 12.92 : Math.pow((part + 0.055) / 1.055, 2.4);
    }
}
