package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Area;

/**
 * What each area's rate is after one component after the other is gone, in the order in which the plan packs them: everything
 * still there in place, all on one day, so that nothing but the removal changes the rate.
 */
public final class RemovalSequence {
    /** @param usvPerH background included */
    public record InArea(String area, double usvPerH, boolean extrapolated) { }

    /**
     * @param gone   the component that went last; absent for the beginning
     * @param goneOn day on which the plan packs it
     */
    public record Step(Optional<String> gone, Optional<LocalDate> goneOn, List<InArea> areas) { }

    /** @param areas whose rates can be calculated, whatever the forecast takes them from */
    public record Answer(LocalDate on, List<String> areas, List<Step> steps) { }

    private RemovalSequence() { }

    /** @param on day for which activities hold; left out: the first of the campaign */
    public static Answer of(CampaignRates rates, Optional<LocalDate> on) {
        LocalDate day = on.orElse(rates.campaign().settings().start());
        List<Area> areas = rates.calculableAreas();
        Situation left = rates.inPlace(day);
        List<Step> steps = new ArrayList<>();
        steps.add(new Step(Optional.empty(), Optional.empty(), inAreas(rates, areas, left)));
        List<String> order = rates.timeline().packedAtHour().entrySet().stream()
            .sorted(Comparator.<java.util.Map.Entry<String, Double>>comparingDouble(java.util.Map.Entry::getValue).thenComparing(java.util.Map.Entry::getKey))
            .map(java.util.Map.Entry::getKey).toList();
        for (String gone : order) {
            Situation before = left;
            left = before.without(source -> source.code().equals(gone));
            if (left.sources().size() < before.sources().size()) {
                steps.add(new Step(Optional.of(gone), Optional.of(rates.packedOn(gone)), inAreas(rates, areas, left)));
            }
        }
        return new Answer(day, areas.stream().map(Area::code).toList(), steps);
    }

    private static List<InArea> inAreas(CampaignRates rates, List<Area> areas, Situation situation) {
        return areas.stream().map(area -> {
            CalculatedRate rate = rates.at(area, situation);
            return new InArea(area.code(), area.backgroundUsvPerH() + rate.usvPerH(), rate.extrapolated());
        }).toList();
    }
}
