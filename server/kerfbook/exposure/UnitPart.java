package kerfbook.exposure;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import kerfbook.quantity.Sum;
import kerfbook.shielding.Decay;
import kerfbook.shielding.DoseRateAnswer;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.UnitRates;

/**
 * Unit rates of one source at one point, nuclide by nuclide, ready for many dates: rate, mean free paths, extrapolated share and
 * numerical error of a mixture are sums over its nuclides, weighted by what each gives.
 */
public final class UnitPart {
    private record OfNuclide(double perBq, double meanFreePaths, double extrapolatedShare, double relativeError, double halfLifeDays) { }

    /** Rate of a mixture on a day. */
    record Rate(double usvPerH, double meanFreePaths, double extrapolatedShare, double relativeError) { }

    private final UnitRates rates;
    private final UnitRateCache table;
    private final SortedMap<String, OfNuclide> nuclides = new TreeMap<>();

    UnitPart(UnitRates rates, UnitRateCache table) {
        this.rates = rates;
        this.table = table;
        for (Map.Entry<String, Double> unit : rates.perBq().entrySet()) {
            DoseRateAnswer alone = rates.answer(Inventory.of(Map.of(unit.getKey(), 1.0)));
            double far = alone.rate() == 0 && alone.validity().extrapolated() ? 1 : alone.validity().extrapolatedShare();
            nuclides.put(unit.getKey(), new OfNuclide(unit.getValue(), alone.validity().meanFreePaths(), far, alone.relativeError(),
                table.nuclides().get(unit.getKey()).halfLifeDays()));
        }
    }

    /** {@code Σ A_n 2^(−t/T_n) u_n} with A_n the activity on the reference day, u_n the unit rate; progeny that grows in is added. */
    Rate on(Inventory inventory, LocalDate referenceOn, LocalDate on) {
        double days = ChronoUnit.DAYS.between(referenceOn, on);
        boolean grows = table.hasProgeny(inventory.becquerels().keySet());
        Inventory given = grows ? table.after(inventory, days) : inventory;
        Sum rate = new Sum();
        double depth = 0;
        double far = 0;
        double error = 0;
        boolean allFar = true;
        for (Map.Entry<String, Double> activity : given.becquerels().entrySet()) {
            OfNuclide unit = nuclides.get(activity.getKey());
            double own = activity.getValue() * (grows ? 1 : Decay.factor(unit.halfLifeDays, days)) * unit.perBq;
            rate.add(own);
            depth += own * unit.meanFreePaths;
            far += own * unit.extrapolatedShare;
            error += own * unit.relativeError;
            allFar &= unit.extrapolatedShare == 1 || unit.perBq == 0;
        }
        double sum = rate.value();
        return sum > 0 ? new Rate(sum, depth / sum, Math.min(1, far / sum), error / sum) : new Rate(0, 0, allFar && far() ? 1 : 0, 0);
    }

    private boolean far() {
        return nuclides.values().stream().anyMatch(unit -> unit.extrapolatedShare == 1);
    }

    UnitRates rates() {
        return rates;
    }
}
