package kerfbook.http;

import io.javalin.http.Context;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Worker;
import kerfbook.document.Json;
import kerfbook.protection.Assignment;
import kerfbook.protection.Category;
import kerfbook.protection.Constraint;
import kerfbook.protection.DatedDose;
import kerfbook.protection.DoseQuantity;
import kerfbook.protection.DoseRecord;
import kerfbook.protection.ExposedWorker;
import kerfbook.protection.IndividualCheck;
import kerfbook.protection.Received;
import kerfbook.protection.ReviewTrigger;
import kerfbook.protection.RuleSet;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/** One person before one assignment, and the job's figures against the triggers of a review. Nothing of it is kept. */
final class IndividualChecking {
    private static final int LEAST_AGE = 18;

    /**
     * @param worker  somebody of the campaign, whose record and log count for the effective dose
     * @param ruleSet left out: the campaign's
     * @param start   first day of the campaign; goes without {@code worker} only, whose campaign's start counts
     */
    private record Asked(Optional<String> worker, Optional<String> ruleSet, Optional<LocalDate> bornOn, Optional<Category> category, Optional<Integer> leastAge,
                         List<Known> records, Optional<LocalDate> start, List<Planned> planned, List<Planned> upper, Optional<Constraint> constraint,
                         Optional<Double> dailyAlarmUsv, Optional<Job> job) { }

    /** What one person has received of one quantity. */
    private record Known(DoseQuantity quantity, Optional<Integer> exposedSince, Optional<Double> earlierUsv, List<Worker.YearDose> years,
                         List<Worker.MonthDose> months, List<DatedDose> logged, String source) {
        DoseRecord record() {
            Map<Integer, Received> yearly = new HashMap<>();
            Require.list(years, "years").forEach(year -> yearly.put(year.year(), new Received(year.usv(), source)));
            Map<YearMonth, Received> monthly = new HashMap<>();
            Require.list(months, "months").forEach(month -> monthly.put(month.month(), new Received(month.usv(), source)));
            return new DoseRecord(exposedSince, earlierUsv.map(usv -> new Received(usv, source)), yearly, monthly, logged);
        }
    }

    private record Planned(DoseQuantity quantity, LocalDate date, double usv) { }

    /** Figures of a job before controls. */
    private record Job(Optional<String> preset, Optional<Double> levelUsv, Optional<Double> individualUsv, Optional<Double> personUsv, Optional<Double> usvPerH,
                       Optional<Double> airborne, Optional<Double> contamination, Optional<Integer> potentialReleases) { }

    private record Answer(IndividualCheck check, List<ReviewTrigger.Finding> triggers) { }

    private final Plans plans;
    private final Reviewed reviewed;

    IndividualChecking(Plans plans, Reviewed reviewed) {
        this.plans = plans;
        this.reviewed = reviewed;
    }

    void check(Context ctx) {
        Address.plain(ctx);
        ReviewRoutes.requireOfficer(ctx);
        Asked asked = Json.read(Body.of(ctx), Asked.class);
        Campaign campaign = plans.campaign(plans.campaigns().get(Address.id(ctx)));
        String code = asked.ruleSet().orElse(campaign.settings().ruleSet());
        RuleSet rules = plans.basis().ruleSets().get(code);
        if (rules == null) {
            throw new Invalid("rule_set", "must be one of " + String.join(", ", plans.basis().ruleSets().keySet()) + ".");
        }
        if (asked.worker().isPresent() == asked.start().isPresent()) {
            throw new Invalid("start", asked.start().isPresent() ? "does not go with a worker of the campaign, whose start counts."
                : "is missing. Give the first day of the campaign, or name a worker of it.");
        }
        LocalDate start = asked.start().orElse(campaign.settings().start());
        Map<DoseQuantity, DoseRecord> records = records(asked);
        asked.worker().ifPresent(worker -> {
            if (records.put(DoseQuantity.EFFECTIVE_DOSE, own(Address.id(ctx), campaign, worker)) != null) {
                throw new Invalid("records", "hold the effective dose, which is that of the worker already. Take one of them out.");
            }
        });
        OptionalDouble alarm = asked.dailyAlarmUsv().map(OptionalDouble::of).orElse(OptionalDouble.empty());
        Assignment assignment = new Assignment(start, doses(asked.planned(), "planned"), doses(asked.upper(), "upper"), asked.constraint(), alarm);
        IndividualCheck check = IndividualCheck.of(new ExposedWorker(asked.bornOn(), asked.category(), records), assignment, rules,
            asked.leastAge().orElse(LEAST_AGE));
        Routes.json(ctx, Json.bytes(new Answer(check, asked.job().map(IndividualChecking::triggers).orElse(List.of()))));
    }

    private static Map<DoseQuantity, DoseRecord> records(Asked asked) {
        Map<DoseQuantity, DoseRecord> records = new EnumMap<>(DoseQuantity.class);
        List<Known> given = Require.list(asked.records(), "records");
        for (int i = 0; i < given.size(); i++) {
            try {
                if (records.put(given.get(i).quantity(), given.get(i).record()) != null) {
                    throw new Invalid("quantity", "stands in this list twice.");
                }
            } catch (Invalid invalid) {
                throw invalid.under("records[" + i + "]");
            }
        }
        return records;
    }

    private DoseRecord own(long id, Campaign campaign, String code) {
        Worker worker = campaign.workers().stream().filter(each -> each.code().equals(code)).findFirst()
            .orElseThrow(() -> new Invalid("worker", "there is no person \"" + code + "\" in this campaign."));
        return worker.record().with(reviewed.circumstances(id).entries().stream().filter(entry -> entry.worker().equals(code))
            .map(entry -> new DatedDose(entry.on(), entry.usv())).toList());
    }

    private static Map<DoseQuantity, List<DatedDose>> doses(List<Planned> planned, String field) {
        Map<DoseQuantity, List<DatedDose>> doses = new EnumMap<>(DoseQuantity.class);
        List<Planned> given = Require.list(planned, field);
        for (int i = 0; i < given.size(); i++) {
            try {
                doses.computeIfAbsent(given.get(i).quantity(), none -> new ArrayList<>()).add(new DatedDose(given.get(i).date(), given.get(i).usv()));
            } catch (Invalid invalid) {
                throw invalid.under(field + "[" + i + "]");
            }
        }
        return doses;
    }

    private static List<ReviewTrigger.Finding> triggers(Job job) {
        List<ReviewTrigger> preset = Reviewed.PRESETS.get(job.preset().orElse("doe"));
        if (preset == null) {
            throw new Invalid("job.preset", "must be one of " + String.join(", ", Reviewed.PRESETS.keySet()) + ".");
        }
        Map<ReviewTrigger.Kind, Double> figures = new EnumMap<>(ReviewTrigger.Kind.class);
        job.individualUsv().ifPresent(usv -> figures.put(ReviewTrigger.Kind.INDIVIDUAL_DOSE, usv));
        if (job.individualUsv().isPresent() && job.levelUsv().isPresent()) {
            figures.put(ReviewTrigger.Kind.INDIVIDUAL_SHARE_OF_LEVEL, ReviewTrigger.shareOfLevel(job.individualUsv().get(), job.levelUsv().get()));
        }
        job.personUsv().ifPresent(usv -> figures.put(ReviewTrigger.Kind.COLLECTIVE_DOSE, usv));
        job.usvPerH().ifPresent(rate -> figures.put(ReviewTrigger.Kind.DOSE_RATE, rate));
        job.airborne().ifPresent(times -> figures.put(ReviewTrigger.Kind.AIRBORNE, times));
        job.contamination().ifPresent(times -> figures.put(ReviewTrigger.Kind.CONTAMINATION, times));
        job.potentialReleases().ifPresent(ways -> figures.put(ReviewTrigger.Kind.POTENTIAL_RELEASES, ways.doubleValue()));
        return preset.stream().map(trigger -> trigger.check(figures)).toList();
    }
}
