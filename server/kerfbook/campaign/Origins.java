package kerfbook.campaign;

import java.util.ArrayList;
import java.util.List;
import kerfbook.cutting.Jet;
import kerfbook.quantity.Origin;

/** Every place of a plan that says where a figure comes from. */
public final class Origins {
    private final List<At> found = new ArrayList<>();

    /**
     * What one place says.
     *
     * @param field path of the origin in the document
     */
    public record At(String field, Origin origin) { }

    private Origins() { }

    public static List<At> of(Campaign campaign) {
        Origins all = new Origins();
        campaign.settings().uncertainty().ifPresent(all::uncertainty);
        campaign.settings().pool().flatMap(Pool::water).ifPresent(all::water);
        each("factors", campaign.factors(), (at, factor) -> all.add(at, factor.origin()));
        each("sources", campaign.sources(), (at, source) -> source.body().ifPresent(body -> all.add(at + ".body.inventory", body.inventory().origin())));
        each("techniques", campaign.techniques(), (at, technique) -> {
            all.add(at, technique.origin());
            technique.faultsOrigin().ifPresent(origin -> all.found.add(new At(at + ".faults_origin", origin)));
            technique.speed().flatMap(speed -> speed.jet()).map(Jet::machinability).ifPresent(numbers ->
                each(at + ".speed.jet.machinability", numbers, (place, number) -> all.add(place, number.origin())));
        });
        each("routines", campaign.routines(), (at, routine) -> each(at + ".tasks", routine.tasks(), (task, of) -> all.steps(task, of.steps())));
        each("components", campaign.components(), (at, component) -> component.inventory().ifPresent(inventory -> all.add(at + ".inventory", inventory.origin())));
        each("tasks", campaign.tasks(), (at, task) -> all.steps(at, task.steps()));
        each("prices", campaign.prices(), (at, price) -> all.add(at, price.origin()));
        return List.copyOf(all.found);
    }

    private void water(PoolWater water) {
        add("settings.pool.water", water.origin());
        each("settings.pool.water.releases", water.releases(), (at, release) -> add(at, release.origin()));
    }

    private void uncertainty(Uncertainty given) {
        given.crewGsd().ifPresent(gsd -> add("settings.uncertainty.crew_gsd", gsd.origin()));
        given.surveyGsd().ifPresent(gsd -> add("settings.uncertainty.survey_gsd", gsd.origin()));
        given.sourceGsd().ifPresent(gsd -> add("settings.uncertainty.source_gsd", gsd.origin()));
    }

    private void steps(String at, List<Step> steps) {
        each(at + ".steps", steps, (place, step) -> add(place, step.origin()));
    }

    private void add(String at, Origin origin) {
        found.add(new At(at + ".origin", origin));
    }

    @FunctionalInterface
    private interface Visit<T> {
        void at(String place, T what);
    }

    private static <T> void each(String list, List<T> things, Visit<T> visit) {
        for (int i = 0; i < things.size(); i++) {
            visit.at(list + "[" + i + "]", things.get(i));
        }
    }
}
