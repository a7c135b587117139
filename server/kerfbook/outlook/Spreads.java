package kerfbook.outlook;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride.Figure;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Uncertainty;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Wear;
import kerfbook.estimate.Difficulty;
import kerfbook.estimate.RateUsed;
import kerfbook.estimate.Resolved;
import kerfbook.exposure.Calibration;
import kerfbook.exposure.RatePart;
import kerfbook.quantity.Likely;

/**
 * Which input moves which figure. Log-normal spreads have the mean 1, so that the mean over all trials of a product of figures that do not
 * hang together is the forecast's.
 */
final class Spreads {
    private final Program program;
    private final State state;
    private final Pace pace;
    private final Map<String, Technique> techniques = new HashMap<>();
    private final Map<String, Survey> surveys = new HashMap<>();
    private final Map<String, String> names = new HashMap<>();
    private final Map<String, Calibration.Factor> calibrated = new HashMap<>();

    /** Geometric standard deviations that hold for the whole campaign, and which of them are assumptions. */
    record Pace(double crew, double survey, double source, boolean crewAssumed, boolean surveyAssumed, boolean sourceAssumed) {
        /** Judgement: how far a crew's pace on a whole campaign is off what was planned. */
        static final double USUAL_CREW_GSD = 1.15;
        /** Judgement: of a calculated activity that is usually off by half of itself, as the calibration takes it. */
        static final double USUAL_SOURCE_GSD = Math.exp(Math.sqrt(Math.log1p(Calibration.USUAL_PRIOR_SPREAD * Calibration.USUAL_PRIOR_SPREAD)));

        static Pace of(Campaign campaign) {
            Optional<Uncertainty> given = campaign.settings().uncertainty();
            Optional<Uncertainty.Gsd> crew = given.flatMap(Uncertainty::crewGsd);
            Optional<Uncertainty.Gsd> survey = given.flatMap(Uncertainty::surveyGsd);
            Optional<Uncertainty.Gsd> source = given.flatMap(Uncertainty::sourceGsd);
            return new Pace(or(crew, USUAL_CREW_GSD), or(survey, Calibration.USUAL_GSD), or(source, USUAL_SOURCE_GSD), assumed(crew), assumed(survey), assumed(source));
        }

        private static double or(Optional<Uncertainty.Gsd> given, double usual) {
            return given.map(Uncertainty.Gsd::value).orElse(usual);
        }

        private static boolean assumed(Optional<Uncertainty.Gsd> given) {
            return given.isEmpty() || given.get().origin().status().assumption();
        }
    }

    Spreads(Resolved resolved, State state, Program program) {
        this.program = program;
        this.state = state;
        Campaign campaign = resolved.campaign();
        pace = Pace.of(campaign);
        campaign.techniques().forEach(each -> techniques.put(each.code(), each));
        campaign.surveys().forEach(each -> surveys.put(each.code(), each));
        campaign.areas().forEach(each -> names.put("area/" + each.code(), each.name()));
        campaign.sources().forEach(each -> names.put("source/" + each.code(), each.name()));
        campaign.components().forEach(each -> names.put("source/" + each.code(), each.name()));
        resolved.calibration().ifPresent(fit -> fit.factors().forEach(factor -> calibrated.put(factor.source(), factor)));
    }

    /** Of a rate over that of the forecast. */
    int rate(RateUsed rate) {
        if (state.rates().containsKey(rate.area())) {
            return learnt("rate/" + rate.area(), "Learnt: dose rate, " + names.get("area/" + rate.area()), state.rates().get(rate.area()));
        }
        if (!(rate.usvPerH() > 0)) {
            return Program.ONE;
        }
        return switch (rate.from()) {
            case BACKGROUND -> Program.ONE;
            case SURVEY -> program.sum(List.of(survey(rate)), List.of((rate.usvPerH() - rate.backgroundUsvPerH()) / rate.usvPerH()));
            case CALCULATED, CALIBRATED -> {
                boolean fitted = rate.from() == kerfbook.campaign.Area.RateFrom.CALIBRATED;
                yield program.sum(rate.calculated().stream().map(part -> source(part, fitted)).toList(),
                    rate.calculated().stream().map(part -> part.usvPerH() / rate.usvPerH()).toList());
            }
        };
    }

    private int survey(RateUsed rate) {
        Optional<Double> gsd = surveys.get(rate.survey().orElseThrow()).gsd();
        int input = program.input(new Program.Input("survey/" + rate.area(), "Survey of " + names.get("area/" + rate.area()), Outlook.Kind.SURVEY,
            gsd.isEmpty() && pace.surveyAssumed()));
        return unbiased(input, Math.log(gsd.orElse(pace.survey())));
    }

    /** A fitted factor keeps the spread that the surveys leave it; one that they say nothing of, that of an activity nobody measured. */
    private int source(RatePart part, boolean fitted) {
        Calibration.Factor factor = calibrated.get(part.source());
        boolean known = fitted && factor != null && factor.spread().isPresent() && factor.factor() > 0;
        double relative = known ? factor.spread().get() / factor.factor() : 0;
        double s = known ? Math.sqrt(Math.log1p(relative * relative)) : Math.log(pace.source());
        int input = program.input(new Program.Input("source/" + part.source(), "Strength of " + names.getOrDefault("source/" + part.source(), part.source()),
            Outlook.Kind.SOURCE, !known && pace.sourceAssumed()));
        return unbiased(input, s);
    }

    /**
     * Of all that a step has in common with others: its quantity, its difficulty, the crew. The number of faults is drawn by itself. Hours that
     * somebody gave are what they are: neither the crew's pace nor what was learnt moves them.
     */
    int shared(Resolved.Task task, Resolved.Step step) {
        if (replaced(step, Figure.HOURS)) {
            return Program.ONE;
        }
        int factor = replaced(step, Figure.QUANTITY) || step.dose().driver() == Driver.FAULT ? Program.ONE : quantity(step);
        if (!replaced(step, Figure.DIFFICULTY)) {
            factor = program.product(factor, difficulty(step.dose().factors()));
        }
        Driver driver = step.dose().driver();
        boolean ownSpeed = driver == Driver.TOOL_ON_HOUR && step.parts().stream().allMatch(part -> state.speeds().containsKey(part.technique()));
        if (state.hours().containsKey(task.forecast().group()) && !ownSpeed) {
            String group = task.forecast().group();
            return program.product(factor, learnt("hours/" + group, "Learnt: hours of " + group, state.hours().get(group)));
        }
        return driver == Driver.TOOL_ON_HOUR || driver == Driver.WAIT_HOUR ? factor : program.product(factor, crew());
    }

    static boolean replaced(Resolved.Step step, Figure figure) {
        return step.dose().replaced().stream().anyMatch(each -> each.figure() == figure);
    }

    private int crew() {
        return unbiased(program.input(new Program.Input("crew", "Pace of the crew", Outlook.Kind.CREW, pace.crewAssumed())), Math.log(pace.crew()));
    }

    private int quantity(Resolved.Step step) {
        if (step.dose().driver() == Driver.WAIT_HOUR) {
            return pert(new Program.Input("water", "Waiting for clear water", Outlook.Kind.WATER, false), step.dose().quantity());
        }
        return together(step.dose().driver(), step.parts());
    }

    /** Of a quantity that several techniques make together. */
    int together(Driver driver, List<Resolved.Part> parts) {
        double all = parts.stream().mapToDouble(Resolved.Part::mean).sum();
        if (!(all > 0)) {
            return Program.ONE;
        }
        return program.sum(parts.stream().map(part -> used(driver, part)).toList(), parts.stream().map(part -> part.mean() / all).toList());
    }

    /** What a technique uses up: its time moves with its speed, what wears with its life or feed. */
    int used(Driver driver, Resolved.Part part) {
        Technique technique = techniques.get(part.technique());
        Wear wear = technique.wear();
        int time = time(technique, part.toolOnHours());
        return switch (driver) {
            case TOOL_ON_HOUR -> time;
            case TOOL_CHANGE -> {
                Likely life = wear.toolLifeH().or(wear::toolLifeM2).or(wear::toolLifeM).or(wear::toolLifeCuts).orElseThrow();
                int worn = wear(technique, "tool-life", "Tool life of ", life.dividing(1));
                yield wear.toolLifeH().isPresent() ? program.product(time, worn) : worn;
            }
            case KG_ABRASIVE -> abrasive(technique, time);
            case FILTER -> program.product(time, wear(technique, "filter-life", "Filter life of ", wear.filterLifeH().orElseThrow().dividing(1)));
            case DRUM -> {
                double solids = part.abrasiveKg() + part.kerfKg();
                int filled = solids > 0 ? program.sum(List.of(abrasive(technique, time)), List.of(part.abrasiveKg() / solids)) : Program.ONE;
                yield program.product(filled, wear(technique, "drum", "Filling of drums by ", wear.drumKg().orElseThrow().dividing(1)));
            }
            case FAULT -> program.product(time, pert(new Program.Input("faults/" + technique.code(), "Faults of " + technique.name(), Outlook.Kind.FAULTS,
                technique.whereFaults().status().assumption()), technique.faultsPerH().orElseThrow()));
            default -> throw new IllegalStateException(driver.name());
        };
    }

    private int abrasive(Technique technique, int time) {
        return technique.abrasiveKgPerMin().map(feed -> program.product(time, wear(technique, "feed", "Abrasive feed of ", feed))).orElse(Program.ONE);
    }

    private int time(Technique technique, Likely hours) {
        if (state.speeds().containsKey(technique.code())) {
            return learnt("speed/" + technique.code(), "Learnt: tool-on time of " + technique.name(), state.speeds().get(technique.code()));
        }
        return pert(new Program.Input("speed/" + technique.code(), "Tool-on time of " + technique.name(), Outlook.Kind.SPEED, false), hours);
    }

    private int wear(Technique technique, String what, String name, Likely figure) {
        return pert(new Program.Input(what + "/" + technique.code(), name + technique.name(), Outlook.Kind.WEAR, false), figure);
    }

    private int difficulty(List<Difficulty.Used> used) {
        int factor = Program.ONE;
        for (kerfbook.campaign.DifficultyFactor.Stage stage : kerfbook.campaign.DifficultyFactor.Stage.values()) {
            List<Difficulty.Used> its = used.stream().filter(each -> each.stage() == stage).toList();
            double whole = 1 + its.stream().mapToDouble(each -> each.meanPercent() / 100).sum();
            factor = program.product(factor, program.sum(
                its.stream().map(each -> pert(new Program.Input("difficulty/" + each.factor(), each.name(), Outlook.Kind.DIFFICULTY, false), each.percent())).toList(),
                its.stream().map(each -> each.meanPercent() / 100 / whole).toList()));
        }
        return factor;
    }

    private int pert(Program.Input input, Likely figure) {
        return Pert.width(figure) == 0 ? Program.ONE : program.pert(program.input(input), Pert.of(figure), Pert.width(figure));
    }

    private int learnt(String key, String name, Factor factor) {
        return program.logNormal(program.input(new Program.Input("learnt/" + key, name, Outlook.Kind.LEARNT, false)), factor.logMean(), factor.logSd());
    }

    /** Log-normal with the mean 1. */
    private int unbiased(int input, double s) {
        return program.logNormal(input, -s * s / 2, s);
    }
}
