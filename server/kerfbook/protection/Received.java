package kerfbook.protection;

import kerfbook.quantity.Require;

/**
 * A dose that somebody has received, in µSv.
 *
 * @param source where it is known from, for instance the dose passport or the person's word
 */
public record Received(double usv, String source) {
    public Received {
        Require.within(usv, 0, DatedDose.LARGEST_USV, "usv", "µSv");
        Require.text(source, "source");
    }
}
