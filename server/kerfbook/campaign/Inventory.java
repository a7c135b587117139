package kerfbook.campaign;

import java.time.LocalDate;
import java.util.List;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/** Activity of a component on a reference day. */
public record Inventory(LocalDate referenceOn, List<Activity> activities, Origin origin) {

    /** One nuclide's activity in Bq. */
    public record Activity(String nuclide, double becquerel) {
        public Activity {
            Require.name(nuclide, "nuclide");
            Require.positive(becquerel, 1e21, "becquerel", "Bq");
        }
    }

    public Inventory {
        Require.day(referenceOn, "reference_on");
        activities = Require.atLeastOne(activities, "activities");
        Require.distinct(activities.stream().map(Activity::nuclide).toList(), "activities");
        Require.present(origin, "origin");
    }
}
