package kerfbook.waste;

import java.util.List;
import java.util.Optional;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Container;
import kerfbook.quantity.Require;
import kerfbook.shielding.Axis;
import kerfbook.shielding.DoseQuantity;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Matter;
import kerfbook.shielding.PointKernel;
import kerfbook.shielding.Position;
import kerfbook.shielding.Shape;
import kerfbook.shielding.Shell;
import kerfbook.shielding.Source;

/**
 * A package with its walls as a source of gamma rays: the content is spread evenly through the inner box, with the density that gives its mass, and
 * takes its own part of the rays. Pieces that lie against one wall, or the hottest of them on top, can give several times more there.
 *
 * @param content     name of the content's material
 * @param gPerCm3     density of that material as a solid
 * @param walls       from the inside out, possibly none
 */
public record LoadedPackage(Container container, String content, double gPerCm3, List<Shell> walls) {
    /** Numerical error that is enough beside the even spread of the content. */
    private static final double TOLERANCE = 0.02;
    /** Where the surface rate is taken: middle of a detector laid against the wall. */
    private static final double AT_SURFACE_MM = 10;

    public LoadedPackage {
        Require.present(container, "container");
        Require.name(content, "content");
        Require.within(gPerCm3, 0.1, 25, "density_g_per_cm3", "g/cm³");
        walls = Require.list(walls, "walls");
    }

    /** Surface rate alone, µSv/h: what a ceiling on loaded packages asks for. */
    public double surfaceUsvPerH(PointKernel kernel, double massKg, Inventory inventory) {
        return highestUsvPerH(kernel, massKg, inventory, AT_SURFACE_MM);
    }

    /** The same, ready for packing. */
    public ToDoubleFunction<Content> surface(PointKernel kernel) {
        return content -> surfaceUsvPerH(kernel, content.massKg(), Inventory.of(content.becquerels()));
    }

    /** Highest of the rates over the middles of the three different sides, so far from the walls, µSv/h. */
    public double highestUsvPerH(PointKernel kernel, double massKg, Inventory inventory, double distanceMm) {
        Require.positive(massKg, 1e6, "mass_kg", "kg");
        double filling = massKg / (container.innerVolumeM3() * gPerCm3 * 1000);
        double length = container.innerLengthMm();
        double width = container.innerWidthMm();
        double height = container.innerHeightMm();
        double out = distanceMm + walls.stream().mapToDouble(Shell::thicknessMm).sum();
        Source source = new Source(new Shape.Box(length, width, height), new Position(0, 0, 0), Axis.Z, Optional.of(new Matter(content, filling)), walls);
        double highest = 0;
        for (Position at : List.of(new Position(length / 2 + out, 0, 0), new Position(0, width / 2 + out, 0), new Position(0, 0, height / 2 + out))) {
            highest = Math.max(highest, kernel.rate(source, List.of(), at, inventory, DoseQuantity.AMBIENT_DOSE_EQUIVALENT, TOLERANCE).rateUsvPerH());
        }
        return highest;
    }
}
