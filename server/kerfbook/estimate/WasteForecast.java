package kerfbook.estimate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/**
 * What cutting leaves behind, component by component. Kerf as likely; tools, filters, drums and abrasive are expected numbers and need not be
 * whole. What is not known is left out and named, never 0.
 */
public record WasteForecast(List<OfComponent> components, Totals totals) {

    /**
     * {@code mass = pieces + kerf}; {@code kerf = chips + fines + airborne}.
     *
     * @param piecesKg      left out where more kerf is cut than there is mass
     * @param chipsKg       kerf that falls; with fines and airborne part only where the releases of all its techniques are given
     * @param spentSolidsKg kerf and abrasive, as far as known
     * @param activity      on the day it is packed, taken as spread evenly through the component
     * @param notKnown      what is left out, with the reason
     * @param assumed       what rests on a recollection, a judgement or an invention
     */
    public record OfComponent(String component, double metresCut, double massKg, double kerfKg, Optional<Double> piecesKg, Optional<Double> chipsKg,
                              Optional<Double> finesKg, Optional<Double> airborneKg, Optional<Double> abrasiveKg, Optional<Double> coarseAbrasiveKg,
                              Optional<Double> slowAbrasiveKg, double spentSolidsKg, Optional<Double> tools, Optional<Double> filters,
                              Optional<Double> drums, int packages, Optional<Activity> activity, List<String> notKnown, List<String> assumed) { }

    /** Where the activity goes: {@code becquerel = pieces + kerf}. */
    public record Activity(LocalDate on, double becquerel, double piecesBecquerel, double kerfBecquerel, List<Part> nuclides) { }

    /** One nuclide, Bq. */
    public record Part(String nuclide, double becquerel, double pieces, double kerf) { }

    /** Sums of what is known. @param incomplete components of which something is not known */
    public record Totals(double metresCut, double massKg, double kerfKg, Optional<Double> piecesKg, Optional<Double> chipsKg, Optional<Double> finesKg,
                         Optional<Double> airborneKg, Optional<Double> abrasiveKg, Optional<Double> coarseAbrasiveKg, Optional<Double> slowAbrasiveKg,
                         double spentSolidsKg, Optional<Double> tools, Optional<Double> filters, Optional<Double> drums, int packages,
                         List<String> incomplete) { }
}
