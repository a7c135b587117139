package kerfbook.waste;

import java.util.SortedMap;
import kerfbook.quantity.Require;

/**
 * The solids of cutting by where they end. Masses and activity of the parts are those of the whole; activity goes with the kerf metal, abrasive
 * and tool dust bring none of their own.
 *
 * @param chipsKg         kerf metal that falls
 * @param finesKg         kerf metal in the water
 * @param airborneKg      kerf metal that leaves the water
 * @param coarseAbrasiveKg spent abrasive that falls
 * @param slowAbrasiveKg  spent abrasive in the water
 * @param toolKg          worn off tools; counted with what falls
 */
public record SecondaryWaste(double chipsKg, SortedMap<String, Double> chipsBecquerels, double finesKg, SortedMap<String, Double> finesBecquerels,
                             double airborneKg, SortedMap<String, Double> airborneBecquerels, double coarseAbrasiveKg, double slowAbrasiveKg,
                             double toolKg) {

    public static SecondaryWaste of(CutSolids solids, Shares shares) {
        Require.present(solids, "solids");
        Require.present(shares, "shares");
        double chips = 1 - shares.suspended() - shares.airborne();
        return new SecondaryWaste(
            chips * solids.kerfKg(), CutSolids.part(solids.becquerels(), chips),
            shares.suspended() * solids.kerfKg(), CutSolids.part(solids.becquerels(), shares.suspended()),
            shares.airborne() * solids.kerfKg(), CutSolids.part(solids.becquerels(), shares.airborne()),
            (1 - shares.slowAbrasive()) * solids.abrasiveKg(), shares.slowAbrasive() * solids.abrasiveKg(), solids.toolKg());
    }

    /** What goes into drums once it is gathered up: chips, coarse abrasive, tool dust. */
    public double settledKg() {
        return chipsKg + coarseAbrasiveKg + toolKg;
    }

    /** What the filters have to catch. */
    public double suspendedKg() {
        return finesKg + slowAbrasiveKg;
    }

    public double totalKg() {
        return settledKg() + suspendedKg() + airborneKg;
    }
}
