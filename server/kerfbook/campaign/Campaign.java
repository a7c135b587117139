package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * A whole plan. Every reference inside it is checked when it is made: nothing dangles, no code stands twice, no component or
 * task waits for itself.
 *
 * @param format version of this shape, {@value #FORMAT}
 */
public record Campaign(String format, Settings settings, List<DifficultyFactor> factors, List<Area> areas, List<Source> sources,
                       List<Shield> shields, List<Survey> surveys, List<Technique> techniques, List<TimedTrial> trials, List<Routine> routines,
                       List<PackageType> packages, List<Component> components, List<Cut> cuts, List<ManualTask> tasks,
                       List<FigureOverride> overrides, List<Worker> workers, List<RosterEntry> roster, List<Resource> resources,
                       List<Price> prices, List<Target> targets, List<Constraint> constraints, List<Option> options) {

    public static final String FORMAT = "kerfbook-campaign-1";
    private static final int MOST_OF_A_KIND = 20_000;

    public Campaign {
        if (!FORMAT.equals(format)) {
            throw new Invalid("format", "must be \"" + FORMAT + "\".");
        }
        Require.present(settings, "settings");
        factors = kind(factors, "factors");
        areas = kind(areas, "areas");
        sources = kind(sources, "sources");
        shields = kind(shields, "shields");
        surveys = kind(surveys, "surveys");
        techniques = kind(techniques, "techniques");
        trials = kind(trials, "trials");
        routines = kind(routines, "routines");
        packages = kind(packages, "packages");
        components = kind(components, "components");
        cuts = kind(cuts, "cuts");
        tasks = kind(tasks, "tasks");
        overrides = kind(overrides, "overrides");
        workers = kind(workers, "workers");
        roster = kind(roster, "roster");
        resources = kind(resources, "resources");
        prices = kind(prices, "prices");
        targets = kind(targets, "targets");
        constraints = kind(constraints, "constraints");
        options = kind(options, "options");
        References.check(settings, factors, areas, sources, shields, surveys, techniques, trials, routines, packages, components, cuts, tasks,
            overrides, workers, roster, resources, prices, targets, constraints, options);
    }

    /** Without options. */
    public Campaign(String format, Settings settings, List<DifficultyFactor> factors, List<Area> areas, List<Source> sources,
                    List<Shield> shields, List<Survey> surveys, List<Technique> techniques, List<TimedTrial> trials, List<Routine> routines,
                    List<PackageType> packages, List<Component> components, List<Cut> cuts, List<ManualTask> tasks,
                    List<FigureOverride> overrides, List<Worker> workers, List<RosterEntry> roster, List<Resource> resources,
                    List<Price> prices, List<Target> targets, List<Constraint> constraints) {
        this(format, settings, factors, areas, sources, shields, surveys, techniques, trials, routines, packages, components, cuts, tasks, overrides,
            workers, roster, resources, prices, targets, constraints, List.of());
    }

    /** Without trials, packages and prices. */
    public Campaign(String format, Settings settings, List<DifficultyFactor> factors, List<Area> areas, List<Source> sources,
                    List<Shield> shields, List<Survey> surveys, List<Technique> techniques, List<Routine> routines,
                    List<Component> components, List<Cut> cuts, List<ManualTask> tasks, List<FigureOverride> overrides,
                    List<Worker> workers, List<RosterEntry> roster, List<Resource> resources, List<Target> targets,
                    List<Constraint> constraints) {
        this(format, settings, factors, areas, sources, shields, surveys, techniques, List.of(), routines, List.of(), components, cuts, tasks,
            overrides, workers, roster, resources, List.of(), targets, constraints);
    }

    /** Without shields, trials, packages, resources and prices. */
    public Campaign(String format, Settings settings, List<DifficultyFactor> factors, List<Area> areas, List<Source> sources,
                    List<Survey> surveys, List<Technique> techniques, List<Routine> routines, List<Component> components, List<Cut> cuts,
                    List<ManualTask> tasks, List<FigureOverride> overrides, List<Worker> workers, List<RosterEntry> roster,
                    List<Target> targets, List<Constraint> constraints) {
        this(format, settings, factors, areas, sources, List.of(), surveys, techniques, routines, components, cuts, tasks, overrides, workers,
            roster, List.of(), targets, constraints);
    }

    /** The same plan with other settings. */
    public Campaign with(Settings other) {
        return new Campaign(format, other, factors, areas, sources, shields, surveys, techniques, trials, routines, packages, components, cuts, tasks,
            overrides, workers, roster, resources, prices, targets, constraints, options);
    }

    /** The same with other shields. */
    public Campaign shielded(List<Shield> others) {
        return new Campaign(format, settings, factors, areas, sources, others, surveys, techniques, trials, routines, packages, components, cuts, tasks,
            overrides, workers, roster, resources, prices, targets, constraints, options);
    }

    /** The same with other sources and what surveys say of them. */
    public Campaign sourced(List<Source> others, List<Survey> otherSurveys) {
        return new Campaign(format, settings, factors, areas, others, shields, otherSurveys, techniques, trials, routines, packages, components, cuts, tasks,
            overrides, workers, roster, resources, prices, targets, constraints, options);
    }

    /** The same with other people in its routines and tasks. */
    public Campaign crewed(List<Routine> otherRoutines, List<ManualTask> otherTasks, List<RosterEntry> otherRoster) {
        return new Campaign(format, settings, factors, areas, sources, shields, surveys, techniques, trials, otherRoutines, packages, components, cuts,
            otherTasks, overrides, workers, otherRoster, resources, prices, targets, constraints, options);
    }

    /** The same at other times. */
    public Campaign moved(Settings other, List<Source> otherSources, List<Shield> otherShields, List<ManualTask> otherTasks, List<Worker> otherWorkers) {
        return new Campaign(format, other, factors, areas, otherSources, otherShields, surveys, techniques, trials, routines, packages, components, cuts,
            otherTasks, overrides, otherWorkers, roster, resources, prices, targets, constraints, options);
    }

    /** The same at other prices. */
    public Campaign priced(List<Price> others) {
        return new Campaign(format, settings, factors, areas, sources, shields, surveys, techniques, trials, routines, packages, components, cuts, tasks,
            overrides, workers, roster, resources, others, targets, constraints, options);
    }

    /** The component with this code. */
    public Optional<Component> component(String code) {
        return components.stream().filter(component -> component.code().equals(code)).findFirst();
    }

    /** The same with other ways to cut. */
    public Campaign cutting(List<Technique> otherTechniques, List<Routine> otherRoutines, List<Component> otherComponents, List<Cut> otherCuts,
                            List<ManualTask> otherTasks, List<FigureOverride> otherOverrides) {
        return new Campaign(format, settings, factors, areas, sources, shields, surveys, otherTechniques, trials, otherRoutines, packages,
            otherComponents, otherCuts, otherTasks, otherOverrides, workers, roster, resources, prices, targets, constraints, options);
    }

    private static <T> List<T> kind(List<T> objects, String field) {
        List<T> copy = Require.list(objects, field);
        if (copy.size() > MOST_OF_A_KIND) {
            throw new Invalid(field, "holds " + copy.size() + " entries; at most " + MOST_OF_A_KIND + " are taken.");
        }
        return copy;
    }
}
