package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;
import kerfbook.shielding.Layer;

/** Which sources stand on a day, and what lies around them. */
public record Situation(LocalDate on, List<PlacedSource> sources, List<Layer> layers) {
    public Situation {
        sources = List.copyOf(sources);
        layers = List.copyOf(layers);
    }

    /** The same on another day: nothing moves, everything decays. */
    public Situation on(LocalDate day) {
        return new Situation(day, sources, layers);
    }

    public Situation without(Predicate<PlacedSource> gone) {
        return new Situation(on, sources.stream().filter(gone.negate()).toList(), layers);
    }

    public Situation with(PlacedSource more) {
        List<PlacedSource> all = new ArrayList<>(sources);
        all.add(more);
        return new Situation(on, all, layers);
    }

    public Situation around(List<Layer> others) {
        return new Situation(on, sources, others);
    }
}
