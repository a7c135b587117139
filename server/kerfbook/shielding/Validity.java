package kerfbook.shielding;

import java.util.List;
import kerfbook.quantity.Require;

/**
 * How far an answer can be trusted apart from its numerical error.
 *
 * @param meanFreePaths     between source and detector, averaged over the lines by dose
 * @param extrapolatedShare share of the rate that rests on extrapolated lines, 0 to 1
 * @param extrapolated      that share is above the tolerance: the rate is good to an order of magnitude at most
 * @param notes             sentences to show with the answer: method, what is not covered, what was left out
 */
public record Validity(double meanFreePaths, double extrapolatedShare, boolean extrapolated, List<String> notes) {
    public Validity {
        notes = Require.list(notes, "notes");
    }
}
