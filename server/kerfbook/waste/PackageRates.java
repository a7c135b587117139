package kerfbook.waste;

import java.util.Optional;
import kerfbook.quantity.Require;

/** Highest dose rates round one loaded package, µSv/h; empty is not known, which is not 0. */
@SuppressWarnings("OptionalUsedAsFieldOrParameterType")
public record PackageRates(Optional<Double> surface, Optional<Double> oneMetre, Optional<Double> twoMetres, Optional<Double> unshieldedThreeMetres) {
    public PackageRates {
        surface = checked(surface, "surface");
        oneMetre = checked(oneMetre, "one_metre");
        twoMetres = checked(twoMetres, "two_metres");
        unshieldedThreeMetres = checked(unshieldedThreeMetres, "unshielded_three_metres");
    }

    private static Optional<Double> checked(Optional<Double> rate, String field) {
        Optional<Double> given = Require.optional(rate);
        given.ifPresent(value -> Require.within(value, 0, 1e15, field, "µSv/h"));
        return given;
    }
}
