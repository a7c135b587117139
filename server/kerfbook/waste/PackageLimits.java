package kerfbook.waste;

import kerfbook.quantity.Require;

/**
 * Limits for packages of radioactive material in transport, as a rule set gives them. Dose rates in µSv/h.
 *
 * @param surface               at the surface, not under exclusive use; also the line above which a package is handled remotely
 * @param surfaceExclusive      at the surface, under exclusive use
 * @param index                 highest transport index, not under exclusive use
 * @param twoMetresExclusive    2 m from the vehicle, under exclusive use
 * @param unshieldedThreeMetres 3 m from the content of one package without its shielding
 * @param remoteSurface         at the surface from here on a package is handled remotely
 * @param whiteSurface          highest at the surface for label I
 * @param yellowSurface         highest at the surface for label II
 * @param lsa2PerG              highest A2 per gram of low specific activity II, solids
 * @param lsa3PerG              the same of III
 */
public record PackageLimits(double surface, double surfaceExclusive, double index, double twoMetresExclusive, double unshieldedThreeMetres,
                              double remoteSurface, double whiteSurface, double yellowSurface, double lsa2PerG, double lsa3PerG) {
    public PackageLimits {
        Require.positive(surface, 1e9, "surface", "µSv/h");
        Require.positive(surfaceExclusive, 1e9, "surface_exclusive", "µSv/h");
        Require.positive(index, 1e6, "index", "");
        Require.positive(twoMetresExclusive, 1e9, "two_metres_exclusive", "µSv/h");
        Require.positive(unshieldedThreeMetres, 1e9, "unshielded_three_metres", "µSv/h");
        Require.positive(remoteSurface, 1e9, "remote_surface", "µSv/h");
        Require.positive(whiteSurface, 1e9, "white_surface", "µSv/h");
        Require.within(yellowSurface, whiteSurface, surface, "yellow_surface", "µSv/h");
        Require.positive(lsa2PerG, 1, "lsa2_per_g", "A2/g");
        Require.within(lsa3PerG, lsa2PerG, 1, "lsa3_per_g", "A2/g");
    }
}
