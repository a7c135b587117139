package kerfbook.shielding;

import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;

/**
 * What one becquerel of each nuclide gives at one detector behind fixed layers. It does not depend on dates: the rate on
 * any day is the sum of activity times unit rate.
 */
public final class UnitRates {
    private static final List<String> NOT_COVERED = List.of(
        "Not covered: streaming through gaps, skyshine, scatter from air and floors, bremsstrahlung, neutrons and beta rays, "
            + "photons below 0.05 MeV, activity dissolved in the water.",
        "Layers: build-up of the last material that is 3 mean free paths thick, or of a thinner one after it where that is larger, at the total of mean free paths. Against "
            + "transport calculations at 1.25 MeV: steel then water −9 to −17 %, water then steel +1 to +4 %, lead then water +26 %, "
            + "water then lead −14 %, steel then concrete −9 %.");

    /** One line per becquerel of its nuclide. */
    record UnitLine(String nuclide, double energyMev, double rate, double unscattered, double meanFreePaths, double deepShare,
            String medium) {
        boolean extrapolated() {
            return deepShare > 0.01 || energyMev < 0.1;
        }
    }

    private final DoseQuantity quantity;
    private final double tolerance;
    private final boolean reached;
    private final int sourcePoints;
    private final List<UnitLine> lines;
    private final SortedMap<String, Double> perBq;
    private final SortedMap<String, Double> errorPerBq;

    /** @param errorPerBq estimated numerical error of every nuclide, also of those without lines */
    UnitRates(DoseQuantity quantity, double tolerance, boolean reached, int sourcePoints, List<UnitLine> lines,
            Map<String, Double> errorPerBq) {
        this.quantity = quantity;
        this.tolerance = tolerance;
        this.reached = reached;
        this.sourcePoints = sourcePoints;
        this.lines = List.copyOf(lines);
        this.errorPerBq = Collections.unmodifiableSortedMap(new TreeMap<>(errorPerBq));
        SortedMap<String, Double> sums = new TreeMap<>();
        errorPerBq.keySet().forEach(name -> sums.put(name, 0.0));
        for (UnitLine line : lines) {
            if (!(line.rate() >= 0 && line.rate() < Double.POSITIVE_INFINITY)) {
                throw new IllegalStateException("no rate: " + line);
            }
            sums.merge(line.nuclide(), line.rate(), Double::sum);
        }
        perBq = Collections.unmodifiableSortedMap(sums);
    }

    public DoseQuantity quantity() {
        return quantity;
    }

    /** Rate per becquerel by nuclide, in the unit of the quantity per Bq; 0 for nuclides that send no photons. */
    public SortedMap<String, Double> perBq() {
        return perBq;
    }

    /** False where the work was stopped before the tolerance asked for. */
    public boolean toleranceReached() {
        return reached;
    }

    /** Points of the source from which every line was followed. */
    public int sourcePoints() {
        return sourcePoints;
    }

    /**
     * The rate of an inventory, in the unit of the quantity.
     *
     * @throws Invalid if a nuclide of the inventory was not among those asked for
     */
    public double rate(Inventory inventory) {
        Sum sum = new Sum();
        inventory.becquerels().forEach((name, bq) -> sum.add(bq * of(name, perBq)));
        return sum.value();
    }

    /** The rate of an inventory with its lines, error and validity. */
    public DoseRateAnswer answer(Inventory inventory) {
        Sum total = new Sum();
        Sum unscattered = new Sum();
        Sum error = new Sum();
        inventory.becquerels().forEach((name, bq) -> error.add(bq * of(name, errorPerBq)));
        for (UnitLine line : lines) {
            double bq = inventory.becquerels().getOrDefault(line.nuclide(), 0.0);
            total.add(bq * line.rate());
            unscattered.add(bq * line.unscattered());
        }
        double rate = total.value();
        List<LineShare> shares = new ArrayList<>();
        double depth = 0;
        double extrapolated = 0;
        for (UnitLine line : lines) {
            Double bq = inventory.becquerels().get(line.nuclide());
            if (bq != null) {
                double own = bq * line.rate();
                double share = rate > 0 ? own / rate : 0;
                depth += share * line.meanFreePaths();
                extrapolated += line.extrapolated() ? share : 0;
                shares.add(new LineShare(line.nuclide(), line.energyMev(), own, bq * line.unscattered(), share, line.meanFreePaths(),
                    line.medium(), line.extrapolated()));
            }
        }
        shares.sort(Comparator.comparingDouble(LineShare::rate).reversed().thenComparing(LineShare::nuclide).thenComparing(LineShare::energyMev));
        boolean marked = extrapolated > tolerance || rate == 0 && shares.stream().anyMatch(LineShare::extrapolated);
        return new DoseRateAnswer(quantity, rate, Math.min(rate, unscattered.value()), rate > 0 ? error.value() / rate : 0, reached, shares,
            new Validity(depth, extrapolated, marked, notes(shares, depth, extrapolated, marked)));
    }

    private List<String> notes(List<LineShare> shares, double depth, double extrapolated, boolean marked) {
        List<String> notes = new ArrayList<>();
        if (marked) {
            notes.add(String.format(Locale.ROOT, "Extrapolated: %.1f %% of the rate comes through more than 40 mean free paths or from photons "
                + "below 0.1 MeV. Good to an order of magnitude at most.", 100 * extrapolated));
        }
        if (shares.isEmpty()) {
            notes.add("None of the nuclides sends photons above 0.05 MeV.");
        } else {
            notes.add(String.format(Locale.ROOT, "Point kernel with build-up factors of ANSI/ANS-6.4.3 for 0.1 to 10 MeV and up to 40 mean "
                + "free paths; here %.1f on average.", depth));
        }
        if (!reached) {
            notes.add("The numerical error asked for was not reached; the one given was.");
        }
        notes.addAll(NOT_COVERED);
        return notes;
    }

    private static double of(String nuclide, Map<String, Double> values) {
        Double value = values.get(nuclide);
        if (value == null) {
            throw new Invalid("inventory." + nuclide, "has no unit rate here. Ask for it among the nuclides.");
        }
        return value;
    }
}
