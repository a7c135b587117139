package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Require;

/**
 * A thing to be taken apart.
 *
 * @param massKg     as weighed or drawn; checked against volume · density
 * @param topDepthMm its top in place under the pool's normal water surface
 * @param place      where its middle stands, seen from above; with an inventory it makes the component a calculated source
 * @param posture    left out: plates and grids lie flat, all else stands upright
 * @param pieces     number of pieces it is cut into
 * @param packages   number of packages the pieces fill
 * @param packageType code of the kind of package they go into
 * @param routines   codes of its routines, in the order in which they follow one another
 * @param after      codes of components that are finished first
 */
public record Component(String code, String name, Shape shape, String material, double densityKgPerM3, double massKg,
                        double topDepthMm, Optional<Spot> place, Optional<Posture> posture, int pieces, int packages,
                        Optional<String> packageType, Optional<Inventory> inventory, List<String> routines, List<String> after, String note) {
    private static final double MM_PER_M = 1_000;

    public Component {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(shape, "shape");
        Require.name(material, "material");
        Require.within(densityKgPerM3, 100, 25_000, "density_kg_per_m3", "kg/m³");
        Require.positive(massKg, 1e7, "mass_kg", "kg");
        Require.within(topDepthMm, 0, 50_000, "top_depth_mm", "mm");
        place = Require.optional(place);
        posture = Require.optional(posture);
        Require.within(pieces, 1, 100_000, "pieces");
        Require.within(packages, 1, 100_000, "packages");
        packageType = Require.optional(packageType);
        inventory = Require.optional(inventory);
        routines = Require.distinct(Require.atLeastOne(routines, "routines"), "routines");
        after = Require.distinct(Require.list(after, "after"), "after");
        Require.text(note, "note");
    }

    /** Without place, posture and kind of package. */
    public Component(String code, String name, Shape shape, String material, double densityKgPerM3, double massKg, double topDepthMm,
                     int pieces, int packages, Optional<Inventory> inventory, List<String> routines, List<String> after, String note) {
        this(code, name, shape, material, densityKgPerM3, massKg, topDepthMm, Optional.empty(), Optional.empty(), pieces, packages, Optional.empty(), inventory,
            routines, after, note);
    }

    /** Why a technique cannot make a cut of it where it stands, if it cannot: under water, what works only in air, or not so deep, cannot. */
    public Optional<String> whyNot(Technique technique, double thicknessMm) {
        boolean wet = topDepthMm > 0;
        return technique.whyNot(material, thicknessMm, wet ? Medium.WATER : Medium.EITHER, wet ? Optional.of(topDepthMm / MM_PER_M) : Optional.empty());
    }

    /** The same, divided so. */
    public Component divided(int intoPieces, int intoPackages, String ofType) {
        return new Component(code, name, shape, material, densityKgPerM3, massKg, topDepthMm, place, posture, intoPieces, intoPackages, Optional.of(ofType),
            inventory, routines, after, note);
    }

    /** The same, waiting for these. */
    public Component following(List<String> others) {
        return new Component(code, name, shape, material, densityKgPerM3, massKg, topDepthMm, place, posture, pieces, packages, packageType, inventory,
            routines, others, note);
    }

    /** The same, taken through other routines. */
    public Component through(List<String> others) {
        return new Component(code, name, shape, material, densityKgPerM3, massKg, topDepthMm, place, posture, pieces, packages, packageType, inventory,
            others, after, note);
    }

    /** Whether dose rates around it can be calculated. */
    public boolean calculable() {
        return place.isPresent() && inventory.isPresent();
    }

    /** Mass from the drawing: volume · density, in kg. */
    public double drawnMassKg() {
        return shape.volumeM3() * densityKgPerM3;
    }
}
