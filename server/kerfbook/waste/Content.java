package kerfbook.waste;

import java.util.SortedMap;

/** What lies in one package. */
public record Content(double massKg, SortedMap<String, Double> becquerels) {
    public Content {
        becquerels = CutSolids.checked(becquerels);
    }
}
