package kerfbook.http;

import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.AcceptedFactor;
import kerfbook.logbook.Calibration;
import kerfbook.logbook.Learning;
import kerfbook.logbook.LearningSettings;
import kerfbook.logbook.Learnt;
import kerfbook.logbook.Log;
import kerfbook.outlook.Model;
import kerfbook.outlook.Outlook;
import kerfbook.outlook.Plan;
import kerfbook.outlook.Progress;
import kerfbook.outlook.Simulation;
import kerfbook.outlook.State;
import kerfbook.quantity.Invalid;
import kerfbook.store.Database;
import kerfbook.store.Entries;
import kerfbook.store.LearntFactors;
import kerfbook.store.Stored;

/** What the log of a stored campaign teaches, worked out from what is kept. Also what a run starts from. */
final class Lessons {
    private static final int RANGES_AT_HAND = 8;
    private static final int RANGE_TRIALS = 2_000;
    private static final long RANGE_SEED = 1;

    private final Plans plans;
    private final Entries entries;
    private final LearntFactors factors;
    private final Today today;
    private final Lately<Lesson> lately = new Lately<>();
    private final Map<String, Map<String, Calibration.Range>> ranges = new LinkedHashMap<>(RANGES_AT_HAND, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Map<String, Calibration.Range>> eldest) {
            return size() > RANGES_AT_HAND;
        }
    };

    Lessons(Plans plans, Entries entries, Database database, Today today) {
        this.plans = plans;
        this.entries = entries;
        this.factors = new LearntFactors(database);
        this.today = today;
    }

    /** A campaign with its forecast, its log and what they teach. */
    record Lesson(Stored stored, Campaign campaign, Forecast forecast, Log log, Learnt learnt, List<LearntFactors.Row> accepted) { }

    LearntFactors factors() {
        return factors;
    }

    Today today() {
        return today;
    }

    Lesson of(long id) {
        Stored stored = plans.campaigns().get(id);
        return of(stored, factors.list(id));
    }

    Lesson of(Stored stored, List<LearntFactors.Row> accepted) {
        Log log = new Log(entries.current(stored.id()), entries.words(stored.id()));
        LocalDate asOf = today.of(stored.id());
        return lately.get(stored.id(), log.entries(), List.of(stored.version(), log.progress(), accepted, asOf), () -> {
            Campaign campaign = plans.campaign(stored);
            Forecast forecast = forecast(stored);
            List<AcceptedFactor> held = accepted.stream().map(LearntFactors.Row::factor).toList();
            return new Lesson(stored, campaign, forecast, log, Learning.of(campaign, forecast, log, LearningSettings.USUAL, held, asOf), accepted);
        });
    }

    /** Where the work stands, with the factors that were accepted; the plan alone where nothing was logged or brought from elsewhere. */
    State state(long id, Campaign campaign, Basis basis) {
        Log log = new Log(entries.current(id), entries.words(id));
        List<AcceptedFactor> held = factors.list(id).stream().map(LearntFactors.Row::factor).toList();
        if (log.equals(Log.EMPTY) && held.isEmpty()) {
            return State.NONE;
        }
        Stored stored = plans.campaigns().get(id);
        if (campaign == plans.campaign(stored)) {   // the plan as it is, and not one that was frozen
            plans.forecastOf(stored);               // says itself what it lacks
            return of(id).learnt().state();
        }
        Forecast forecast = Estimate.of(campaign, basis, Documents.digest(campaign));
        return Learning.of(campaign, forecast, log, LearningSettings.USUAL, held, today.of(id)).state();
    }

    private Forecast forecast(Stored stored) {
        try {
            return plans.forecastOf(stored);
        } catch (Invalid invalid) {
            throw new Refused(Problem.of(422, "The plan is kept, but cannot be forecast as it is.", invalid.faults()));
        }
    }

    /** How many finished tasks fell inside the range that the plan alone gives them, drawn once for each plan. */
    Optional<Calibration> calibration(Lesson lesson) {
        if (lesson.learnt().tasks().isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Calibration.of(lesson.learnt().tasks(), ranges(lesson.campaign())));
    }

    private Map<String, Calibration.Range> ranges(Campaign campaign) {
        String digest = Documents.digest(campaign);
        synchronized (ranges) {
            return ranges.computeIfAbsent(digest, none -> {
                Outlook plan = Simulation.run(Model.of(campaign, plans.basis(), digest, State.NONE), new Plan(RANGE_SEED, RANGE_TRIALS, 1), Progress.UNWATCHED);
                Map<String, Calibration.Range> drawn = new LinkedHashMap<>();
                plan.tasks().forEach(task -> drawn.put(task.id(), Calibration.Range.of(task.usv().outcomes())));
                return drawn;
            });
        }
    }
}
