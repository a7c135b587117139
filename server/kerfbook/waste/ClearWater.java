package kerfbook.waste;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalDouble;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * How cloudy one well-mixed pool gets and how long it takes to clear. For each size of fines
 * <pre>
 *   V dC/dt = S − (E·Q + v_s·A)·C
 *   C(t) = C∞ + (C₀ − C∞) e^(−t/T),   C∞ = S / (E·Q + v_s·A),   T = V / (E·Q + v_s·A)
 * </pre>
 * with C the concentration (g/m³), V the volume (m³), S the release (g/h), E the part caught in one pass, Q the flow (m³/h), v_s the settling
 * speed (m/h), A the floor (m²). Where nothing takes the fines out, C grows by S·t/V.
 *
 * <p>Standard balance of a stirred tank, from memory. With a filter alone it removes 63.2, 86.5, 95.0, 98.2, 99.3 % in 1 to 5 turnovers; a
 * printed table for bathing pools under constant load (Gage and Bidwell, as quoted in a trade journal) gives 42, 84, 95, 98, 99.3 %. No pool is
 * perfectly stirred: the water at the cut is cloudier than the mean, and trials decide.
 */
public final class ClearWater {
    /** m/h in one mm/s. */
    private static final double M_PER_H = 3.6;
    private static final int HALVINGS = 200;

    private final Pool pool;
    private final Fines fines;

    public ClearWater(Pool pool, Fines fines) {
        this.pool = Require.present(pool, "pool");
        this.fines = Require.present(fines, "fines");
    }

    public Pool pool() {
        return pool;
    }

    public Fines fines() {
        return fines;
    }

    /** Water without fines. */
    public List<Double> clean() {
        return Collections.nCopies(fines.sizes().size(), 0.0);
    }

    /** {@code E·Q + v_s·A} of one size, m³/h. */
    double clearedM3PerH(Fines.Size size) {
        return size.filterEfficiency() * pool.filterM3PerH() + size.settlingMmPerS() * M_PER_H * pool.floorM2();
    }

    /** Time constants T by size, h; infinite ones are left to {@link #hoursUntil} as "never". */
    public List<OptionalDouble> timeConstantsH() {
        return fines.sizes().stream().map(this::clearedM3PerH)
            .map(cleared -> cleared > 0 ? OptionalDouble.of(pool.volumeM3() / cleared) : OptionalDouble.empty()).toList();
    }

    /** {@code Σ C∞}: what the water comes to under a constant release, g/m³; empty where it grows without end. */
    public OptionalDouble steadyGPerM3(double releaseGPerH) {
        Require.within(releaseGPerH, 0, 1e9, "release_g_per_h", "g/h");
        double sum = 0;
        for (Fines.Size size : fines.sizes()) {
            double cleared = clearedM3PerH(size);
            if (cleared > 0) {
                sum += releaseGPerH * size.share() / cleared;
            } else if (releaseGPerH > 0) {
                return OptionalDouble.empty();
            }
        }
        return OptionalDouble.of(sum);
    }

    /**
     * One stretch of time with a constant release.
     *
     * @param startGPerM3 concentration by size at its beginning
     */
    public Stretch after(List<Double> startGPerM3, double hours, double releaseGPerH) {
        List<Double> start = checked(startGPerM3);
        Require.within(hours, 0, 1e6, "hours", "h");
        Require.within(releaseGPerH, 0, 1e9, "release_g_per_h", "g/h");
        List<Double> end = new ArrayList<>();
        double caught = 0;
        double settled = 0;
        for (int i = 0; i < start.size(); i++) {
            Fines.Size size = fines.sizes().get(i);
            end.add(at(i, start.get(i), hours, releaseGPerH));
            double gone = gone(i, start.get(i), hours, releaseGPerH);
            double cleared = clearedM3PerH(size);
            double byFilter = cleared > 0 ? size.filterEfficiency() * pool.filterM3PerH() / cleared : 0;
            caught += gone * byFilter;
            settled += gone * (1 - byFilter);
        }
        return new Stretch(hours, releaseGPerH, start, end, caught, settled);
    }

    private double at(int i, double start, double hours, double releaseGPerH) {
        double cleared = clearedM3PerH(fines.sizes().get(i));
        double release = releaseGPerH * fines.sizes().get(i).share();
        double x = cleared * hours / pool.volumeM3();
        return start * Math.exp(-x) + release * hours / pool.volumeM3() * reached(x);
    }

    /** {@code (1 − e^(−x)) / x}, 1 at 0. */
    private static double reached(double x) {
        return x == 0 ? 1 : -Math.expm1(-x) / x;
    }

    /** Taken out of the water: {@code k ∫ C dt = V C₀ (1 − e^(−x)) + S t (1 − (1 − e^(−x))/x)}, g. */
    private double gone(int i, double start, double hours, double releaseGPerH) {
        double cleared = clearedM3PerH(fines.sizes().get(i));
        double x = cleared * hours / pool.volumeM3();
        return pool.volumeM3() * start * -Math.expm1(-x) + releaseGPerH * fines.sizes().get(i).share() * hours * kept(x);
    }

    /** {@code 1 − (1 − e^(−x))/x}; by its series where the difference would lose its digits. */
    private static double kept(double x) {
        return x < 1e-4 ? x / 2 - x * x / 6 : 1 - reached(x);
    }

    /** Concentration after some hours of a stretch, all sizes together, g/m³. */
    double total(List<Double> start, double hours, double releaseGPerH) {
        double sum = 0;
        for (int i = 0; i < start.size(); i++) {
            sum += at(i, start.get(i), hours, releaseGPerH);
        }
        return sum;
    }

    /**
     * Hours without release until the water is down to the limit, found by halving; 0 if it is there already, empty if never.
     *
     * @param limitGPerM3 above 0. Turbidity meters read NTU: which g/m³ that is depends on the fines and is found at the site
     */
    public OptionalDouble hoursUntil(double limitGPerM3, List<Double> startGPerM3) {
        Require.positive(limitGPerM3, 1e9, "limit_g_per_m3", "g/m³");
        List<Double> start = checked(startGPerM3);
        if (total(start, 0, 0) <= limitGPerM3) {
            return OptionalDouble.of(0);
        }
        double stays = 0;
        double longest = 0;
        for (int i = 0; i < start.size(); i++) {
            double cleared = clearedM3PerH(fines.sizes().get(i));
            stays += cleared > 0 ? 0 : start.get(i);
            longest = cleared > 0 && start.get(i) > 0 ? Math.max(longest, pool.volumeM3() / cleared) : longest;
        }
        if (stays >= limitGPerM3) {
            return OptionalDouble.empty();
        }
        double low = 0;
        double high = longest * Math.log(total(start, 0, 0) / (limitGPerM3 - stays)) + longest;
        for (int i = 0; i < HALVINGS && low < high; i++) {
            double middle = (low + high) / 2;
            if (middle <= low || middle >= high) {
                break;                              // neighbours among the numbers
            }
            if (total(start, middle, 0) > limitGPerM3) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return OptionalDouble.of(high);
    }

    private List<Double> checked(List<Double> gPerM3) {
        List<Double> copy = Require.list(gPerM3, "g_per_m3");
        if (copy.size() != fines.sizes().size()) {
            throw new Invalid("g_per_m3", "must have one figure for each of " + fines.sizes().size() + " sizes, not " + copy.size() + ".");
        }
        for (int i = 0; i < copy.size(); i++) {
            Require.within(copy.get(i), 0, 1e12, "g_per_m3[" + i + "]", "g/m³");
        }
        return copy;
    }
}
