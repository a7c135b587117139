package kerfbook.cutting;

import java.util.Optional;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * A material as the handbook knows it.
 *
 * @param machinability for abrasive jets, where a number is held
 */
public record CutMaterial(String code, String name, MaterialClass materialClass, double densityKgPerM3, Origin densityOrigin,
                          Optional<Machinability> machinability) {
    public CutMaterial {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.present(materialClass, "material_class");
        Require.within(densityKgPerM3, 100, 25_000, "density_kg_per_m3", "kg/m³");
        Require.present(densityOrigin, "density_origin");
        machinability = Require.optional(machinability);
    }
}
