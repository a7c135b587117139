package kerfbook.estimate;

import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.cutting.CuttingTime;
import kerfbook.cutting.Removed;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Likely;

/**
 * What there is to count in a component, or in several together. Tool changes, filters, abrasive and drums are expected numbers and
 * need not be whole, and so are faults.
 *
 * @param faults         fault rate times tool-on hours, low by low and high by high
 * @param meanFaults     expected number of faults: mean rate times mean tool-on hours of each technique, as the two do not hang together
 * @param waitHours until the water is clear after these cuts; only where they are those of one task
 * @param missing   the figure that some technique does not give, by the driver that needs it
 */
record Quantities(double components, double packages, double pieces, double cuts, double metres, Likely toolOnHours,
                  Likely toolChanges, Likely kgAbrasive, Likely filters, Likely drums, Likely faults, double meanFaults, double kerfKg, Optional<Likely> waitHours,
                  Map<Driver, String> missing) {

    private static final double MM_PER_M = 1000;
    private static final Likely NONE = Likely.exactly(0);

    static final Quantities EMPTY = new Quantities(0, 0, 0, 0, 0, NONE, NONE, NONE, NONE, NONE, NONE, 0, 0, Optional.empty(), Map.of());

    Quantities {
        missing = Map.copyOf(missing);
    }

    /** The component with those of its cuts that are given. */
    static Quantities of(Component component, List<Cut> cuts, Map<String, Technique> techniques) {
        Quantities all = new Quantities(1, component.packages(), component.pieces(), 0, 0, NONE, NONE, NONE, NONE, NONE, NONE, 0, 0, Optional.empty(), Map.of());
        for (Cut cut : cuts) {
            all = all.plus(of(cut, component, techniques.get(cut.technique())));
        }
        return all;
    }

    /**
     * One row of cuts. Kerf mass is kerf width (likely) · thickness · length · metal share · density; drums take abrasive and kerf.
     */
    static Quantities of(Cut cut, Component component, Technique technique) {
        double length = cut.count() * cut.lengthMm();
        Likely hours = CuttingTime.hours(cut.count(), cut.lengthMm(), cut.thicknessMm(), component.material(), technique);
        double kerfKg = Removed.kerfKg(technique, cut.count(), cut.lengthMm(), cut.thicknessMm(), component.densityKgPerM3()).likely() * cut.metal();
        Map<Driver, String> missing = new EnumMap<>(Driver.class);

        Optional<Likely> changes = Removed.tools(technique, cut.count(), cut.lengthMm(), cut.thicknessMm(), hours);
        if (changes.isEmpty()) {
            missing.put(Driver.TOOL_CHANGE, technique.code() + " has no tool life (tool_life_h, tool_life_m2, tool_life_m or tool_life_cuts)");
        }
        Optional<Likely> fed = Removed.abrasiveKg(technique, hours);
        if (fed.isEmpty()) {
            missing.put(Driver.KG_ABRASIVE, technique.code() + " has no abrasive feed (abrasive_kg_per_min)");
        }
        Likely abrasive = fed.orElse(NONE);
        Likely filters = NONE;
        if (technique.wear().filterLifeH().isPresent()) {
            filters = hours.by(technique.wear().filterLifeH().get());
        } else {
            missing.put(Driver.FILTER, technique.code() + " has no filter life (filter_life_h)");
        }
        Likely drums = NONE;
        if (technique.wear().drumKg().isPresent()) {
            drums = abrasive.plus(Likely.exactly(kerfKg)).by(technique.wear().drumKg().get());
        } else {
            missing.put(Driver.DRUM, technique.code() + " has no drum filling (drum_kg)");
        }
        if (technique.faultsPerH().isEmpty()) {
            missing.put(Driver.FAULT, technique.code() + " has no fault rate (faults_per_h)");
        }
        return new Quantities(0, 0, 0, cut.count(), length / MM_PER_M, hours, changes.orElse(NONE), abrasive, filters, drums,
            technique.faultsPerH().map(hours::times).orElse(NONE), technique.faultsPerH().map(rate -> hours.mean() * rate.mean()).orElse(0.0), kerfKg,
            Optional.empty(), missing);
    }

    Quantities plus(Quantities other) {
        Map<Driver, String> lacking = new HashMap<>(missing);
        other.missing.forEach(lacking::putIfAbsent);
        return new Quantities(components + other.components, packages + other.packages, pieces + other.pieces, cuts + other.cuts,
            metres + other.metres, toolOnHours.plus(other.toolOnHours), toolChanges.plus(other.toolChanges),
            kgAbrasive.plus(other.kgAbrasive), filters.plus(other.filters), drums.plus(other.drums),
            faults.plus(other.faults), meanFaults + other.meanFaults, kerfKg + other.kerfKg,
            Optional.empty(), lacking);
    }

    /** The same for a task that waits for clear water. */
    Quantities waiting(WaterModel.Wait wait) {
        Map<Driver, String> lacking = new HashMap<>(missing);
        if (wait.hours().isEmpty()) {
            lacking.put(Driver.WAIT_HOUR, wait.because());
        }
        return new Quantities(components, packages, pieces, cuts, metres, toolOnHours, toolChanges, kgAbrasive, filters, drums, faults, meanFaults, kerfKg,
            wait.hours(), lacking);
    }

    /** Why the driver cannot be counted here, if it cannot. */
    Optional<String> whyNot(Driver driver) {
        if (driver == Driver.WAIT_HOUR && waitHours.isEmpty() && !missing.containsKey(driver)) {
            return Optional.of("it is not a task of one component with cuts");
        }
        return Optional.ofNullable(missing.get(driver));
    }

    /** How many units of the driver there are; shifts, weeks and given counts are not quantities of components. */
    Likely of(Driver driver) {
        return switch (driver) {
            case CAMPAIGN -> Likely.exactly(1);
            case COMPONENT -> Likely.exactly(components);
            case PACKAGE -> Likely.exactly(packages);
            case PIECE -> Likely.exactly(pieces);
            case CUT -> Likely.exactly(cuts);
            case METRE -> Likely.exactly(metres);
            case TOOL_ON_HOUR -> toolOnHours;
            case TOOL_CHANGE -> toolChanges;
            case KG_ABRASIVE -> kgAbrasive;
            case FILTER -> filters;
            case DRUM -> drums;
            case FAULT -> faults;
            case WAIT_HOUR -> waitHours.orElseThrow();
            case SHIFT, WEEK, COUNT -> throw new IllegalStateException(driver + " is not a quantity of components");
        };
    }

    /** The number expected: the three-point mean, but for faults. */
    double mean(Driver driver) {
        return driver == Driver.FAULT ? meanFaults : of(driver).mean();
    }
}
