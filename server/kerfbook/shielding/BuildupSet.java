package kerfbook.shielding;

import java.util.Map;
import java.util.TreeMap;

/**
 * The fitted build-up coefficients of one medium at the standard's energies. Between two energies every coefficient runs
 * straight in ln E (ORNL/RSIC-49, section 5).
 */
public final class BuildupSet {
    private final TreeMap<Double, GpFit> byEnergy;

    public BuildupSet(Map<Double, GpFit> byEnergy) {
        if (byEnergy.size() < 2) {
            throw new IllegalStateException("a build-up set needs two energies at least");
        }
        this.byEnergy = new TreeMap<>(byEnergy);
    }

    /** The coefficients at an energy within the set. */
    public GpFit at(double energyMev) {
        Map.Entry<Double, GpFit> low = byEnergy.floorEntry(energyMev);
        Map.Entry<Double, GpFit> high = byEnergy.ceilingEntry(energyMev);
        if (low == null || high == null) {
            throw new IllegalStateException(energyMev + " MeV is outside the set, " + byEnergy.firstKey() + " to " + byEnergy.lastKey());
        }
        if (low.getKey().equals(high.getKey())) {
            return low.getValue();
        }
        double share = Math.log(energyMev / low.getKey()) / Math.log(high.getKey() / low.getKey());
        GpFit l = low.getValue();
        GpFit h = high.getValue();
        return new GpFit(between(l.b(), h.b(), share), between(l.c(), h.c(), share), between(l.a(), h.a(), share),
            between(l.xk(), h.xk(), share), between(l.d(), h.d(), share));
    }

    private static double between(double low, double high, double share) {
        return low + share * (high - low);
    }
}
