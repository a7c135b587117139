package kerfbook.cutting;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * What some cuts with one technique come to, or why there is no figure.
 *
 * @param because why the technique is not applicable; then there is no work
 */
public record CuttingAnswer(String technique, String name, boolean applicable, Optional<String> because, Optional<Work> work, List<String> limits,
                            String hazards) {
    private static final double MM_PER_M = 1000;
    private static final double MM2_PER_CM2 = 100;
    private static final double MM2_PER_M2 = 1e6;
    private static final double MINUTES_PER_HOUR = 60;
    private static final double L_PER_M3 = 1000;
    private static final double MPA_PER_M_OF_WATER = 0.01;

    public CuttingAnswer {
        because = Require.optional(because);
        work = Require.optional(work);
        limits = List.copyOf(limits);
    }

    /**
     * The figures.
     *
     * @param speedMmPerMin      of the head along the cut; empty where nothing travels along it
     * @param strokesPerHour     of a shear
     * @param feedMmPerMin       of a drill into one hole
     * @param holes              to be drilled for all cuts
     * @param toolOnHours        piercing included
     * @param piercingHours      the part of it that goes into piercing
     * @param kerfKg             taken out of the pieces
     * @param secondaryWasteKg   kerf, abrasive and what comes off the tool, as far as it is known
     * @param remarks            what is not in the figures
     */
    public record Work(Optional<Figure> speedMmPerMin, Optional<Figure> areaRateCm2PerMin, Optional<Figure> strokesPerHour,
                       Optional<Figure> feedMmPerMin, Optional<Figure> holes, Figure toolOnHours, Optional<Figure> piercingHours, double metres,
                       List<Consumable> consumables, Optional<Figure> waterM3, Optional<Figure> abrasiveKg, Optional<Figure> abrasiveKgPerM,
                       Figure kerfKg, Figure secondaryWasteKg, Optional<JetState> jet, List<String> remarks) {
        public Work {
            consumables = List.copyOf(consumables);
            remarks = List.copyOf(remarks);
        }
    }

    /** Something worn out: an expected number in its unit. */
    public record Consumable(String name, String unit, Figure amount) { }

    /** The jet at its nozzle. */
    public record JetState(double pumpPressureMpa, double pumpPressureBar, Likely nozzlePressureMpa, Likely waterLitresPerMin, Likely hydraulicPowerKw,
                           double jetMetresPerS, Likely reactionN, double abrasiveToWater, Optional<Double> hoseFillsL) { }

    /** Works it out. */
    public static CuttingAnswer of(CuttingTask task) {
        Technique technique = task.technique();
        List<String> limits = limits(task);
        Optional<String> because = technique.whyNot(task.material(), task.thicknessMm(), task.medium(), task.depthM())
            .or(() -> submergenceMissing(task));
        return new CuttingAnswer(technique.code(), technique.name(), because.isEmpty(),
            because.map(why -> technique.name() + " is not applicable, because " + why + "."),
            because.isPresent() ? Optional.empty() : Optional.of(finite(task)), limits, technique.caution());
    }

    /** Figures that are each in range may together make one that is not. */
    private static Work finite(CuttingTask task) {
        try {
            return work(task);
        } catch (Invalid out) {
            throw new Invalid("technique", "makes a figure for these cuts that is out of range (" + out.getMessage() + "). Check its speed, its lives and the cuts.");
        }
    }

    private static Optional<String> submergenceMissing(CuttingTask task) {
        return jet(task.technique()).filter(jet -> task.medium() == Medium.WATER && jet.submergence().isEmpty())
            .map(jet -> "it is set up for air: a jet under water needs its submergence factor");
    }

    private static Work work(CuttingTask task) {
        Technique technique = task.technique();
        Speed speed = technique.works();
        double thickness = task.thicknessMm();
        Origin from = speedOrigin(technique);
        boolean far = speed.extrapolated(task.material(), thickness);
        Likely hours = CuttingTime.hours(task.count(), task.lengthMm(), thickness, task.material(), technique);
        Optional<Likely> travel = speed.mmPerMin(task.material(), thickness);
        Origin rest = task.notes().map(TechniqueNotes::rest).orElse(technique.origin());
        Origin mixed = weaker(from, rest);
        double metres = task.count() * task.lengthMm() / MM_PER_M;
        Optional<Likely> abrasive = Removed.abrasiveKg(technique, hours);
        Likely kerf = Removed.kerfKg(technique, task.count(), task.lengthMm(), thickness, task.densityKgPerM3());
        Optional<Jet> jet = jet(technique);
        return new Work(travel.map(value -> Figure.of(value, from, far)),
            travel.map(value -> Figure.of(value.times(thickness / MM2_PER_CM2), from, far)),
            speed instanceof Strokes shear ? Optional.of(Figure.of(shear.perHour(), from, far)) : Optional.empty(),
            speed instanceof StitchDrilling drill ? Optional.of(Figure.of(drill.feedMmPerMin(), from, far)) : Optional.empty(),
            speed instanceof StitchDrilling drill ? Optional.of(Figure.of(drill.holes(task.lengthMm()).times(task.count()), from, false)) : Optional.empty(),
            Figure.of(hours, from, far),
            jet.filter(given -> given.pierceFactor().isPresent()).map(given -> Figure.of(
                given.piercingMinutes(thickness, task.material(), technique.kerfMm()).times(task.count() / MINUTES_PER_HOUR), mixed, far)),
            metres, consumables(task, hours, mixed, far),
            jet.map(given -> Figure.of(hours.times(MINUTES_PER_HOUR / L_PER_M3).times(given.nozzle().waterLPerMin()), from, far)),
            abrasive.map(kg -> Figure.of(kg, mixed, far)), abrasive.map(kg -> Figure.of(kg.times(1 / metres), mixed, far)),
            Figure.of(kerf, weaker(rest, task.densityOrigin()), false),
            Figure.of(waste(task, kerf, abrasive), mixed, far), jet.map(CuttingAnswer::state), remarks(task, far));
    }

    private static Likely waste(CuttingTask task, Likely kerf, Optional<Likely> abrasive) {
        Likely solids = kerf.plus(abrasive.orElse(Likely.exactly(0)));
        return task.notes().flatMap(TechniqueNotes::addedSolids).map(share -> solids.plus(kerf.times(share))).orElse(solids);
    }

    private static List<Consumable> consumables(CuttingTask task, Likely hours, Origin origin, boolean far) {
        List<Consumable> all = new ArrayList<>();
        String tool = task.notes().map(TechniqueNotes::tool).orElse("tool");
        Removed.tools(task.technique(), task.count(), task.lengthMm(), task.thicknessMm(), hours)
            .ifPresent(number -> all.add(new Consumable(tool, "pieces", Figure.of(number, origin, far && task.technique().wear().toolLifeH().isPresent()))));
        task.notes().flatMap(TechniqueNotes::wireM2PerM).ifPresent(life -> all.add(new Consumable(tool, "m", Figure.of(
            Likely.exactly(task.count() * task.lengthMm() * task.thicknessMm() / MM2_PER_M2).by(life), origin, false))));
        jet(task.technique()).flatMap(Jet::orificeLifeH).ifPresent(life -> all.add(new Consumable("orifice", "pieces", Figure.of(hours.by(life), origin, far))));
        task.technique().wear().filterLifeH().ifPresent(life -> all.add(new Consumable("filter", "pieces", Figure.of(hours.by(life), origin, far))));
        return all;
    }

    private static JetState state(Jet jet) {
        Nozzle nozzle = jet.nozzle();
        Likely pressure = nozzle.pressureMpa();
        Likely water = nozzle.waterLPerMin();
        double speed = Hydraulics.jetSpeedMPerS(pressure.likely(), 0.98);
        return new JetState(jet.pumpPressureMpa(), jet.pumpPressureMpa() * 10, pressure, water,
            new Likely(Hydraulics.powerKw(jet.pumpPressureMpa(), water.low()), Hydraulics.powerKw(jet.pumpPressureMpa(), water.likely()),
                Hydraulics.powerKw(jet.pumpPressureMpa(), water.high())), speed,
            new Likely(Hydraulics.reactionN(water.low(), speed), Hydraulics.reactionN(water.likely(), speed), Hydraulics.reactionN(water.high(), speed)),
            jet.abrasiveKgPerMin() / water.likely(), jet.hose().map(hose -> Hydraulics.pressurisationL(hose, pressure.likely())));
    }

    private static List<String> limits(CuttingTask task) {
        List<String> all = new ArrayList<>();
        Technique technique = task.technique();
        all.add("Thickness " + technique.minThicknessMm() + " to " + technique.maxThicknessMm() + " mm in one pass.");
        all.add(technique.medium() == Medium.EITHER ? "In water or air." : "In " + technique.medium() + " only.");
        technique.reach().ifPresent(reach -> {
            if (!reach.materialClasses().isEmpty()) {
                all.add("Materials: " + String.join(", ", reach.materialClasses().stream().map(MaterialClass::toString).toList()) + ".");
            }
            reach.maxDepthM().ifPresent(depth -> all.add("Used to " + depth + " m of water."));
        });
        task.notes().map(TechniqueNotes::limits).filter(text -> !text.isEmpty()).ifPresent(all::add);
        return all;
    }

    private static List<String> remarks(CuttingTask task, boolean far) {
        List<String> all = new ArrayList<>();
        if (task.technique().reach().flatMap(Reach::maxDepthM).isEmpty() && task.depthM().isPresent()) {
            all.add("No depth limit is held for this technique: " + task.depthM().get() + " m was not checked.");
        }
        if (task.notes().isPresent() && task.notes().get().addedSolids().isEmpty() || task.notes().isEmpty()) {
            all.add("Debris from the tool itself is not known and not counted as waste.");
        }
        jet(task.technique()).ifPresent(jet -> jetRemarks(task, jet, far, all));
        task.notes().flatMap(TechniqueNotes::planningRange).ifPresent(range -> planningRemark(task, range, all));
        if (task.technique().works() instanceof TrialCurve trials) {
            all.add("From " + trials.points() + " timed trials; low and high enclose " + Math.round(100 * trials.confidence())
                + " % of single cuts, times the factor from trial to field.");
        }
        if (task.technique().works() instanceof StitchDrilling) {
            all.add("Kerf holds cores and chips together.");
        }
        return all;
    }

    /** Two ways to a speed that disagree are told, not averaged. */
    private static void planningRemark(CuttingTask task, Likely range, List<String> all) {
        task.technique().works().mmPerMin(task.material(), task.thicknessMm()).map(speed -> speed.likely() * task.thicknessMm() / MM2_PER_CM2)
            .filter(rate -> rate < range.low() || rate > range.high())
            .ifPresent(rate -> all.add("Worked out at " + Math.round(10 * rate) / 10.0 + " cm²/min, outside the planner's range of " + range.low() + " to "
                + range.high() + ", which is judgement for steel. Trust neither before a timed trial."));
    }

    private static void jetRemarks(CuttingTask task, Jet jet, boolean far, List<String> all) {
        if (far && jet.kind() == Jet.Kind.SUSPENSION) {
            all.add("Extrapolated: the equation describes entrainment jets; a ratio carries it to a suspension jet.");
        }
        if (task.thicknessMm() > JetSpeed.TESTED_TO_MM || far && jet.kind() == Jet.Kind.ENTRAINMENT) {
            all.add("Extrapolated: the equation was mostly tested to " + JetSpeed.TESTED_TO_MM + " mm and from " + JetSpeed.TESTED_FROM_MPA + " to "
                + JetSpeed.TESTED_TO_MPA + " MPa; the range is widened by 0.5 to 1.3.");
        }
        all.add("The scatter of the equation itself is not in the range: no published figure was found. Time a trial cut.");
        all.add(jet.hose().isPresent() ? "Pressure loss of the hose alone: couplings, bends, valves and swivels are not in it."
            : "No hose given: the pump's pressure is taken to stand at the nozzle.");
        jet.tubeMm().filter(bore -> bore < 2.5 * jet.orificeMm() || bore > 4 * jet.orificeMm())
            .ifPresent(bore -> all.add("The focusing tube is not 2.5 to 4 times as wide as the orifice, which is usual."));
        if (jet.kind() == Jet.Kind.ENTRAINMENT && task.depthM().isPresent()) {
            all.add("The abrasive must be held above the water's pressure at the head, " + Math.round(1000 * MPA_PER_M_OF_WATER * task.depthM().get()) / 1000.0
                + " MPa here; dry feed may plug (US patent 9446500, abstract).");
        }
    }

    private static Origin speedOrigin(Technique technique) {
        return jet(technique).isEmpty() ? technique.origin()
            : weaker(new Origin("Speed equation of Zeng & Kim 1993 and Zeng, Olsen & Olsen 1999, from memory", Origin.Status.MEMORY), technique.origin());
    }

    /** The one that is worth less; the later constant of the list is worth less. */
    private static Origin weaker(Origin one, Origin other) {
        return other.status().compareTo(one.status()) > 0 ? other : one;
    }

    private static Optional<Jet> jet(Technique technique) {
        return technique.speed().flatMap(GivenSpeed::jet);
    }
}
