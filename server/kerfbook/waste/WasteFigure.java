package kerfbook.waste;

import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * A planning figure of the waste table, with where it comes from.
 *
 * @param unit  of the value
 * @param what  in a sentence
 */
public record WasteFigure(String code, Likely value, String unit, String what, Origin origin) {
    public WasteFigure {
        Require.code(code, "code");
        Require.present(value, "value");
        Require.name(unit, "unit");
        Require.name(what, "what");
        Require.present(origin, "origin");
    }
}
