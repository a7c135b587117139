package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CubatureRuleTest {
    /** BY HAND: the mean of x^p over −1 … 1 is 1/(p + 1) for even p and 0 for odd; products multiply. Both rules are exact to their degree. */
    @ParameterizedTest
    @CsvSource({"1, 22, 13", "2, 7, 5", "3, 7, 5"})
    void rules_are_exact_to_their_degree(int n, int highDegree, int lowDegree) {
        CubatureRule rule = CubatureRule.of(n);
        boolean limited = false;
        for (int p = 0; p <= highDegree + 1; p++) {
            for (int q = 0; q <= (n > 1 ? highDegree + 1 : 0); q++) {
                for (int r = 0; r <= (n > 2 ? highDegree + 1 : 0); r++) {
                    double high = 0;
                    double low = 0;
                    for (int i = 0; i < rule.count; i++) {
                        double f = Math.pow(rule.nodes[i * n], p) * (n > 1 ? Math.pow(rule.nodes[i * n + 1], q) : 1)
                            * (n > 2 ? Math.pow(rule.nodes[i * n + 2], r) : 1);
                        high += rule.high[i] * f;
                        low += (rule.high[i] - rule.difference[i]) * f;
                    }
                    double exact = mean(p) * mean(q) * mean(r);
                    if (p + q + r <= highDegree) {
                        assertEquals(exact, high, 1e-13);
                    }
                    if (p + q + r <= lowDegree) {
                        assertEquals(exact, low, 1e-13);
                    } else {
                        limited |= Math.abs(exact - low) > 1e-6;
                    }
                }
            }
        }
        assertTrue(limited, "the lower rule is of lower degree");
    }

    private static double mean(int power) {
        return power % 2 == 0 ? 1.0 / (power + 1) : 0;
    }
}
