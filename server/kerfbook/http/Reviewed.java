package kerfbook.http;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import kerfbook.campaign.Campaign;
import kerfbook.document.Documents;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.TaskProgress;
import kerfbook.protection.ReviewTrigger;
import kerfbook.quantity.Invalid;
import kerfbook.review.Circumstances;
import kerfbook.review.Register;
import kerfbook.review.Step;
import kerfbook.store.Entries;
import kerfbook.store.Reviews;
import kerfbook.store.Stored;
import kerfbook.tables.ReviewTriggers;

/** Where the reviews of a campaign stand today: its steps held against its forecast, its surveys and its log. */
final class Reviewed {
    static final Map<String, List<ReviewTrigger>> PRESETS = ReviewTriggers.read();
    private static final String AS_PLANNED = "The plan as it is: it has no shields to be left out.";
    private static final String UNSHIELDED = "The plan without its shields.";
    private static final String CANNOT = "The plan as it is: without its shields it cannot be forecast.";

    /** Forecasts of one version of a campaign. */
    private record Known(long version, Campaign campaign, Forecast forecast, Forecast before, String how) { }

    private final Plans plans;
    private final Reviews reviews;
    private final Entries entries;
    private final Today day;
    private final Map<Long, Known> known = new ConcurrentHashMap<>();
    private final Lately<Register> lately = new Lately<>();

    Reviewed(Plans plans, Reviews reviews, Entries entries, Today day) {
        this.day = day;
        this.plans = plans;
        this.reviews = reviews;
        this.entries = entries;
    }

    LocalDate today(long id) {
        return day.of(id);
    }

    Campaign campaign(long id) {
        return known(id).campaign();
    }

    Forecast forecast(long id) {
        return known(id).forecast();
    }

    /** What an authorisation is held against now. */
    Circumstances circumstances(long id) {
        return new Circumstances(today(id), known(id).campaign().surveys(), entries.current(id));
    }

    Register register(long id) {
        Known of = known(id);
        Circumstances now = circumstances(id);
        List<Step> steps = reviews.list(id);
        List<TaskProgress> progress = entries.progress(id);
        return lately.get(id, now.entries(), List.of(of.version(), now.today(), steps, progress),
            () -> Register.of(steps, new Register.Known(of.forecast(), of.before(), of.how(), PRESETS, now, progress)));
    }

    /** What somebody must decide; nothing while the plan cannot be forecast. */
    List<Finding> findings(long id) {
        try {
            return register(id).findings();
        } catch (Refused unfinished) {
            return List.of();
        }
    }

    private Known known(long id) {
        Stored stored = plans.campaigns().get(id);
        Known at = known.get(id);
        if (at == null || at.version() != stored.version()) {
            at = read(stored);
            known.put(id, at);
        }
        return at;
    }

    private Known read(Stored stored) {
        Campaign campaign = plans.campaign(stored);
        Forecast forecast;
        try {
            forecast = plans.forecastOf(stored);
        } catch (Invalid invalid) {
            throw new Refused(Problem.of(422, "The plan cannot be forecast yet, so that nobody can say which reviews are due.", invalid.faults()));
        }
        if (campaign.shields().isEmpty()) {
            return new Known(stored.version(), campaign, forecast, forecast, AS_PLANNED);
        }
        try {
            Campaign bare = campaign.shielded(List.of());
            return new Known(stored.version(), campaign, forecast, Estimate.of(bare, plans.basis(), Documents.digest(bare)), UNSHIELDED);
        } catch (Invalid needed) {
            return new Known(stored.version(), campaign, forecast, forecast, CANNOT);
        }
    }
}
