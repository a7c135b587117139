package kerfbook.campaign;

import kerfbook.quantity.Require;

/** A number of equal cuts through one thickness of a component. */
public record Cut(String code, String component, String name, String technique, int count, double lengthMm, double thicknessMm) {
    public Cut {
        Require.code(code, "code");
        Require.code(component, "component");
        Require.name(name, "name");
        Require.code(technique, "technique");
        Require.within(count, 1, 100_000, "count");
        Require.positive(lengthMm, 1e6, "length_mm", "mm");
        Require.positive(thicknessMm, 5_000, "thickness_mm", "mm");
    }
}
