package kerfbook.shielding;

import java.util.Map;
import java.util.TreeMap;

/**
 * Build-up of H*(10) over build-up of air kerma in one medium. Scattered photons are softer than those of the source and
 * carry more H*(10) per kerma, so exposure build-up times the coefficient at the source energy is too low by this ratio:
 * 1.13 to 1.20 behind water, 1.11 concrete, 1.065 iron, 1.015 lead.
 *
 * <p>Computed by our own Monte Carlo for 0.3 to 2.9 MeV and 1 to 16 mean free paths (lead at 0.3 MeV to 14), good to about
 * 1 %. It is 1 at 0, runs along a monotone cubic between whole mean free paths (Fritsch and Carlson's slopes) and straight
 * in ln E, and is held at its last value outside.
 */
public final class SpectrumRatio {
    private final TreeMap<Double, double[]> byEnergy;

    /** Per energy the ratios at 1, 2, 3 … mean free paths. */
    public SpectrumRatio(Map<Double, double[]> byEnergy) {
        if (byEnergy.isEmpty()) {
            throw new IllegalStateException("no ratios");
        }
        this.byEnergy = new TreeMap<>();
        byEnergy.forEach((energy, ratios) -> this.byEnergy.put(energy, fromZero(ratios)));
    }

    public double at(double energyMev, double mfp) {
        Map.Entry<Double, double[]> low = byEnergy.floorEntry(energyMev);
        Map.Entry<Double, double[]> high = byEnergy.ceilingEntry(energyMev);
        if (low == null || high == null || low.getKey().equals(high.getKey())) {
            return along((low == null ? high : low).getValue(), mfp);
        }
        double share = Math.log(energyMev / low.getKey()) / Math.log(high.getKey() / low.getKey());
        return (1 - share) * along(low.getValue(), mfp) + share * along(high.getValue(), mfp);
    }

    private static double[] fromZero(double[] ratios) {
        double[] all = new double[ratios.length + 1];
        all[0] = 1;
        System.arraycopy(ratios, 0, all, 1, ratios.length);
        return all;
    }

    private static double along(double[] y, double x) {
        int last = y.length - 1;
        if (x >= last) {
            return y[last];
        }
        int i = (int) x;
        double t = x - i;
        double rise = y[i + 1] - y[i];
        double m0 = slope(y, i);
        double m1 = slope(y, i + 1);
        return y[i] + t * (m0 + t * (3 * rise - 2 * m0 - m1 + t * (m0 + m1 - 2 * rise)));
    }

    /** Harmonic mean of the neighbouring rises, 0 at a turn and past the end: the cubic never overshoots. */
    private static double slope(double[] y, int i) {
        int last = y.length - 1;
        if (i == last) {
            return 0;
        }
        double after = y[i + 1] - y[i];
        if (i == 0) {
            double next = y.length > 2 ? y[2] - y[1] : after;
            double end = (3 * after - next) / 2;
            return Math.signum(end) != Math.signum(after) ? 0 : Math.abs(end) > 3 * Math.abs(after) ? 3 * after : end;
        }
        double before = y[i] - y[i - 1];
        return before * after <= 0 ? 0 : 2 * before * after / (before + after);
    }
}
