package kerfbook.cutting;

import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;

/** Jets for tests. */
final class Jets {
    static final Origin GIVEN = new Origin("made for a test", Origin.Status.INVENTED);
    static final Machinability STAINLESS = new Machinability("stainless-304", Likely.exactly(81.9), GIVEN);

    private Jets() { }

    /** 304, separation 1, no submergence, no hose, no piercing: the bare equation. */
    static Jet bare(double mpa, double orificeMm, double kgPerMin) {
        return new Jet(Jet.Kind.ENTRAINMENT, mpa, orificeMm, Optional.of(3 * orificeMm), kgPerMin, Likely.exactly(1), Optional.empty(),
            new Likely(0.6, 0.7, 0.8), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), List.of(STAINLESS));
    }

    /** As planned for work under water. */
    static Jet planned(double mpa, double orificeMm, double kgPerMin, Hose hose) {
        return new Jet(Jet.Kind.ENTRAINMENT, mpa, orificeMm, Optional.of(3 * orificeMm), kgPerMin, new Likely(1, 1.3, 2),
            Optional.of(new Likely(0.7, 0.9, 1)), new Likely(0.6, 0.7, 0.8), Optional.ofNullable(hose), Optional.of(new Likely(3, 6, 12)), Optional.empty(),
            Optional.of(new Likely(20, 50, 100)), List.of(STAINLESS));
    }

    static Jet suspension(double mpa, double boreMm, double kgPerMin) {
        return new Jet(Jet.Kind.SUSPENSION, mpa, boreMm, Optional.empty(), kgPerMin, Likely.exactly(1), Optional.empty(), Likely.exactly(0.7),
            Optional.empty(), Optional.empty(), Optional.of(new Likely(1.3, 2, 3)), Optional.empty(), List.of(STAINLESS));
    }

    static Technique technique(Speed speed, double maxThicknessMm) {
        return technique(speed, maxThicknessMm, Wear.unknown());
    }

    static Technique technique(Speed speed, double maxThicknessMm, Wear wear) {
        return new Technique("t", "Test tool", Medium.EITHER, List.of(), 0, maxThicknessMm, Optional.empty(), List.of(), new Likely(1, 1.3, 2), wear, "",
            GIVEN, Optional.of(GivenSpeed.of(speed)), Optional.empty());
    }
}
