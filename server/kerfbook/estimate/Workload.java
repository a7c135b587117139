package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Scope;
import kerfbook.exposure.CampaignRates;
import kerfbook.exposure.Timeline;
import kerfbook.quantity.Invalid;
import kerfbook.schedule.WorkCalendar;

/**
 * All tasks of a campaign with their hours and times. Weekly tasks need to know how long the components take, so the network is worked
 * out twice: without them, then with them. They hold nothing else up.
 */
final class Workload {
    private final List<PlannedTask> tasks = new ArrayList<>();
    private final Map<String, PlannedTask> byId = new LinkedHashMap<>();
    private final Map<String, List<StepHours>> steps = new HashMap<>();
    private final WorkCalendar calendar;
    private final Timetable timetable;
    private final Campaign campaign;

    Workload(Campaign campaign) {
        this.campaign = campaign;
        this.calendar = Timetable.calendar(campaign.settings());
        Overrides overrides = Overrides.of(campaign);
        Difficulty difficulty = new Difficulty(campaign.factors());
        add(TaskList.of(campaign), overrides, difficulty);
        Timetable first = network(overrides);
        List<PlannedTask> ofComponents = tasks.stream().filter(task -> task.component().isPresent()).toList();
        if (ofComponents.isEmpty()) {
            timetable = first;
        } else {
            double from = ofComponents.stream().mapToDouble(task -> first.of(task.id()).start()).min().orElseThrow();
            double to = ofComponents.stream().mapToDouble(task -> first.of(task.id()).finish()).max().orElseThrow();
            add(TaskList.weekly(campaign, calendar, from, to), overrides, difficulty);
            timetable = network(overrides);
        }
        Overrides.requireKnown(campaign, byId);
        requireScopes();
    }

    List<PlannedTask> tasks() {
        return tasks;
    }

    List<StepHours> steps(PlannedTask task) {
        return steps.get(task.id());
    }

    Timetable.Slot times(PlannedTask task) {
        return timetable.of(task.id());
    }

    /** Units of each resource that a task holds. */
    Map<String, Integer> needs(PlannedTask task) {
        return timetable.needs(task.id());
    }

    /** Day on which the last task ends. */
    LocalDate lastDay() {
        return calendar.finishDay(tasks.stream().mapToDouble(task -> times(task).finish()).max().orElse(0));
    }

    double finish(String task) {
        return timetable.of(task).finish();
    }

    WorkCalendar calendar() {
        return calendar;
    }

    /** Working hour at which each component that gets packed is packed: the last finish of its packing tasks. */
    Map<String, Double> packedAtHour() {
        Map<String, Double> packed = new HashMap<>();
        for (PlannedTask task : tasks) {
            if (task.packs()) {
                packed.merge(task.component().orElseThrow(), times(task).finish(), Math::max);
            }
        }
        return packed;
    }

    /** When components are cut free, lifted and packed. */
    Timeline timeline() {
        Map<String, Double> freed = new HashMap<>();
        List<Timeline.Lift> lifts = new ArrayList<>();
        for (PlannedTask task : tasks) {
            if (task.frees()) {
                freed.merge(task.component().orElseThrow(), times(task).finish(), Math::max);
            }
            task.liftCoverMm().ifPresent(cover -> lifts.add(new Timeline.Lift(task.component().orElseThrow(), times(task).start(),
                times(task).finish(), cover)));
        }
        return new Timeline(freed, packedAtHour(), lifts);
    }

    /** Rates for areas that are calculated or calibrated; empty if there is none. */
    Optional<CampaignRates> calculated(Basis basis) {
        if (campaign.areas().stream().noneMatch(area -> area.rateFrom().worked())) {
            return Optional.empty();
        }
        return Optional.of(new CampaignRates(campaign, basis.units().orElseThrow(() -> new IllegalStateException("no photon data to calculate rates from")),
            timeline(), calendar::hourOf, calendar::startDay));
    }

    /** Time of a task: its steps one after the other, without those that run alongside. */
    static double hours(List<StepHours> steps) {
        double hours = 0;
        for (StepHours step : steps) {
            hours += step.step().alongside() ? 0 : step.hours();
        }
        return hours;
    }

    private void add(List<PlannedTask> more, Overrides overrides, Difficulty difficulty) {
        for (PlannedTask task : more) {
            if (byId.put(task.id(), task) != null) {
                throw new Invalid(task.at(), "makes the task id \"" + task.id() + "\" a second time. Use another code.");
            }
            tasks.add(task);
            steps.put(task.id(), StepHours.of(task, campaign.settings().calendar().productiveHoursPerShift(), difficulty, overrides));
        }
    }

    private Timetable network(Overrides overrides) {
        return Timetable.of(tasks, tasks.stream().map(task -> steps.get(task.id())).toList(), campaign.resources(), overrides);
    }

    private void requireScopes() {
        List<String> groups = tasks.stream().map(PlannedTask::group).distinct().toList();
        for (int i = 0; i < campaign.targets().size(); i++) {
            requireScope(campaign.targets().get(i).scope(), campaign.targets().get(i).of().orElse(""), groups, "targets[" + i + "].of");
        }
        for (int i = 0; i < campaign.constraints().size(); i++) {
            requireScope(campaign.constraints().get(i).scope(), campaign.constraints().get(i).of().orElse(""), groups, "constraints[" + i + "].of");
        }
        for (int i = 0; i < campaign.roster().size(); i++) {
            if (campaign.roster().get(i).group().isPresent() && !groups.contains(campaign.roster().get(i).group().get())) {
                throw new Invalid("roster[" + i + "].group", "there is no group of tasks \"" + campaign.roster().get(i).group().get() + "\".");
            }
        }
    }

    private void requireScope(Scope scope, String of, List<String> groups, String field) {
        if (scope == Scope.GROUP && !groups.contains(of)) {
            throw new Invalid(field, "there is no group of tasks \"" + of + "\".");
        }
        if (scope == Scope.TASK && !byId.containsKey(of)) {
            throw new Invalid(field, "there is no task \"" + of + "\".");
        }
    }
}
