package kerfbook.estimate;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Step;
import kerfbook.protection.PeriodDose;
import kerfbook.protection.Verdict;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;

/**
 * What is expected of a campaign, with every line it is made of. Each figure is the three-point mean of its inputs; no uncertainty is
 * worked out here. Totals are sums of {@link Line}s; shares and verdicts follow from them.
 *
 * @param inputs   SHA-256 of the campaign document: the same inputs give the same forecast to the last digit
 * @param rates    every dose rate that a line used, with its working
 * @param cost     only where the campaign has prices
 * @param utilisation how far resources are in use; empty without resources
 * @param findings what somebody should look at
 * @param cautions what holds for every forecast
 */
public record Forecast(String name, boolean invented, String inputs, List<Basis.Edition> editions, String method, LocalDate start,
                       LocalDate finish, Totals totals, List<Group> groups, List<ComponentDose> components, List<AreaDose> areas,
                       List<RoleDose> roles, List<TargetVerdict> targets, List<ConstraintVerdict> constraints, List<Person> people,
                       List<Task> tasks, List<RateUsed> rates, Optional<CostForecast> cost, WasteForecast waste,
                       List<PackageForecast> packages, List<Utilisation> utilisation, List<Finding> findings, List<String> cautions) {

    /**
     * @param taskHours   hours of all tasks one after the other
     * @param spanHours   working hours from the first to the last
     * @param personHours hours of all people, whether in the area or not
     * @param fieldHours  hours of all people inside the areas
     */
    public record Totals(int tasks, int workingDays, double spanHours, double taskHours, double personHours, double fieldHours,
                         double personUsv, double toolOnHours, double metresCut, double kerfKg) { }

    /** Tasks with one heading. */
    public record Group(String group, int tasks, double hours, double personHours, double personUsv) { }

    /** @param packedOn the day on which it is packed and its sources end; absent if no task packs it */
    public record ComponentDose(String component, String name, int tasks, LocalDate start, LocalDate finish, Optional<LocalDate> packedOn,
                                double hours, double personHours, double personUsv, double toolOnHours, double metresCut, double kerfKg) { }

    /** @param history highest rate of the first day and of each day on which tasks start there, in time */
    public record AreaDose(String area, String name, double personHours, double personUsv, double highestUsvPerH,
                           Optional<Double> ceilingUsvPerH, List<RateOn> history) { }

    /** An area's rate on a day. */
    public record RateOn(LocalDate on, double usvPerH) { }

    /** What the people of one role take together. */
    public record RoleDose(String role, int workers, double personHours, double personUsv) { }

    /** A collective dose against its target. */
    public record TargetVerdict(String code, Scope scope, Optional<String> of, double targetUsv, double personUsv, boolean kept) { }

    /** The highest individual dose in a constraint's scope against it. */
    public record ConstraintVerdict(String code, Scope scope, Optional<String> of, double constraintUsv, Optional<String> worker,
                                    double highestUsv, boolean kept) { }

    /**
     * @param allowanceUsv what the person may still take at the start: the least of what the campaign constraint and every limit leave;
     *                     absent if no bound is known
     */
    public record Person(String worker, String name, List<String> roles, double hours, double fieldHours, double usv, Verdict verdict,
                         Optional<Double> allowanceUsv, List<Period> periods, List<Bound> constraints, List<TaskDose> tasks,
                         List<GroupDose> groups, List<Stay> stays) { }

    /** The worst period of one rule. */
    public record Period(String rule, String period, PeriodDose worst) { }

    /** A constraint that covers the person's work. */
    public record Bound(String constraint, double constraintUsv, double plannedUsv, boolean kept) { }

    /** A person's part in a task. */
    public record TaskDose(String task, LocalDate on, double hours, double usv) { }

    /** A person's part in a group of tasks. */
    public record GroupDose(String group, double usv) { }

    /** How long the person's allowance lasts in an area at its rate on the first day; absent hours: dose does not limit the stay. */
    public record Stay(String area, double usvPerH, Optional<Double> hours) { }

    /**
     * @param startHour working hour from the campaign's start
     * @param waitHours how much later it starts because a resource was in use
     * @param waitsFor  which resource that was
     * @param highest   who takes most, and how much
     * @param stay      least time that somebody of the crew may stay where this task is hottest, from what is left of the allowance when it
     *                  starts
     */
    public record Task(String id, String name, String group, Optional<String> component, Optional<String> routine, LocalDate start,
                       LocalDate finish, double startHour, double hours, double floatHours, boolean critical, double waitHours,
                       Optional<String> waitsFor, List<String> after,
                       double personHours, double fieldHours, double personUsv, Optional<WorkerDose> highest, Optional<StayTime> stay,
                       List<StepDose> steps) { }

    /** One worker's dose. */
    public record WorkerDose(String worker, double usv) { }

    /** Stay time of one worker in one area. */
    public record StayTime(String worker, String area, double usvPerH, double remainingUsv, double hours) { }

    /**
     * {@code hours = mean quantity · mean hours each · difficulty}, unless replaced.
     *
     * @param replaced figures that somebody put in place of derived ones
     */
    public record StepDose(String code, String name, Step.Mode mode, boolean alongside, Driver driver, Likely quantity, double meanQuantity,
                           Likely hoursEach, double meanHoursEach, List<Difficulty.Used> factors, double difficulty, double hours,
                           Origin origin, List<Replaced> replaced, List<Line> lines) { }

    /**
     * {@code dose = hours · people · presence · rate}.
     *
     * @param rate id of the working of the rate; absent if the rate was replaced
     */
    public record Line(String role, String area, double people, double presence, double personHours, double fieldHours,
                       Optional<String> rate, double usvPerH, double personUsv, List<Replaced> replaced) { }
}
