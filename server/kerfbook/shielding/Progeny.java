package kerfbook.shielding;

import kerfbook.quantity.Require;

/**
 * A nuclide that grows in from another without keeping step with it, as Nb-95 from Zr-95.
 *
 * @param parent name of the nuclide that decays
 * @param child  name of the nuclide that grows
 * @param branch share of the parent's decays that lead to the child, above 0 and at most 1
 */
public record Progeny(String parent, String child, double branch) {
    public Progeny {
        Require.code(parent, "parent");
        Require.code(child, "child");
        Require.positive(branch, 1, "branch", "");
    }
}
