package kerfbook.campaign;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * Something that irradiates work areas.
 *
 * @param component the component it belongs to; it then ends when that component is packed
 * @param endsOn    the day it is gone, for a source without a component; left out: it stays
 * @param nuclides  what share of its dose rate each nuclide made on {@code sharesOn}; empty: it does not decay
 */
public record Source(String code, String name, Optional<String> component, Optional<LocalDate> endsOn, List<NuclideShare> nuclides,
                     Optional<LocalDate> sharesOn) {

    /** A nuclide's share of the dose rate, 0 to 1. */
    public record NuclideShare(String nuclide, double doseShare) {
        public NuclideShare {
            Require.name(nuclide, "nuclide");
            Require.positive(doseShare, 1, "dose_share", "");
        }
    }

    private static final double SHARES_ADD_UP_WITHIN = 1e-6;

    public Source {
        Require.code(code, "code");
        Require.name(name, "name");
        component = Require.optional(component);
        endsOn = Require.optional(endsOn);
        endsOn.ifPresent(day -> Require.day(day, "ends_on"));
        if (component.isPresent() && endsOn.isPresent()) {
            throw new Invalid("ends_on", "is given beside a component. A component's source ends when the component is packed.");
        }
        nuclides = Require.list(nuclides, "nuclides");
        Require.distinct(nuclides.stream().map(NuclideShare::nuclide).toList(), "nuclides");
        sharesOn = Require.optional(sharesOn);
        sharesOn.ifPresent(day -> Require.day(day, "shares_on"));
        if (nuclides.isEmpty() == sharesOn.isPresent()) {
            throw new Invalid("shares_on", "goes with nuclides: give both or neither.");
        }
        double sum = nuclides.stream().mapToDouble(NuclideShare::doseShare).sum();
        if (!nuclides.isEmpty() && !(Math.abs(sum - 1) <= SHARES_ADD_UP_WITHIN)) {
            throw new Invalid("nuclides", "must have dose shares that add up to 1, not " + sum + ".");
        }
    }
}
