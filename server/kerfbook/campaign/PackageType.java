package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Require;

/**
 * A kind of package that pieces are put into: basket, box, drum.
 *
 * @param innerLengthMm clear length inside
 * @param innerWidthMm  clear width inside
 * @param innerHeightMm clear height inside
 * @param payloadKg     heaviest content
 * @param emptyKg       mass of the package itself
 * @param wallMm        thickness of its wall, 0 for an open basket
 * @param wallMaterial  what the wall is made of, by its name in the tables
 * @param surfaceUsvPerH highest dose rate allowed at the surface of a loaded package; left out: none is set
 */
public record PackageType(String code, String name, double innerLengthMm, double innerWidthMm, double innerHeightMm, double payloadKg,
                          double emptyKg, double wallMm, String wallMaterial, Optional<Double> surfaceUsvPerH, String note) {
    public PackageType {
        new Container(code, name, innerLengthMm, innerWidthMm, innerHeightMm, payloadKg, emptyKg);
        Require.within(wallMm, 0, 2_000, "wall_mm", "mm");
        Require.name(wallMaterial, "wall_material");
        surfaceUsvPerH = Require.optional(surfaceUsvPerH);
        surfaceUsvPerH.ifPresent(rate -> Require.positive(rate, Area.HIGHEST_RATE, "surface_usv_per_h", "µSv/h"));
        Require.text(note, "note");
    }

    /** Its room and what it carries. */
    public Container container() {
        return new Container(code, name, innerLengthMm, innerWidthMm, innerHeightMm, payloadKg, emptyKg);
    }
}
