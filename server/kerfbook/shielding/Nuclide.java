package kerfbook.shielding;

import java.util.List;
import kerfbook.quantity.Require;

/**
 * A radionuclide with the photons that leave a part: lines of progeny that keep step with it (Ba-137m in Cs-137,
 * Rh-106 in Ru-106, Pr-144 in Ce-144, Ag-108 in Ag-108m) stand in its own list, per decay of the parent. A pure beta or
 * electron-capture nuclide has no lines, and that is an answer, not a gap.
 *
 * @param name          such as {@code Co-60}
 * @param halfLifeDays  half-life in days of 86 400 s
 * @param lines         photon lines, possibly none
 */
public record Nuclide(String name, double halfLifeDays, List<PhotonLine> lines) {
    private static final double LONGEST_DAYS = 1e15;

    public Nuclide {
        Require.code(name, "nuclide");
        Require.positive(halfLifeDays, LONGEST_DAYS, "half_life_days", "d");
        lines = Require.list(lines, "lines");
    }
}
