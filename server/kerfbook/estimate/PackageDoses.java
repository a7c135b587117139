package kerfbook.estimate;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Component;
import kerfbook.campaign.Driver;
import kerfbook.campaign.PackageType;
import kerfbook.exposure.PackageRates;
import kerfbook.exposure.PlacedSource;
import kerfbook.exposure.PointRates;
import kerfbook.exposure.TransportCheck;
import kerfbook.exposure.UnitRateCache;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Sum;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Matter;

/** Dose rates round the mean loaded package of each component, and what handling it takes. */
final class PackageDoses {
    private static final double MM3_PER_M3 = 1e9;

    private final Optional<UnitRateCache> units;
    private final Optional<Basis.Transport> transport;
    private final Map<String, Sum> handlingHours = new HashMap<>();

    /** @param tasks of the forecast, for the hours that people spend beside packages */
    PackageDoses(Basis basis, List<Forecast.Task> tasks) {
        units = basis.units();
        transport = basis.transport();
        for (Forecast.Task task : tasks) {
            task.component().ifPresent(component -> task.steps().stream().filter(step -> step.driver() == Driver.PACKAGE).flatMap(step -> step.lines().stream())
                .forEach(line -> handlingHours.computeIfAbsent(component, none -> new Sum()).add(line.fieldHours())));
        }
    }

    static double volumeM3(PackageType type) {
        return type.innerLengthMm() * type.innerWidthMm() * type.innerHeightMm() / MM3_PER_M3;
    }

    /** Why it cannot be worked out, if it cannot. */
    Optional<String> whyNot(Component component, Optional<PackageType> type, double metalShare, boolean active) {
        if (type.isEmpty()) {
            return Optional.of("the component names no kind of package");
        } else if (!active) {
            return Optional.of("its activity is not known");
        } else if (units.isEmpty() || transport.isEmpty() || transport.get().limits().isEmpty()) {
            return Optional.of("the tables for it are not at hand");
        } else if (!units.get().data().materialNames().contains(component.material())) {
            return Optional.of("the material " + component.material() + " is not in the table of materials");
        } else if (metalShare > 1) {
            return Optional.of("the metal has " + Findings.number(metalShare) + " times the room inside");
        }
        return metalShare > 0 ? Optional.empty() : Optional.of("nothing is left to be packed");
    }

    /** @param metalShare metal over the room inside, above 0 and at most 1 */
    PackageForecast.Around around(Component component, PackageType type, double metalShare, List<PackageForecast.Nuclide> nuclides, LocalDate on) {
        UnitRateCache known = units.orElseThrow();
        double tableDensity = 1000 * known.data().material(component.material(), "material").densityGPerCm3();
        Map<String, Double> becquerels = new TreeMap<>();
        nuclides.forEach(each -> becquerels.put(each.nuclide(), each.becquerel()));
        PackageRates.Inside inside = new PackageRates.Inside(Optional.empty(), Optional.of(type.innerLengthMm()), Optional.of(type.innerWidthMm()), type.innerHeightMm());
        List<PackageRates.Wall> walls = type.wallMm() > 0 ? List.of(new PackageRates.Wall(type.wallMaterial(), type.wallMm())) : List.of();
        PlacedSource loaded = PackageRates.loaded(component.code(), new Matter(component.material(), metalShare * component.densityKgPerM3() / tableDensity),
            known.data(), inside, walls, Inventory.of(becquerels), on);
        List<PackageRates.At> points = PackageRates.around(new PointRates(known), loaded, inside, walls, on);
        TransportCheck.Rates rates = PackageRates.highest(points, Optional.empty());
        TransportCheck check = TransportCheck.of(transport.orElseThrow().limits(), rates);
        double hours = handlingHours.containsKey(component.code()) ? handlingHours.get(component.code()).value() / component.packages() : 0;
        return new PackageForecast.Around(rates.surface(), rates.oneMetre(), rates.twoMetres(), check.transportIndex(), check.label(), check.handling(), check.binds(),
            check.nonExclusive(), check.exclusive(), points.stream().anyMatch(PackageRates.At::extrapolated), hours, hours * rates.oneMetre());
    }

    /** A figure that no limit is made for is refused where it comes from. */
    static Invalid tooMuch(int component, Invalid invalid) {
        return new Invalid("components[" + component + "].inventory", "makes a dose rate round its package that cannot be right: " + invalid.faults().get(0).detail());
    }
}
