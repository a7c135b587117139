package kerfbook.quantity;

import java.util.Arrays;

/** Sums that give the same last digit in whatever order the terms come. */
public final class Sum {
    private double[] terms = new double[4];
    private int count;

    public Sum add(double term) {
        if (count == terms.length) {
            terms = Arrays.copyOf(terms, 2 * count);
        }
        terms[count++] = term;
        return this;
    }

    /** The terms sorted, then added with Neumaier's correction of the rounding. */
    public double value() {
        if (count == 1) {
            return terms[0];
        }
        double[] sorted = Arrays.copyOf(terms, count);
        Arrays.sort(sorted);
        double sum = 0;
        double correction = 0;
        for (double term : sorted) {
            double next = sum + term;
            correction += Math.abs(sum) >= Math.abs(term) ? (sum - next) + term : (term - next) + sum;
            sum = next;
        }
        return sum + correction;
    }
}
