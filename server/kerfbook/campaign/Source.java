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
 * @param body      what it looks like, where it stands and what it holds, for dose rates that are calculated; a component has all
 *                  this itself
 * @param nuclides  what share of its dose rate each nuclide made on {@code sharesOn}; empty: it does not decay
 */
public record Source(String code, String name, Optional<String> component, Optional<LocalDate> endsOn, Optional<Body> body,
                     List<NuclideShare> nuclides, Optional<LocalDate> sharesOn) {

    /**
     * A filter, a drum, a package, the water of the pool: a source that is no component.
     *
     * @param material a name of the table of materials
     * @param middle   where its middle is
     */
    public record Body(Shape shape, Optional<Posture> posture, String material, double densityKgPerM3, Area.Place middle, Inventory inventory) {
        public Body {
            Require.present(shape, "shape");
            posture = Require.optional(posture);
            Require.name(material, "material");
            Require.within(densityKgPerM3, 0.5, 25_000, "density_kg_per_m3", "kg/m³");
            Require.present(middle, "middle");
            Require.present(inventory, "inventory");
        }

        Body part(double share) {
            return new Body(shape, posture, material, densityKgPerM3, middle, new Inventory(inventory.referenceOn(), inventory.activities().stream()
                .map(each -> new Inventory.Activity(each.nuclide(), each.becquerel() * share)).toList(), inventory.origin()));
        }
    }


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
        body = Require.optional(body);
        if (component.isPresent() && body.isPresent()) {
            throw new Invalid("body", "is given beside a component. A component brings its own shape, place and inventory.");
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

    /** Without a body: known from surveys alone. */
    public Source(String code, String name, Optional<String> component, Optional<LocalDate> endsOn, List<NuclideShare> nuclides,
                  Optional<LocalDate> sharesOn) {
        this(code, name, component, endsOn, Optional.empty(), nuclides, sharesOn);
    }

    public boolean standsOn(LocalDate day) {
        return endsOn.isEmpty() || day.isBefore(endsOn.get());
    }

    /** The same, gone on another day. */
    public Source ending(LocalDate day) {
        return new Source(code, name, Optional.empty(), Optional.of(day), body, nuclides, sharesOn);
    }

    /** A part of it: its activity times this, above 0. What is known from surveys alone has its part in their shares. */
    public Source part(double share) {
        return new Source(code, name, component, endsOn, body.map(whole -> whole.part(share)), nuclides, sharesOn);
    }

    /** The same under another name, gone on this day. */
    public Source as(String otherCode, String otherName, LocalDate day) {
        return new Source(otherCode, otherName, Optional.empty(), Optional.of(day), body, nuclides, sharesOn);
    }
}
