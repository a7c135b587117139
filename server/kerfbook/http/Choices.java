package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.logbook.Entry;
import kerfbook.logbook.LogPlan;
import kerfbook.logbook.LogPlan.Job;
import kerfbook.logbook.TaskProgress;
import kerfbook.store.Entries;

/** What somebody at a tablet chooses from: the open tasks with their areas and crews, today's first. Holds no dose of anybody. */
final class Choices {
    private record Task(String id, String name, Optional<String> component, String group, LocalDate start, LocalDate finish, boolean today,
                        Optional<Double> share, List<String> areas, Set<String> roles, List<String> crew, List<Named> steps) { }

    private record Named(String code, String name) { }

    private record Person(String code, List<String> roles) { }

    private record Area(String code, String name) { }

    /** What is refused outright, for the page to say at once. */
    private record Ranges(double mostHours, double mostUsv, double mostUsvPerH, int longestRemark) { }

    private record Answer(String name, boolean invented, Instant now, LocalDate today, double shiftHours, Ranges ranges, Optional<String> worker, boolean settles, boolean brings, List<Task> tasks,
                          List<Person> people, List<Area> areas) { }

    private Choices() { }

    static void answer(Context ctx, LogPlans plans, Entries entries, Today clock) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        LogPlan plan = plans.of(campaign);
        LocalDate today = clock.of(campaign);
        Map<String, TaskProgress> progress = new HashMap<>();
        entries.progress(campaign).forEach(each -> progress.put(each.task(), each));
        List<Task> tasks = new ArrayList<>();
        for (Job job : plan.tasks().values()) {
            TaskProgress come = progress.get(job.id());
            if (come == null || !come.closed()) {
                tasks.add(new Task(job.id(), job.name(), job.component(), job.group(), job.start(), job.finish(), away(job, today) == 0,
                    Optional.ofNullable(come).map(TaskProgress::share), List.copyOf(job.usvPerH().keySet()), job.roles(), job.crew(),
                    job.steps().entrySet().stream().map(each -> new Named(each.getKey(), each.getValue())).toList()));
            }
        }
        tasks.sort(Comparator.comparingLong(task -> away(plan.tasks().get(task.id()), today)));
        Caller caller = Caller.of(ctx);
        Routes.json(ctx, Json.bytes(new Answer(plan.name(), plan.invented(), EntryRoutes.now(), today, plan.shiftHours(),
            new Ranges(Entry.MOST_HOURS, Entry.MOST_USV, Entry.MOST_USV_PER_H, Entry.LONGEST_REMARK),
            caller.worker().filter(plan.people()::containsKey), EntryRoutes.sees(caller, ""),
            caller.role() == Role.RADIATION_PROTECTION_OFFICER || caller.role() == Role.PROJECT_MANAGER, tasks,
            plan.people().entrySet().stream().map(each -> new Person(each.getKey(), each.getValue())).toList(),
            plan.areas().values().stream().map(place -> new Area(place.code(), place.name())).toList())));
    }

    /** Days between today and the planned days of a task; 0 within them. */
    private static long away(Job job, LocalDate today) {
        return today.isBefore(job.start()) ? ChronoUnit.DAYS.between(today, job.start())
            : today.isAfter(job.finish()) ? ChronoUnit.DAYS.between(job.finish(), today) : 0;
    }
}
