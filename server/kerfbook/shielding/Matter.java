package kerfbook.shielding;

import kerfbook.quantity.Require;

/**
 * A material as it fills a space.
 *
 * @param material a name of the table of materials
 * @param filling  density here over the material's own density: 1 for a solid part, less for a perforated plate or a
 *                 bundle spread evenly over its outline
 */
public record Matter(String material, double filling) {
    public Matter {
        Require.code(material, "material");
        Require.positive(filling, 3, "filling", "");
    }

    public static Matter solid(String material) {
        return new Matter(material, 1);
    }
}
