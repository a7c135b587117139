package kerfbook.cutting;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/** How easily an abrasive jet parts a material: the number of the speed equation, higher is faster. */
public record Machinability(String material, Likely number, Origin origin) {
    public Machinability {
        Require.name(material, "material");
        Require.present(number, "number").requirePositive("number").requireAtMost(10_000, "number", "");
        Require.present(origin, "origin");
    }
}
