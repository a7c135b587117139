package kerfbook.campaign;

import kerfbook.quantity.Require;

/**
 * Who is there during a step.
 *
 * @param people   number of people of that role
 * @param presence share of the step's hours that each spends in the area, 0 to 1
 */
public record Staff(String role, double people, String area, double presence) {
    public Staff {
        Require.code(role, "role");
        Require.positive(people, 1_000, "people", "");
        Require.code(area, "area");
        Require.within(presence, 0, 1, "presence", "");
    }
}
