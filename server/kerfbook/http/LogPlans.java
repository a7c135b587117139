package kerfbook.http;

import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import kerfbook.logbook.LogPlan;
import kerfbook.quantity.Invalid;
import kerfbook.store.Stored;

/**
 * What may be logged, by campaign, worked out once for each version. While a plan is being changed and cannot be forecast, the last one
 * that could be counts: the work does not wait for the planners.
 */
final class LogPlans {
    private record Known(long version, LogPlan plan) { }

    private final Plans plans;
    private final Map<Long, Known> known = new ConcurrentHashMap<>();

    LogPlans(Plans plans) {
        this.plans = plans;
    }

    LogPlan of(long campaign) {
        long version = plans.campaigns().get(campaign).version();
        Known at = known.get(campaign);
        if (at == null || at.version() != version) {
            at = known.compute(campaign, (id, before) -> before != null && before.version() == version ? before : read(campaign, before));
        }
        return at.plan();
    }

    /** @throws kerfbook.store.NoSuchCampaign if there is none with this number */
    void require(long campaign) {
        plans.campaigns().get(campaign);
    }

    private Known read(long campaign, Known before) {
        Stored stored = plans.campaigns().get(campaign);
        try {
            return new Known(stored.version(), LogPlan.of(plans.campaign(stored), plans.forecastOf(stored)));
        } catch (Invalid invalid) {
            if (before != null) {
                return new Known(stored.version(), before.plan());
            }
            throw new Refused(Problem.of(422, "The plan cannot be forecast yet, so that nothing can be held against it. Keep the entry until it can.",
                invalid.faults()));
        }
    }
}
