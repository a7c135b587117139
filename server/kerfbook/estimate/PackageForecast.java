package kerfbook.estimate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.waste.SpecificActivity;

/**
 * The mean package of a component: its pieces shared evenly over its packages, on the day they are packed. The kerf is not in them.
 *
 * @param contentKg left out where more kerf is cut than there is mass
 * @param loadedKg content and packaging
 * @param fillByMass content over the payload of its kind of package; above 1 it is too heavy
 * @param a2PerG    mean specific activity, the packaging left out
 * @param lsa       class by specific activity alone
 * @param whyNot    why there is no activity, or no sum of A2
 */
public record PackageForecast(String component, int packages, Optional<Double> contentKg, Optional<String> packageType,
                              Optional<Double> loadedKg, Optional<Double> fillByMass, Optional<LocalDate> on, Optional<Double> becquerel,
                              Optional<Double> numberOfA2, Optional<Double> a2PerG, Optional<SpecificActivity.Kind> lsa, Optional<Boolean> typeA,
                              List<Nuclide> nuclides, Optional<String> whyNot) {

    /** One nuclide in the mean package. */
    public record Nuclide(String nuclide, double becquerel) { }
}
