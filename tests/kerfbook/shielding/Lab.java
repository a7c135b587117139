package kerfbook.shielding;

import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.tables.Nuclides;
import kerfbook.tables.PhotonTables;

/** What the tests of this package share: the real tables, single lines as made-up nuclides, layers of a stated optical depth. */
final class Lab {
    static final PhotonData DATA = PhotonTables.read();
    static final Map<String, Nuclide> NUCLIDES = Nuclides.read();
    static final PointKernel KERNEL = new PointKernel(DATA, NUCLIDES);

    private Lab() { }

    /** One photon of this energy per decay, named "line". */
    static PointKernel line(double energyMev) {
        return new PointKernel(DATA, Map.of("line", new Nuclide("line", 1, List.of(new PhotonLine(energyMev, 1)))));
    }

    static Inventory bq(String nuclide, double bq) {
        return Inventory.of(Map.of(nuclide, bq));
    }

    static Inventory bq(Map<String, Double> bq) {
        return new Inventory(new TreeMap<>(bq));
    }

    /** The material thinned or packed until its attenuation at this energy is {@code perMm}. */
    static Matter matter(String material, double energyMev, double perMm) {
        return new Matter(material, perMm / perMm(material, energyMev));
    }

    static double perMm(String material, double energyMev) {
        Material m = DATA.material(material, "material");
        return DATA.attenuationPerMm(m, m.densityGPerCm3(), energyMev);
    }

    /** H*(10) rate, µSv/h, to fluence rate, 1/(cm² s). */
    static double fluenceRate(double usvPerH, double energyMev) {
        return usvPerH / 3600 * 1e6 / DATA.perFluence(DoseQuantity.AMBIENT_DOSE_EQUIVALENT, energyMev);
    }

    static Source bare(Shape shape) {
        return new Source(shape, new Position(0, 0, 0));
    }

    static Source lying(Shape shape, Axis axis) {
        return new Source(shape, new Position(0, 0, 0), axis, Optional.empty(), List.of());
    }

    static DoseRateAnswer tight(PointKernel kernel, Source source, List<Layer> layers, Position detector, double tolerance) {
        return kernel.rate(source, layers, detector, kernelInventory(), DoseQuantity.AMBIENT_DOSE_EQUIVALENT, tolerance);
    }

    private static Inventory kernelInventory() {
        return bq("line", 1);
    }
}
