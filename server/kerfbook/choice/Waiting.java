package kerfbook.choice;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Settings;
import kerfbook.campaign.Shield;
import kerfbook.campaign.Source;
import kerfbook.campaign.Worker;
import kerfbook.campaign.WorkingCalendar;
import kerfbook.quantity.Invalid;

/** A plan that is carried out later. */
final class Waiting {
    private Waiting() { }

    /**
     * The whole campaign so many years later: start, holidays, days before which nothing starts, sources and shields that end or stand from the start on.
     * Surveys and inventories stay where they are and decay. Doses received before are taken to be those of as many years later, since a year
     * that nobody has seen is not 0; that is for comparing, and never kept ({@link Options#carriedOut}).
     */
    static Campaign apply(Campaign campaign, int years) {
        Settings settings = campaign.settings();
        LocalDate start = settings.start();
        WorkingCalendar calendar = settings.calendar();
        try {
            Settings moved = settings.starting(start.plusYears(years), new WorkingCalendar(calendar.workingDays(), calendar.shiftsPerDay(),
                calendar.productiveHoursPerShift(), calendar.holidays().stream().map(day -> day.plusYears(years)).distinct().toList()));
            List<Source> sources = campaign.sources().stream().map(source -> source.endsOn().filter(end -> !end.isBefore(start)).isPresent()
                ? source.ending(source.endsOn().get().plusYears(years)) : source).toList();
            List<Shield> shields = campaign.shields().stream().map(shield -> new Shield(shield.code(), shield.name(), shield.material(), shield.right(), shield.across(),
                shield.up(), later(shield.from(), start, years), later(shield.until(), start, years))).toList();
            List<ManualTask> tasks = campaign.tasks().stream().map(task -> new ManualTask(task.code(), task.name(), task.group(), task.component(), task.after(),
                task.before(), task.lagHours(), task.notBefore().map(day -> day.plusYears(years)), task.needs(), task.steps())).toList();
            List<Worker> workers = campaign.workers().stream().map(worker -> new Worker(worker.code(), worker.name(), worker.roles(),
                worker.exposedSince().map(year -> year + years), worker.years().stream().map(each -> new Worker.YearDose(each.year() + years, each.usv())).toList(),
                worker.months().stream().map(each -> new Worker.MonthDose(each.month().plusYears(years), each.usv())).toList(), worker.doseSource())).toList();
            return campaign.moved(moved, sources, shields, tasks, workers);
        } catch (Invalid tooFar) {
            throw Options.refused("years", "moves the plan to where it cannot be: " + tooFar.faults().get(0).field() + " " + tooFar.faults().get(0).detail());
        }
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Optional<LocalDate> later(Optional<LocalDate> day, LocalDate start, int years) {
        return day.map(given -> given.isBefore(start) ? given : given.plusYears(years));
    }
}
