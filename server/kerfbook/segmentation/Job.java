package kerfbook.segmentation;

import java.util.Collections;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import kerfbook.campaign.Component;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.Shape;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A component to be divided. Mass and activity are taken as spread evenly over its metal; where activity varies, each region is a component
 * of its own.
 *
 * @param massKg     mass of the whole, as weighed where that differs from the drawing: masses of pieces are shares of it
 * @param becquerels activity of the whole by nuclide, empty where it is not known
 * @param kerfMm     width of the slot; 0 for a shear
 */
public record Job(Shape shape, double massKg, SortedMap<String, Double> becquerels, double kerfMm, Bounds bounds) {
    public Job {
        Require.present(shape, "shape");
        Require.positive(massKg, 1e7, "mass_kg", "kg");
        SortedMap<String, Double> copy = new TreeMap<>();
        Require.present(becquerels, "becquerels").forEach((nuclide, bq) -> copy.put(Require.name(nuclide, "becquerels"),
            Require.within(Require.present(bq, "becquerels." + nuclide), 0, 1e24, "becquerels." + nuclide, "Bq")));
        becquerels = Collections.unmodifiableSortedMap(copy);
        Require.within(kerfMm, 0, 500, "kerf_mm", "mm");
        Require.present(bounds, "bounds");
        if (becquerels.isEmpty() && (bounds.activityLimit().isPresent() || bounds.rateCeiling().isPresent())) {
            throw new Invalid("becquerels", "is empty, but the package has a limit of activity or dose rate. Give the component's inventory.");
        }
        bounds.activityLimit().ifPresent(limit -> limit.sum(copy));
    }

    /** A component of a campaign, with its inventory on its reference day. */
    public static Job of(Component component, double kerfMm, Bounds bounds) {
        Require.present(component, "component");
        return new Job(component.shape(), component.massKg(), activity(component.inventory()), kerfMm, bounds);
    }

    /** Mass over drawn volume, kg per mm³: the density that makes the pieces add up to the mass of the whole. */
    double kgPerMm3() {
        return massKg / (shape.volumeM3() * 1e9);
    }

    /** Activity of a part with this mass. */
    SortedMap<String, Double> activityOf(double kg) {
        SortedMap<String, Double> part = new TreeMap<>();
        becquerels.forEach((nuclide, bq) -> part.put(nuclide, bq * (kg / massKg)));
        return Collections.unmodifiableSortedMap(part);
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static SortedMap<String, Double> activity(Optional<Inventory> inventory) {
        SortedMap<String, Double> becquerels = new TreeMap<>();
        inventory.ifPresent(given -> given.activities().forEach(activity -> becquerels.put(activity.nuclide(), activity.becquerel())));
        return becquerels;
    }
}
