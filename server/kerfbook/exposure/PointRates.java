package kerfbook.exposure;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import kerfbook.quantity.Invalid;
import kerfbook.shielding.DoseRateAnswer;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Position;

/** What sources give at a point on a day: unit rates, integrated once, times activities of the day. */
public final class PointRates {
    private final UnitRateCache units;

    public PointRates(UnitRateCache units) {
        this.units = units;
    }

    /**
     * Each source's part.
     *
     * @param factors by source; 1 where there is none
     */
    public CalculatedRate at(Position point, Situation situation, Map<String, Double> factors) {
        List<RatePart> parts = new ArrayList<>();
        for (PlacedSource source : situation.sources()) {
            parts.add(part(source, situation.layers(), point, situation.on(), factors.getOrDefault(source.code(), 1.0)));
        }
        return CalculatedRate.of(parts);
    }

    /** One source's part. */
    public RatePart part(PlacedSource source, List<Layer> layers, Position point, LocalDate on, double factor) {
        UnitPart unit = unit(source, layers, point);
        UnitPart.Rate reference = unit.on(source.inventory(), source.referenceOn(), source.referenceOn());
        UnitPart.Rate now = unit.on(source.inventory(), source.referenceOn(), on);
        return new RatePart(source.code(), source.state(), source.referenceOn(), reference.usvPerH(),
            reference.usvPerH() > 0 ? now.usvPerH() / reference.usvPerH() : 1, factor, factor * now.usvPerH(), now.meanFreePaths(),
            now.extrapolatedShare() > CalculatedRate.MARKED_ABOVE, now.relativeError());
    }

    /** One source's answer with its lines, factor 1. */
    public DoseRateAnswer answer(PlacedSource source, List<Layer> layers, Position point, LocalDate on) {
        long days = ChronoUnit.DAYS.between(source.referenceOn(), on);
        return unit(source, layers, point).rates().answer(units.after(source.inventory(), days));
    }

    private UnitPart unit(PlacedSource source, List<Layer> layers, Position point) {
        try {
            return units.of(source.geometry(), layers, point, source.inventory().becquerels().keySet());
        } catch (Invalid e) {
            if (e.faults().get(0).field().equals("detector")) {
                throw new Invalid("point", "lies inside " + source.code() + " (" + source.state() + ") or closer than 1 mm. Move it outside.");
            }
            throw e;
        }
    }
}
