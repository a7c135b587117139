package kerfbook.shielding;

import static org.junit.jupiter.api.Assertions.assertEquals;

import org.junit.jupiter.api.Test;

class FastExpTest {
    /** LAW: the exponential of the standard library, 0 to 700, to 4e-13; 1 at 0. */
    @Test
    void agrees_with_the_library() {
        double[] x = new double[1_000_003];
        for (int i = 0; i < x.length; i++) {
            x[i] = i < 1000 ? i * 1e-9 : 700.0 * i / x.length;
        }
        double[] power = new double[x.length];
        double[] rest = new double[x.length];
        FastExp.prepare(x, power, rest);
        double worst = 0;
        for (int i = 0; i < x.length; i++) {
            worst = Math.max(worst, Math.abs(rest[i] * FastExp.powerOfTwo(power[i]) / Math.exp(-x[i]) - 1));
        }
        assertEquals(0, worst, 4e-13);
        assertEquals(1, rest[0] * FastExp.powerOfTwo(power[0]), 0);
    }
}
