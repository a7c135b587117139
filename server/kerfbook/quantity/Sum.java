package kerfbook.quantity;

import java.util.Arrays;

/** Sums that give the same last digit in whatever order the terms come. */
public final class Sum {
    /** Terms that are whole 1/1024ths are added without rounding while their sizes together stay below 2^53 of them. */
    private static final double PARTS = 1_024;
    private static final double MOST = 0x1p53 / PARTS;

    private double[] terms = new double[4];
    private int count;
    private boolean whole = true;
    private double plain;
    private double size;

    public Sum add(double term) {
        if (whole) {
            whole = term * PARTS == Math.rint(term * PARTS);
            plain += term;
            size += Math.abs(term);
        }
        if (count == terms.length) {
            terms = Arrays.copyOf(terms, 2 * count);
        }
        terms[count++] = term;
        return this;
    }

    /** The terms sorted, then added with Neumaier's correction of the rounding; as they came where nothing is rounded. */
    public double value() {
        if (whole && size <= MOST) {
            return plain;
        }
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
