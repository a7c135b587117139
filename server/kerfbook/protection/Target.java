package kerfbook.protection;

import kerfbook.quantity.Require;

/** A planning value of the collective dose of a campaign, in person-µSv. Neither limit nor constraint: nobody is held to it. */
public record Target(double personUsv) {
    private static final double LARGEST = 1e12;

    public Target {
        Require.positive(personUsv, LARGEST, "person_usv", "person-µSv");
    }

    public boolean keptBy(double collectivePersonUsv) {
        return Require.within(collectivePersonUsv, 0, LARGEST, "collective_person_usv", "person-µSv") <= personUsv;
    }
}
