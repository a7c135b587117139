package kerfbook.exposure;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.campaign.Area;
import kerfbook.campaign.Posture;
import kerfbook.campaign.Shape;
import kerfbook.campaign.Shield;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.shielding.DoseRateAnswer;
import kerfbook.shielding.Inventory;
import kerfbook.shielding.Layer;
import kerfbook.shielding.LineShare;
import kerfbook.shielding.Source;

/** The rate that one source gives behind layers at a point on a day. */
public final class DoseRate {
    private static final int MOST_LAYERS = 50;

    /**
     * @param shape    left out: a point
     * @param material what fills the shape; not with a point
     */
    public record Emitter(Optional<Shape> shape, Optional<Posture> posture, Optional<String> material, Optional<Double> densityKgPerM3, Area.Place middle,
                          LocalDate referenceOn, List<kerfbook.campaign.Inventory.Activity> activities) {
        public Emitter {
            shape = Require.optional(shape);
            posture = Require.optional(posture);
            material = Require.optional(material);
            densityKgPerM3 = Require.optional(densityKgPerM3);
            material.ifPresent(name -> Require.code(name, "material"));
            densityKgPerM3.ifPresent(density -> Require.within(density, 0.5, 25_000, "density_kg_per_m3", "kg/m³"));
            if (shape.isPresent() != material.isPresent()) {
                throw new Invalid("material", shape.isPresent() ? "is missing: say what the shape is filled with." : "does not go with a point. Give a shape too.");
            }
            if (shape.isPresent() != densityKgPerM3.isPresent()) {
                throw new Invalid("density_kg_per_m3", shape.isPresent() ? "is missing." : "does not go with a point. Give a shape too.");
            }
            if (posture.isPresent() && shape.isEmpty()) {
                throw new Invalid("posture", "does not go with a point. Give a shape too.");
            }
            Require.present(middle, "middle");
            Require.day(referenceOn, "reference_on");
            activities = Require.atLeastOne(activities, "activities");
            Require.distinct(activities.stream().map(kerfbook.campaign.Inventory.Activity::nuclide).toList(), "activities");
        }
    }

    /** Matter between planes; a direction that is left out is endless; of overlapping layers the later counts. */
    public record Slab(String material, Optional<Shield.Span> right, Optional<Shield.Span> across, Optional<Shield.Span> up) {
        public Slab {
            Require.code(material, "material");
            right = Require.optional(right);
            across = Require.optional(across);
            up = Require.optional(up);
        }
    }

    /** @param on left out: the reference day */
    public record Question(Emitter source, List<Slab> layers, Area.Place point, Optional<LocalDate> on) {
        public Question {
            Require.present(source, "source");
            layers = Require.list(layers, "layers");
            if (layers.size() > MOST_LAYERS) {
                throw new Invalid("layers", "are " + layers.size() + "; at most " + MOST_LAYERS + " are taken.");
            }
            Require.present(point, "point");
            on = Require.optional(on);
            on.ifPresent(day -> Require.day(day, "on"));
        }
    }

    /** What one photon line gives. */
    public record Line(String nuclide, double energyMev, double usvPerH, double unscatteredUsvPerH, double share, double meanFreePaths, String buildupMedium,
                       boolean extrapolated) {
        static Line of(LineShare line) {
            return new Line(line.nuclide(), line.energyMev(), line.rate(), line.unscatteredRate(), line.share(), line.meanFreePaths(), line.buildupMedium(),
                line.extrapolated());
        }
    }

    /** What is left of a nuclide on the day. */
    public record Left(String nuclide, double becquerel) { }

    /**
     * @param usvPerH            H*(10)
     * @param unscatteredUsvPerH part of it that arrives without a collision
     * @param numericalError     of the integration, over the rate; the method's own error is in the notes
     * @param extrapolated       good to an order of magnitude at most
     */
    public record Answer(LocalDate on, double usvPerH, double unscatteredUsvPerH, double numericalError, double meanFreePaths, boolean extrapolated,
                         double extrapolatedShare, List<Left> activities, List<Line> lines, List<String> notes) { }

    private DoseRate() { }

    public static Answer of(UnitRateCache units, Question question) {
        LocalDate on = question.on().orElse(question.source().referenceOn());
        if (on.isBefore(question.source().referenceOn())) {
            throw new Invalid("on", "is before the reference day of the activities, " + question.source().referenceOn()
                + ". What was there before is not known; ask for that day or a later one.");
        }
        List<String> notes = new ArrayList<>();
        Source source = source(units, question.source(), notes);
        Inventory inventory = inventory(units, question.source(), on);
        DoseRateAnswer answer;
        try {
            answer = units.kernel().rate(source, layers(units, question.layers()), Surroundings.position(question.point()), inventory);
        } catch (Invalid e) {
            throw e.faults().get(0).field().equals("detector") ? new Invalid("point", e.faults().get(0).detail()) : e;
        }
        notes.addAll(answer.validity().notes());
        return new Answer(on, answer.rateUsvPerH(), answer.unscatteredRate(), answer.relativeError(), answer.validity().meanFreePaths(),
            answer.validity().extrapolated(), answer.validity().extrapolatedShare(),
            inventory.becquerels().entrySet().stream().map(left -> new Left(left.getKey(), left.getValue())).toList(),
            answer.lines().stream().map(Line::of).toList(), notes);
    }

    private static Source source(UnitRateCache units, Emitter emitter, List<String> notes) {
        if (emitter.shape().isEmpty()) {
            return new Source(new kerfbook.shielding.Shape.Point(), Surroundings.position(emitter.middle()));
        }
        units.data().material(emitter.material().orElseThrow(), "source.material");
        return new Geometry(units.data()).of(emitter.shape().get(), emitter.posture(), emitter.material().get(), emitter.densityKgPerM3().orElseThrow(),
            emitter.middle(), notes);
    }

    private static Inventory inventory(UnitRateCache units, Emitter emitter, LocalDate on) {
        Map<String, Double> becquerels = new LinkedHashMap<>();
        for (int i = 0; i < emitter.activities().size(); i++) {
            String nuclide = emitter.activities().get(i).nuclide();
            if (!units.nuclides().containsKey(nuclide)) {
                throw new Invalid("source.activities[" + i + "].nuclide", "the nuclide \"" + nuclide + "\" is not in the tables. Known are: "
                    + String.join(", ", new TreeMap<>(units.nuclides()).keySet()) + ".");
            }
            becquerels.put(nuclide, emitter.activities().get(i).becquerel());
        }
        return units.after(Inventory.of(becquerels), ChronoUnit.DAYS.between(emitter.referenceOn(), on));
    }

    private static List<Layer> layers(UnitRateCache units, List<Slab> slabs) {
        List<Layer> layers = new ArrayList<>();
        for (int i = 0; i < slabs.size(); i++) {
            Slab slab = slabs.get(i);
            units.data().material(slab.material(), "layers[" + i + "].material");
            layers.add(Surroundings.layer(slab.material(), slab.right(), slab.across(), slab.up()));
        }
        return layers;
    }
}
