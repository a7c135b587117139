package kerfbook.protection;

import kerfbook.quantity.Require;

/**
 * A dose for one person that the radiation protection officer sets beforehand for a campaign or a task. Not a limit: going over it asks
 * for follow-up.
 */
public record Constraint(String name, double usv) {
    public Constraint {
        Require.name(name, "name");
        Require.positive(usv, DatedDose.LARGEST_USV, "usv", "µSv");
    }

    /** Within up to the constraint itself. */
    public Verdict verdict(double doseUsv) {
        Require.within(doseUsv, 0, DatedDose.LARGEST_USV, "dose_usv", "µSv");
        return Picosieverts.of(doseUsv) > Picosieverts.of(usv) ? Verdict.OVER_CONSTRAINT : Verdict.WITHIN;
    }
}
