package kerfbook.estimate;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Target;
import kerfbook.exposure.Calibration;
import kerfbook.quantity.Likely;
import kerfbook.schedule.Link;
import kerfbook.schedule.WorkCalendar;

/**
 * A forecast with what it was made of, complete: whoever wants to know what becomes of it when its figures vary needs nothing else.
 *
 * @param calibration the fit behind calibrated areas, if there are any
 * @param targets     those in force, in the order of the forecast's verdicts
 * @param constraints the same
 */
public record Resolved(Campaign campaign, Forecast forecast, WorkCalendar calendar, List<Task> tasks, Optional<Calibration.Fit> calibration,
                       List<Target> targets, List<Constraint> constraints) {

    /**
     * @param forecast      hours, lines and their sums
     * @param notBeforeHour first working hour at which it may start, the planned wait for weekly tasks included
     * @param weekly        one of the tasks that come back every week
     * @param technique     of its routine
     * @param after         what it waits for, and what hands a resource on to it; the planned wait for weekly tasks is in the lags
     * @param steps         in the order of the forecast's
     */
    public record Task(Forecast.Task forecast, double notBeforeHour, boolean weekly, Optional<String> technique, List<Link> after, List<Step> steps) {
        public String id() {
            return forecast.id();
        }
    }

    /**
     * @param parts   what the quantity is made of, technique by technique; empty where nothing is uncertain about it
     * @param crews   who works each line, in the order of the lines
     */
    public record Step(Forecast.StepDose dose, List<Part> parts, List<List<Share>> crews) { }

    /** A worker's share of a line's hours; the shares of a line add up to 1. */
    public record Share(String worker, double share) { }

    /**
     * What one technique uses up on some components.
     *
     * @param mean of the quantity that the step counts
     */
    public record Part(String technique, double mean, Likely toolOnHours, double abrasiveKg, double kerfKg) { }

    /** @param inputs digest of the campaign document */
    public static Resolved of(Campaign campaign, Basis basis, String inputs) {
        return Estimate.resolved(campaign, basis, inputs);
    }

    /** How much of the driver each technique uses up on one component; nothing for a technique that does not say. */
    public List<Part> parts(Driver driver, String component) {
        return parts(driver, new Consumption(campaign).of(component));
    }

    private static List<Part> parts(Driver driver, Map<String, Quantities> byTechnique) {
        List<Part> parts = new ArrayList<>();
        byTechnique.forEach((technique, quantities) -> {
            if (quantities.whyNot(driver).isEmpty()) {
                parts.add(new Part(technique, quantities.mean(driver), quantities.toolOnHours(), quantities.kgAbrasive().mean(), quantities.kerfKg()));
            }
        });
        return List.copyOf(parts);
    }

    static Resolved of(Campaign campaign, Forecast forecast, Workload work, Optional<Calibration.Fit> calibration) {
        Map<String, String> techniqueOf = new HashMap<>();
        for (Routine routine : campaign.routines()) {
            routine.technique().ifPresent(technique -> techniqueOf.put(routine.code(), technique));
        }
        Consumption used = new Consumption(campaign);
        Crew crew = new Crew(campaign);
        Map<String, HandOver.Waiting> waiting = HandOver.of(campaign, work);
        List<Task> tasks = new ArrayList<>();
        for (int i = 0; i < work.tasks().size(); i++) {
            PlannedTask planned = work.tasks().get(i);
            Optional<String> technique = planned.routine().map(techniqueOf::get);
            List<Step> steps = new ArrayList<>();
            for (Forecast.StepDose dose : forecast.tasks().get(i).steps()) {
                List<Part> parts = counted(dose.driver()) ? parts(dose.driver(), consumption(campaign, used, planned.component(), technique)) : List.of();
                steps.add(new Step(dose, parts, dose.lines().stream().map(line -> crew.of(line.role(), planned).stream()
                    .map(share -> new Share(share.worker(), share.share())).toList()).toList()));
            }
            HandOver.Waiting its = waiting.get(planned.id());
            tasks.add(new Task(forecast.tasks().get(i), its.notBeforeHour(), planned.week().isPresent(), technique, its.after(), List.copyOf(steps)));
        }
        return new Resolved(campaign, forecast, work.calendar(), List.copyOf(tasks), calibration, List.copyOf(Bounds.targets(campaign, work.lastDay())),
            List.copyOf(Bounds.constraints(campaign, work.lastDay())));
    }

    private static boolean counted(Driver driver) {
        return switch (driver) {
            case TOOL_ON_HOUR, TOOL_CHANGE, KG_ABRASIVE, FILTER, DRUM, FAULT -> true;
            default -> false;
        };
    }

    /** By technique: of its component or of all, with the routine's technique or with all. */
    private static Map<String, Quantities> consumption(Campaign campaign, Consumption used, Optional<String> component, Optional<String> technique) {
        Map<String, Quantities> all = new LinkedHashMap<>();
        for (String code : component.map(List::of).orElseGet(() -> campaign.components().stream().map(each -> each.code()).toList())) {
            used.of(code).forEach((name, quantities) -> {
                if (technique.isEmpty() || technique.get().equals(name)) {
                    all.merge(name, quantities, Quantities::plus);
                }
            });
        }
        return all;
    }
}
