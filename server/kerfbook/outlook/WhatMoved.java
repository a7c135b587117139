package kerfbook.outlook;

import java.util.ArrayList;
import java.util.List;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Settings;
import kerfbook.estimate.Basis;
import kerfbook.quantity.Invalid;

/**
 * What moved the median between two runs. The plan of the first is turned into that of the second cause by cause, in one fixed order, and drawn
 * again after each: hours (routines, difficulty, learnt hours), dose rates (surveys, sources, areas, learnt rates), scope (components, cuts, tasks,
 * people and all else), technique (techniques, trials, learnt speeds), shielding (shields, pool), and at last work done (what was received, and what
 * remains). Another order would share the same sum out differently.
 *
 * @param steps causes that changed anything; their sum is {@code toUsv − fromUsv}
 */
public record WhatMoved(double fromUsv, double toUsv, List<Step> steps, String order) {
    private static final String ORDER = "One cause after the other is taken over from the later run and everything drawn again: hours, dose rates, scope, "
        + "technique, shielding, work done. Another order would share the change out differently.";
    private static final double NOTHING_USV = 1e-6;

    /** A cause and by how much it moved the median, in person-µSv. */
    public record Step(String name, double usv) { }

    /** A plan and where its work stood. */
    public record Run(Campaign campaign, State state, double medianUsv) { }

    private record Stage(String name, Campaign campaign, State state) { }

    public WhatMoved {
        steps = List.copyOf(steps);
    }

    /** @param plan seed and trials of the later run */
    public static WhatMoved between(Run from, Run to, Basis basis, Plan plan) {
        List<Step> steps = new ArrayList<>();
        List<String> together = new ArrayList<>();
        double before = from.medianUsv();
        List<Stage> stages = stages(from, to);
        Stage last = new Stage("", from.campaign(), from.state());
        for (int i = 0; i < stages.size(); i++) {
            Stage stage = stages.get(i);
            together.add(stage.name());
            boolean same = stage.campaign() != null && stage.campaign().equals(last.campaign()) && stage.state().equals(last.state());
            if (same) {
                together.remove(together.size() - 1);
                continue;
            }
            boolean end = i == stages.size() - 1 || remaining(stages, i);
            Double median = end ? Double.valueOf(to.medianUsv()) : median(stage, basis, plan);
            if (median != null) {
                add(steps, String.join(" and ", together), median - before);
                before = median;
                last = stage;
                together.clear();
            }
        }
        add(steps, "other", to.medianUsv() - before);
        return new WhatMoved(from.medianUsv(), to.medianUsv(), steps, ORDER);
    }

    private static void add(List<Step> steps, String name, double usv) {
        if (Math.abs(usv) > NOTHING_USV) {
            steps.add(new Step(name, usv));
        }
    }

    /** Whether nothing changes any more after this stage. */
    private static boolean remaining(List<Stage> stages, int i) {
        Stage here = stages.get(i);
        return here.campaign() != null && stages.subList(i + 1, stages.size()).stream()
            .allMatch(later -> here.campaign().equals(later.campaign()) && here.state().equals(later.state()));
    }

    /** Null where the plan between the two does not fit together: the cause is then told with the next. */
    private static Double median(Stage stage, Basis basis, Plan plan) {
        if (stage.campaign() == null) {
            return null;
        }
        try {
            return Simulation.run(Model.of(stage.campaign(), basis, "", stage.state()), plan, Progress.UNWATCHED).personUsv().p50();
        } catch (Invalid doesNotFit) {
            return null;
        }
    }

    private static List<Stage> stages(Run from, Run to) {
        Campaign a = from.campaign();
        Campaign b = to.campaign();
        State s = from.state();
        State t = to.state();
        Settings pool = b.settings().pool().equals(a.settings().pool()) ? b.settings() : withPoolOf(b.settings(), a.settings());
        State hours = new State(s.asOf(), s.remaining(), t.hours(), s.rates(), s.speeds(), s.received());
        State rates = new State(s.asOf(), s.remaining(), t.hours(), t.rates(), s.speeds(), s.received());
        State speeds = new State(s.asOf(), s.remaining(), t.hours(), t.rates(), t.speeds(), s.received());
        return List.of(
            new Stage("hours", mixed(a, b, 1, a.settings()), hours),
            new Stage("dose rates", mixed(a, b, 2, a.settings()), rates),
            new Stage("scope", mixed(a, b, 3, pool), rates),
            new Stage("technique", mixed(a, b, 4, pool), speeds),
            new Stage("shielding", b, speeds),
            new Stage("work done", b, t));
    }

    private static Settings withPoolOf(Settings settings, Settings other) {
        return new Settings(settings.name(), settings.story(), settings.invented(), settings.start(), settings.ruleSet(), settings.calendar(), other.pool(),
            settings.handling(), settings.uncertainty());
    }

    /** The first plan with what belongs to the causes up to {@code upTo} taken from the second; null if the two do not fit together. */
    private static Campaign mixed(Campaign a, Campaign b, int upTo, Settings settings) {
        Campaign hours = b;
        Campaign rates = upTo >= 2 ? b : a;
        Campaign scope = upTo >= 3 ? b : a;
        Campaign technique = upTo >= 4 ? b : a;
        try {
            return new Campaign(a.format(), settings, hours.factors(), rates.areas(), rates.sources(), a.shields(), rates.surveys(), technique.techniques(),
                technique.trials(), hours.routines(), scope.packages(), scope.components(), scope.cuts(), scope.tasks(), scope.overrides(), scope.workers(),
                scope.roster(), scope.resources(), scope.prices(), scope.targets(), scope.constraints(), List.of());
        } catch (Invalid doesNotFit) {
            return null;
        }
    }
}
