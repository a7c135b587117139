package kerfbook.trace;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.Routine;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.RateUsed;
import kerfbook.estimate.Replaced;

/** What each figure of a task was made of. A replaced figure rests on its replacement alone. */
public final class Figures {
    private final Campaign campaign;
    private final Forecast forecast;
    private final Forecast.Task task;
    private final List<Figure> figures = new ArrayList<>();

    private Figures(Campaign campaign, Forecast forecast, Forecast.Task task) {
        this.campaign = campaign;
        this.forecast = forecast;
        this.task = task;
    }

    /** @param forecast of this very campaign */
    public static List<Figure> of(Campaign campaign, Forecast forecast, Forecast.Task task) {
        Figures all = new Figures(campaign, forecast, task);
        task.steps().forEach(all::step);
        return List.copyOf(all.figures);
    }

    private void step(Forecast.StepDose step) {
        String self = self(step.code());
        List<String> quantity = replaced(step.replaced(), FigureOverride.Figure.QUANTITY).orElseGet(() -> quantity(step, self));
        List<String> each = replaced(step.replaced(), FigureOverride.Figure.HOURS_EACH).orElse(List.of(self));
        List<String> difficulty = replaced(step.replaced(), FigureOverride.Figure.DIFFICULTY)
            .orElseGet(() -> step.factors().isEmpty() ? List.of(self) : step.factors().stream().map(used -> "factors/" + used.factor()).toList());
        List<String> hours = replaced(step.replaced(), FigureOverride.Figure.HOURS).orElseGet(() -> together(quantity, each, difficulty));
        add(step, Optional.empty(), "quantity", step.meanQuantity(), unit(step.driver()), quantity);
        add(step, Optional.empty(), "hours-each", step.meanHoursEach(), "h", each);
        add(step, Optional.empty(), "difficulty", step.difficulty(), "", difficulty);
        add(step, Optional.empty(), "hours", step.hours(), "h", hours);
        for (int i = 0; i < step.lines().size(); i++) {
            line(step, i, step.lines().get(i), self, hours);
        }
    }

    private void line(Forecast.StepDose step, int i, Forecast.Line line, String self, List<String> hours) {
        List<String> people = replaced(line.replaced(), FigureOverride.Figure.PEOPLE).orElse(List.of(self));
        List<String> presence = replaced(line.replaced(), FigureOverride.Figure.PRESENCE).orElse(List.of(self));
        List<String> rate = replaced(line.replaced(), FigureOverride.Figure.USV_PER_H).orElseGet(() -> rate(line.rate().orElseThrow()));
        add(step, Optional.of(i), "people", line.people(), "", people);
        add(step, Optional.of(i), "presence", line.presence(), "", presence);
        add(step, Optional.of(i), "usv-per-h", line.usvPerH(), "µSv/h", rate);
        add(step, Optional.of(i), "person-usv", line.personUsv(), "person-µSv", together(hours, people, presence, rate));
    }

    private void add(Forecast.StepDose step, Optional<Integer> line, String figure, double value, String unit, List<String> inputs) {
        figures.add(new Figure(step.code(), line, figure, value, unit, inputs.stream().distinct().toList()));
    }

    private static Optional<List<String>> replaced(List<Replaced> done, FigureOverride.Figure figure) {
        return done.stream().filter(each -> each.figure() == figure).findFirst().map(each -> List.of("overrides/" + each.override()));
    }

    @SafeVarargs
    private static List<String> together(List<String>... inputs) {
        return Arrays.stream(inputs).flatMap(Collection::stream).distinct().toList();
    }

    /** Where the step itself stands. */
    private String self(String step) {
        if (task.routine().isEmpty()) {
            return "tasks/" + task.id().substring(task.id().indexOf('/') + 1) + "/" + step;
        }
        String[] parts = task.id().split("/");
        boolean weekly = routine().orElseThrow().applies() == Routine.Applies.WEEKLY;
        return "routines/" + task.routine().get() + "/" + parts[parts.length - (weekly ? 2 : 1)] + "/" + step;
    }

    private Optional<Routine> routine() {
        return campaign.routines().stream().filter(each -> Optional.of(each.code()).equals(task.routine())).findFirst();
    }

    private List<String> quantity(Forecast.StepDose step, String self) {
        return switch (step.driver()) {
            case CAMPAIGN, COUNT -> List.of(self);
            case COMPONENT, PACKAGE, PIECE -> divisions().toList();
            case CUT, METRE -> cuts().map(cut -> "cuts/" + cut.code()).toList();
            case TOOL_ON_HOUR, TOOL_CHANGE, KG_ABRASIVE, FILTER -> tools().toList();
            case FAULT -> Stream.concat(cuts().map(cut -> "techniques/" + cut.technique() + "/faults"), tools()).toList();
            case DRUM -> Stream.concat(tools(), components().map(component -> "components/" + component.code() + "/metal")).toList();
            case WAIT_HOUR -> Stream.of(tools(), Stream.of("settings/pool", "settings/pool/water"), releases(), components().map(component -> "components/"
                + component.code() + "/metal")).flatMap(each -> each).toList();
            case SHIFT -> shifts(step.code());
            case WEEK -> List.of("settings/calendar");
        };
    }

    /** Shifts follow from the hours of the other steps; of a weekly task from the calendar alone. */
    private List<String> shifts(String code) {
        List<String> inputs = new ArrayList<>(List.of("settings/calendar"));
        task.steps().stream().filter(other -> other.driver() != Driver.SHIFT && other.driver() != Driver.WEEK && !other.alongside() && !other.code().equals(code))
            .forEach(other -> inputs.add(self(other.code())));
        return inputs;
    }

    private Stream<Component> components() {
        return campaign.components().stream().filter(component -> task.component().isEmpty() || task.component().get().equals(component.code()));
    }

    private Stream<String> divisions() {
        return components().map(component -> "components/" + component.code() + "/division");
    }

    private Stream<Cut> cuts() {
        Optional<String> technique = routine().flatMap(Routine::technique);
        return campaign.cuts().stream().filter(cut -> task.component().isEmpty() || task.component().get().equals(cut.component()))
            .filter(cut -> technique.isEmpty() || technique.get().equals(cut.technique()));
    }

    private Stream<String> tools() {
        return Stream.concat(cuts().map(cut -> "techniques/" + cut.technique()), cuts().map(cut -> "cuts/" + cut.code()));
    }

    private Stream<String> releases() {
        return cuts().map(cut -> "settings/pool/water/" + cut.technique()).distinct()
            .filter(id -> campaign.settings().pool().flatMap(pool -> pool.water()).orElseThrow().releases().stream().anyMatch(release -> id.endsWith("/" + release.technique())));
    }

    private List<String> rate(String id) {
        RateUsed rate = forecast.rates().stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow();
        List<String> inputs = new ArrayList<>(List.of("areas/" + rate.area()));
        rate.survey().ifPresent(survey -> inputs.add("surveys/" + survey));
        rate.parts().forEach(part -> inputs.add("sources/" + part.source()));
        if (rate.survey().isEmpty() && rate.from() == Area.RateFrom.CALIBRATED) {
            campaign.surveys().stream().filter(survey -> campaign.areas().stream().anyMatch(area -> area.code().equals(survey.area())
                && area.rateFrom() == Area.RateFrom.CALIBRATED)).forEach(survey -> inputs.add("surveys/" + survey.code()));
        }
        if (!rate.calculated().isEmpty()) {
            rate.calculated().forEach(part -> inputs.add(calculated(part.source())));
            campaign.settings().pool().ifPresent(pool -> inputs.add("settings/pool"));
            campaign.shields().stream().filter(shield -> shield.standsOn(rate.on())).forEach(shield -> inputs.add("shields/" + shield.code()));
        }
        return inputs;
    }

    /** A component with place and inventory is a source under its own code, beside which the shares of a source may have the same. */
    private String calculated(String code) {
        return (campaign.component(code).filter(Component::calculable).isPresent() ? "components/" : "sources/") + code;
    }

    private static String unit(Driver driver) {
        return driver == Driver.COUNT ? "" : driver.toString();
    }
}
