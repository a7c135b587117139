package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.FigureOverride.Figure;
import kerfbook.campaign.Staff;

/** Makes the dose lines of a task: hours × people × presence × rate. */
final class Lines {
    private final AreaRates rates;
    private final Overrides overrides;
    private final Crew crew;
    private final Ledger ledger;

    Lines(AreaRates rates, Overrides overrides, Crew crew, Ledger ledger) {
        this.rates = rates;
        this.overrides = overrides;
        this.crew = crew;
        this.ledger = ledger;
    }

    /** The steps of a task with their lines; each worker's part goes into the ledger. */
    List<Forecast.StepDose> of(PlannedTask task, List<StepHours> steps, LocalDate on, double startHour) {
        List<Forecast.StepDose> done = new ArrayList<>();
        for (int i = 0; i < steps.size(); i++) {
            StepHours step = steps.get(i);
            List<Forecast.Line> lines = new ArrayList<>();
            for (int k = 0; k < step.step().staff().size(); k++) {
                lines.add(line(task, step, step.step().staff().get(k), on, startHour, task.at() + ".steps[" + i + "].staff[" + k + "].people"));
            }
            done.add(new Forecast.StepDose(step.step().code(), step.step().name(), step.step().mode(), step.step().alongside(), step.step().driver(),
                step.quantity(), step.meanQuantity(), step.step().hoursEach(), step.meanHoursEach(), step.factors(), step.difficulty(), step.hours(),
                step.step().origin(), step.replaced(), List.copyOf(lines)));
        }
        return List.copyOf(done);
    }

    private Forecast.Line line(PlannedTask task, StepHours step, Staff staff, LocalDate on, double startHour, String at) {
        List<Replaced> replaced = new ArrayList<>();
        double people = replace(Figure.PEOPLE, staff.people(), task, step, staff, replaced);
        double presence = replace(Figure.PRESENCE, staff.presence(), task, step, staff, replaced);
        Optional<FigureOverride> given = overrides.find(task.id(), step.step().code(), Figure.USV_PER_H, staff.role());
        RateUsed worked = rates.at(staff.area(), on, startHour);
        double rate = replace(Figure.USV_PER_H, worked.usvPerH(), task, step, staff, replaced);
        double personHours = people * step.hours();
        double fieldHours = personHours * presence;
        double personUsv = fieldHours * rate;
        List<Crew.Share> shares = crew.of(staff.role(), task);
        crew.requireEnough(people, shares, staff.role(), at);
        for (Crew.Share share : shares) {
            ledger.add(share.worker(), task, on, personHours * share.share(), fieldHours * share.share(), personUsv * share.share());
        }
        return new Forecast.Line(staff.role(), staff.area(), people, presence, personHours, fieldHours,
            given.isPresent() ? Optional.empty() : Optional.of(worked.id()), rate, personUsv, List.copyOf(replaced));
    }

    private double replace(Figure figure, double derived, PlannedTask task, StepHours step, Staff staff, List<Replaced> replaced) {
        Optional<FigureOverride> override = overrides.find(task.id(), step.step().code(), figure, staff.role());
        if (override.isEmpty()) {
            return derived;
        }
        replaced.add(Replaced.of(override.get(), derived));
        return override.get().value();
    }
}
