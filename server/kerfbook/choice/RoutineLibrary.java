package kerfbook.choice;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/** Routines to start from: for each family of techniques set-up, cutting and take-down, and one for lifting and packing. */
public final class RoutineLibrary {
    /** What the steps are called as a table. */
    public static final String TABLE = "routine_steps";
    private static final String CUTTING = "cutting";
    private static final String PACKING = "packing";

    /** A role that steps speak of. */
    public record Role(String code, String name) { }

    /** A place that steps speak of. */
    public record Place(String code, String name, String note) { }

    /**
     * A step that several routines share; all rest on the library's origin.
     *
     * @param whereRated the step, of the same people and places, that takes its place for a technique whose fault rate is known
     */
    public record SharedStep(String code, String name, Driver driver, Likely hoursEach, Step.Mode mode, Optional<Boolean> alongside,
                             List<String> factors, List<Staff> staff, Optional<String> whereRated) {
        Step step(Origin origin) {
            return new Step(code, name, driver, Optional.empty(), hoursEach, mode, alongside != null && alongside.orElse(false), factors, staff,
                origin.from(TABLE, code));
        }
    }

    /** What every routine is made of. */
    public record Steps(Origin origin, List<Role> roles, List<Place> areas, List<SharedStep> steps) { }

    /** Wear that the handbook does not hold and these routines count with. */
    public record AssumedWear(Optional<Likely> filterLifeH, Optional<Likely> drumKg) { }

    /** Codes of the steps of one family of techniques, phase by phase. */
    public record Family(String code, String name, List<String> handbookTechniques, List<String> setUp, List<String> place, List<String> cut,
                         List<String> afterCut, List<String> takeDown, Optional<AssumedWear> assumedWear) { }

    /** Codes of the steps between the cut and the store. */
    public record Packing(String code, String name, List<String> lift, List<String> close) { }

    /** The families and what follows all of them. */
    public record Families(List<Family> families, Packing packing) { }

    /**
     * A routine of the library, in its own words for roles, areas and factors.
     *
     * @param handbookTechniques techniques it is made for; empty for all
     * @param lifts              a piece hangs on the hook in it: how much water is over it must be said when it is taken over
     */
    public record Entry(String code, String name, Routine.Applies applies, List<String> handbookTechniques, List<String> roles, List<String> areas,
                        List<String> factors, List<Driver> drivers, Optional<AssumedWear> assumedWear, boolean lifts, List<RoutineTask> tasks) { }

    private final Steps parts;
    private final Map<String, Step> steps = new LinkedHashMap<>();
    private final Map<String, Step> rated = new LinkedHashMap<>();
    private final List<Entry> entries = new ArrayList<>();

    public RoutineLibrary(Steps parts, Families families) {
        this.parts = parts;
        parts.steps().forEach(step -> steps.put(step.code(), step.step(parts.origin())));
        parts.steps().forEach(step -> Require.optional(step.whereRated()).ifPresent(other -> rated.put(step.code(), steps.get(other))));
        for (Family family : families.families()) {
            entries.add(entry(family.code() + "-set-up", family.name() + ": set up", Routine.Applies.BEFORE, family,
                List.of(task("set-up", "Set up", "set-up", List.of(), false, family.setUp()))));
            entries.add(entry(family.code() + "-cut", family.name() + ": cut", Routine.Applies.COMPONENT, family, List.of(
                task("place", "Bring the tool into place", CUTTING, List.of(), false, family.place()),
                task("cut", "Cut", CUTTING, List.of("place"), false, family.cut()),
                task("upkeep", "Change tools and filters, collect what was cut out", "upkeep", List.of("cut"), false, family.afterCut()))));
            entries.add(entry(family.code() + "-take-down", family.name() + ": take down", Routine.Applies.AFTER, family,
                List.of(task("take-down", "Take down", "set-up", List.of(), false, family.takeDown()))));
        }
        Packing packing = families.packing();
        entries.add(entry(packing.code(), packing.name(), Routine.Applies.COMPONENT, List.of(), Optional.empty(), List.of(
            task("lift", "Lift and stow", PACKING, List.of(), false, packing.lift()),
            task("pack", "Close, measure and move the packages", PACKING, List.of("lift"), true, packing.close()))));
    }

    public List<Step> steps() {
        return List.copyOf(steps.values());
    }

    /** The step as it is for a technique whose fault rate is known. */
    Step rated(Step step) {
        return rated.getOrDefault(step.code(), step);
    }

    public List<Role> roles() {
        return List.copyOf(parts.roles());
    }

    public List<Place> areas() {
        return List.copyOf(parts.areas());
    }

    public List<Entry> entries() {
        return List.copyOf(entries);
    }

    public Optional<Entry> find(String code) {
        return entries.stream().filter(entry -> entry.code().equals(code)).findFirst();
    }

    /** The routine for components that belongs to a technique of the handbook. */
    public Optional<Entry> cutting(String handbookTechnique) {
        return entries.stream().filter(entry -> entry.applies() == Routine.Applies.COMPONENT && entry.handbookTechniques().contains(handbookTechnique)).findFirst();
    }

    /** All of a technique's routines: set-up, cut, take-down. */
    public List<Entry> of(String handbookTechnique) {
        return entries.stream().filter(entry -> entry.handbookTechniques().contains(handbookTechnique)).toList();
    }

    private RoutineTask task(String code, String name, String group, List<String> after, boolean packs, List<String> codes) {
        List<Step> own = codes.stream().map(step -> Optional.ofNullable(steps.get(step))
            .orElseThrow(() -> new IllegalStateException("the library of routines has no step " + step))).toList();
        return new RoutineTask(code, name, group, after, 0, packs, own);
    }

    private static Entry entry(String code, String name, Routine.Applies applies, Family family, List<RoutineTask> tasks) {
        return entry(code, name, applies, family.handbookTechniques(), applies == Routine.Applies.COMPONENT ? family.assumedWear() : Optional.empty(), tasks);
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Entry entry(String code, String name, Routine.Applies applies, List<String> techniques, Optional<AssumedWear> wear, List<RoutineTask> tasks) {
        Set<String> roles = new LinkedHashSet<>();
        Set<String> areas = new LinkedHashSet<>();
        Set<String> factors = new LinkedHashSet<>();
        Set<Driver> drivers = new LinkedHashSet<>();
        tasks.forEach(task -> task.steps().forEach(step -> {
            step.staff().forEach(staff -> {
                roles.add(staff.role());
                areas.add(staff.area());
            });
            factors.addAll(step.factors());
            drivers.add(step.driver());
        }));
        return new Entry(code, name, applies, techniques, List.copyOf(roles), List.copyOf(areas), List.copyOf(factors), List.copyOf(drivers),
            wear == null ? Optional.empty() : wear, tasks.stream().anyMatch(task -> task.code().equals("lift")), tasks);
    }
}
