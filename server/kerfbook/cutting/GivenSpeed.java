package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** A speed that is neither an area rate nor a table: exactly one of these. */
public record GivenSpeed(Optional<Jet> jet, Optional<Travel> travel, Optional<Strokes> strokes, Optional<StitchDrilling> drilling,
                         Optional<TrialCurve> trials) {
    public GivenSpeed {
        jet = Require.optional(jet);
        travel = Require.optional(travel);
        strokes = Require.optional(strokes);
        drilling = Require.optional(drilling);
        trials = Require.optional(trials);
        if (all(jet, travel, strokes, drilling, trials).size() != 1) {
            throw new Invalid("", "Give exactly one of jet, travel, strokes, drilling and trials.");
        }
    }

    /** Any speed of these five kinds. */
    public static GivenSpeed of(Speed speed) {
        return new GivenSpeed(only(speed, Jet.class), only(speed, Travel.class), only(speed, Strokes.class), only(speed, StitchDrilling.class),
            only(speed, TrialCurve.class));
    }

    /** The one that is given. */
    public Speed given() {
        return all(jet, travel, strokes, drilling, trials).get(0);
    }

    private static <T extends Speed> Optional<T> only(Speed speed, Class<T> kind) {
        return Optional.of(speed).filter(kind::isInstance).map(kind::cast);
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static List<Speed> all(Optional<Jet> jet, Optional<Travel> travel, Optional<Strokes> strokes, Optional<StitchDrilling> drilling,
                                   Optional<TrialCurve> trials) {
        return Stream.<Optional<? extends Speed>>of(jet, travel, strokes, drilling, trials).filter(Optional::isPresent).<Speed>map(Optional::get).toList();
    }
}
