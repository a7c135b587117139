package kerfbook.campaign;

import kerfbook.quantity.Require;

/**
 * A kind of package that pieces are put into: basket, box, drum liner. One of its inner sides is given as upright, but pieces may lie any way.
 *
 * @param innerLengthMm clear length inside
 * @param innerWidthMm  clear width inside
 * @param innerHeightMm clear height inside
 * @param payloadKg     heaviest content
 * @param emptyKg       mass of the package itself, which the hoist lifts too
 */
public record Container(String code, String name, double innerLengthMm, double innerWidthMm, double innerHeightMm, double payloadKg,
                        double emptyKg) {
    private static final double MM3_PER_M3 = 1e9;

    public Container {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.positive(innerLengthMm, 50_000, "inner_length_mm", "mm");
        Require.positive(innerWidthMm, 50_000, "inner_width_mm", "mm");
        Require.positive(innerHeightMm, 50_000, "inner_height_mm", "mm");
        Require.positive(payloadKg, 1e6, "payload_kg", "kg");
        Require.within(emptyKg, 0, 1e6, "empty_kg", "kg");
    }

    /** Clear volume inside: length · width · height. */
    public double innerVolumeM3() {
        return innerLengthMm * innerWidthMm * innerHeightMm / MM3_PER_M3;
    }
}
