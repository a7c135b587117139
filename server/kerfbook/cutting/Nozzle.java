package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Likely;

/**
 * Where the pressure of the pump, the loss in the hose and the flow through the orifice agree: {@code P + ΔP(w(P)) = pump}. The low
 * pressure belongs to the wide discharge coefficient, which draws more water through the hose.
 *
 * @param pressureMpa  in front of the orifice
 * @param waterLPerMin through it
 */
public record Nozzle(Likely pressureMpa, Likely waterLPerMin) {
    private static final int HALVINGS = 60;

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    static Nozzle of(double pumpMpa, double orificeMm, Likely discharge, Optional<Hose> hose) {
        Likely pressure = new Likely(behind(pumpMpa, orificeMm, discharge.high(), hose), behind(pumpMpa, orificeMm, discharge.likely(), hose),
            behind(pumpMpa, orificeMm, discharge.low(), hose));
        return new Nozzle(pressure, new Likely(Hydraulics.waterLPerMin(pressure.high(), orificeMm, discharge.low()),
            Hydraulics.waterLPerMin(pressure.likely(), orificeMm, discharge.likely()),
            Hydraulics.waterLPerMin(pressure.low(), orificeMm, discharge.high())));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static double behind(double pumpMpa, double orificeMm, double discharge, Optional<Hose> hose) {
        if (hose.isEmpty()) {
            return pumpMpa;
        }
        double low = 0;
        double high = pumpMpa;
        for (int i = 0; i < HALVINGS; i++) {
            double mid = (low + high) / 2;
            double needed = mid + Hydraulics.blasiusMpa(hose.get(), Hydraulics.waterLPerMin(mid, orificeMm, discharge));
            if (needed > pumpMpa) {
                high = mid;
            } else {
                low = mid;
            }
        }
        double pressure = (low + high) / 2;
        Hydraulics.hoseLossMpa(hose.get(), Hydraulics.waterLPerMin(pressure, orificeMm, discharge));
        return pressure;
    }
}
