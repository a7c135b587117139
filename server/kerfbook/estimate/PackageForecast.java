package kerfbook.estimate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.exposure.TransportCheck;
import kerfbook.waste.SpecificActivity;

/**
 * The mean package of a component: its pieces shared evenly over its packages, on the day they are packed. The kerf is not in them.
 *
 * @param contentKg left out where more kerf is cut than there is mass
 * @param loadedKg content and packaging
 * @param fillByMass content over the payload of its kind of package; above 1 it is too heavy
 * @param fillByVolume metal over the room inside; above 1 it does not go in
 * @param a2PerG    mean specific activity, the packaging left out
 * @param lsa       class by specific activity alone
 * @param whyNot    why there is no activity, or no sum of A2
 * @param around    dose rates round it
 * @param whyNoRates why there are none
 */
public record PackageForecast(String component, int packages, Optional<Double> contentKg, Optional<String> packageType,
                              Optional<Double> loadedKg, Optional<Double> fillByMass, Optional<Double> fillByVolume, Optional<LocalDate> on,
                              Optional<Double> becquerel, Optional<Double> numberOfA2, Optional<Double> a2PerG, Optional<SpecificActivity.Kind> lsa,
                              Optional<Boolean> typeA, List<Nuclide> nuclides, Optional<String> whyNot, Optional<Around> around, Optional<String> whyNoRates) {

    /** One nuclide in the mean package. */
    public record Nuclide(String nuclide, double becquerel) { }

    /**
     * Calculated with the content spread evenly over the inside; walls as the kind of package says, air around. Highest over its faces.
     *
     * @param handlingHours hours of people inside areas that steps counted by packages take, for one package
     * @param handlingUsv   what they would take from this package alone, standing 1 m from it all the while; in no total of the forecast, whose
     *                      lines rest on the rates of the areas
     * @param binds         the transport limit whose figure takes the largest part of it
     * @param nonExclusive  whether the limits of non-exclusive use are kept
     * @param exclusive     whether those of exclusive use that can be told from the package alone are
     */
    public record Around(double surfaceUsvPerH, double oneMetreUsvPerH, double twoMetresUsvPerH, double transportIndex, String label,
                         TransportCheck.Handling handling, TransportCheck.Binding binds, boolean nonExclusive, boolean exclusive, boolean extrapolated,
                         double handlingHours, double handlingUsv) { }
}
