package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.DoubleFunction;
import java.util.function.ToDoubleFunction;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Source;
import kerfbook.campaign.Survey;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Position;

/**
 * Calculated dose rates of one campaign. What is a source: every component with place and inventory, and every source with a
 * body. A component stands in place until it is cut free, then its pieces hang in the basket, one of them on the hook while it is
 * lifted, until it is packed and gone. Components do not shield one another.
 */
public final class CampaignRates {
    private final Campaign campaign;
    private final UnitRateCache units;
    private final Timeline timeline;
    private final Geometry geometry;
    private final PointRates rates;
    private final Pool pool;
    private final ToDoubleFunction<LocalDate> hourOf;
    private final DoubleFunction<LocalDate> dayOf;
    private final Map<String, PlacedSource> placed = new HashMap<>();
    private final Map<List<Boolean>, List<Layer>> layers = new HashMap<>();
    private final Map<OptionalDouble, Calibration.Fit> fits = new HashMap<>();

    /**
     * @param hourOf working hour at which a day of the campaign begins; 0 for days before it
     * @param dayOf  day of a working hour
     * @throws Incomplete if there is nothing to calculate from
     */
    public CampaignRates(Campaign campaign, UnitRateCache units, Timeline timeline, ToDoubleFunction<LocalDate> hourOf,
                         DoubleFunction<LocalDate> dayOf) {
        this.campaign = campaign;
        this.units = units;
        this.timeline = timeline;
        this.hourOf = hourOf;
        this.dayOf = dayOf;
        geometry = new Geometry(units.data());
        rates = new PointRates(units);
        pool = campaign.settings().pool().orElseThrow(() -> new Incomplete("settings.pool",
            "is missing. Calculated dose rates need the pool: its size, the deck and the water level."));
        requireComplete();
    }

    private void requireComplete() {
        List<Invalid.Fault> faults = new ArrayList<>();
        for (int i = 0; i < campaign.components().size(); i++) {
            Component component = campaign.components().get(i);
            if (component.calculable() && !units.data().materialNames().contains(component.material())) {
                faults.add(new Invalid.Fault("components[" + i + "].material", "\"" + component.material() + "\" is not in the table of materials, so "
                    + "that dose rates around it cannot be calculated. Choose one of " + String.join(", ", units.data().materialNames()) + "."));
            }
            if (component.calculable() && pool.basket().isEmpty() && timeline.freedAtHour().containsKey(component.code())) {
                faults.add(new Invalid.Fault("settings.pool.basket", "is missing: " + component.code() + " is cut free, and nothing says where its pieces wait."));
            }
            if (component.calculable() && pool.hook().isEmpty() && timeline.lifts().stream().anyMatch(lift -> lift.component().equals(component.code()))) {
                faults.add(new Invalid.Fault("settings.pool.hook", "is missing: pieces of " + component.code() + " are lifted, and nothing says where."));
            }
        }
        if (faults.isEmpty() && sources().isEmpty()) {
            faults.add(new Invalid.Fault("components", "give nothing to calculate a dose rate from. Give one of them a place and an inventory, or a "
                + "source a body."));
        }
        if (!faults.isEmpty()) {
            throw new Incomplete(faults);
        }
    }

    /** Codes of all calculated sources, components first. */
    public List<String> sources() {
        List<String> codes = new ArrayList<>();
        campaign.components().stream().filter(Component::calculable).forEach(component -> codes.add(component.code()));
        campaign.sources().stream().filter(source -> source.body().isPresent()).forEach(source -> codes.add(source.code()));
        return codes;
    }

    public Campaign campaign() {
        return campaign;
    }

    public Timeline timeline() {
        return timeline;
    }

    public UnitRateCache units() {
        return units;
    }

    /** Day of a working hour. */
    public LocalDate dayOf(double hour) {
        return dayOf.apply(hour);
    }

    /** @throws Invalid naming the field "area" if the campaign has none of that code */
    public Area area(String code) {
        return campaign.areas().stream().filter(area -> area.code().equals(code)).findFirst()
            .orElseThrow(() -> new Invalid("area", "there is no area \"" + code + "\" in this campaign."));
    }

    /** @throws Invalid naming the field "component" if there is none of that code, or it has no place or inventory */
    public Component component(String code) {
        Component found = campaign.components().stream().filter(component -> component.code().equals(code)).findFirst()
            .orElseThrow(() -> new Invalid("component", "there is no component \"" + code + "\" in this campaign."));
        if (!found.calculable()) {
            throw new Invalid("component", code + " has no place or no inventory, so that no dose rate can be calculated for it.");
        }
        return found;
    }

    /** Name of a calculated source. */
    String name(String code) {
        return campaign.components().stream().filter(component -> component.code().equals(code)).map(Component::name).findFirst()
            .or(() -> campaign.sources().stream().filter(source -> source.code().equals(code)).map(Source::name).findFirst()).orElseThrow();
    }

    public Pool pool() {
        return pool;
    }

    public Geometry geometry() {
        return geometry;
    }

    public PointRates rates() {
        return rates;
    }

    /** What stands at the start of a day. */
    public Situation situation(LocalDate on) {
        campaign.components().stream().flatMap(component -> component.inventory().stream()).map(Inventory::referenceOn).min(LocalDate::compareTo)
            .filter(on::isBefore).ifPresent(first -> {
                throw new Invalid("on", "is before the first reference day of the activities, " + first + ". What stood there before is not known.");
            });
        return situation(on, hourOf.applyAsDouble(on));
    }

    /** What stands on a day from a working hour on. */
    public Situation situation(LocalDate on, double hour) {
        List<PlacedSource> standing = new ArrayList<>();
        for (Component component : campaign.components()) {
            if (component.calculable() && !timeline.packed(component.code(), hour)) {
                standing.addAll(states(component, hour));
            }
        }
        for (Source source : campaign.sources()) {
            if (source.body().isPresent() && source.standsOn(on)) {
                standing.add(placed.computeIfAbsent(source.code(), none -> geometry.standing(source)));
            }
        }
        return new Situation(on, standing, layers(on));
    }

    /** Every component still in place, on a day. */
    public Situation inPlace(LocalDate on) {
        List<PlacedSource> standing = new ArrayList<>();
        campaign.components().stream().filter(Component::calculable)
            .forEach(component -> standing.add(placed.computeIfAbsent(component.code(), none -> geometry.inPlace(component))));
        situation(on, 0).sources().stream().filter(source -> source.state() == SourceState.STANDING).forEach(standing::add);
        return new Situation(on, standing, layers(on));
    }

    private List<PlacedSource> states(Component component, double hour) {
        Optional<Timeline.Lift> lift = timeline.lift(component.code(), hour);
        if (lift.isEmpty() && !timeline.freed(component.code(), hour)) {
            return List.of(placed.computeIfAbsent(component.code(), none -> geometry.inPlace(component)));
        }
        List<PlacedSource> pieces = new ArrayList<>();
        if (!timeline.freed(component.code(), hour)) {
            pieces.add(placed.computeIfAbsent(component.code(), none -> geometry.inPlace(component)));
        } else if (lift.isEmpty() || component.pieces() > 1) {
            double share = lift.isEmpty() ? 1 : 1 - 1.0 / component.pieces();
            pieces.add(placed.computeIfAbsent(component.code() + "/basket/" + share, none -> geometry.inBasket(component, basket(component), share)));
        }
        lift.ifPresent(runs -> pieces.add(placed.computeIfAbsent(component.code() + "/hook/" + runs.coverMm(),
            none -> geometry.onHook(component, pool.hook().orElseThrow(), pool.waterLevelMm(), runs.coverMm()))));
        return pieces;
    }

    private Pool.Basket basket(Component component) {
        return pool.basket().orElseThrow(() -> new Incomplete("settings.pool.basket", "is missing: nothing says where the pieces of "
            + component.code() + " wait."));
    }

    private List<Layer> layers(LocalDate on) {
        return layers.computeIfAbsent(campaign.shields().stream().map(shield -> shield.standsOn(on)).toList(),
            none -> Surroundings.of(pool, pool.waterLevelMm(), campaign.shields(), on));
    }

    /** The layers of a day with the water at another level. */
    public List<Layer> layers(LocalDate on, double levelMm) {
        return Surroundings.of(pool, levelMm, campaign.shields(), on);
    }

    /**
     * The place for which an area's rate is calculated.
     *
     * @throws Incomplete if it has none, or it lies in the concrete around the pool
     */
    public Position point(String area) {
        for (int i = 0; i < campaign.areas().size(); i++) {
            Area found = campaign.areas().get(i);
            if (found.code().equals(area)) {
                int index = i;
                Position point = Surroundings.position(found.sketch().orElseThrow(() -> new Incomplete("areas[" + index + "].sketch",
                    "is missing. A calculated dose rate needs to know where " + area + " is.")));
                if (Surroundings.inConcrete(pool, point)) {
                    throw new Incomplete("areas[" + index + "].sketch", "lies below the deck outside the pool. Rooms there are not described, so that no "
                        + "rate can be calculated for " + area + "; take it from surveys.");
                }
                return point;
            }
        }
        throw new Invalid("area", "there is no area \"" + area + "\" in this campaign.");
    }

    /** Areas with a place that is not in the concrete. */
    public List<Area> calculableAreas() {
        return campaign.areas().stream().filter(area -> area.sketch().isPresent()
            && !Surroundings.inConcrete(pool, Surroundings.position(area.sketch().get()))).toList();
    }

    /** Day on which the plan packs a component. */
    public LocalDate packedOn(String component) {
        return dayOf.apply(Math.max(0, timeline.packedAtHour().get(component) - 1e-6));
    }

    /** Rate in an area from all that stands, without background, calibrated where the area says so. */
    public CalculatedRate at(Area area, LocalDate on, double hour) {
        return at(area, situation(on, hour));
    }

    public CalculatedRate at(Area area, Situation situation) {
        try {
            return rates.at(point(area.code()), situation, factors(area));
        } catch (Invalid e) {
            if (e.faults().get(0).field().equals("point")) {
                throw new Invalid("areas[" + campaign.areas().indexOf(area) + "].sketch", e.faults().get(0).detail());
            }
            throw e;
        }
    }

    /** Factors of the calibration for calibrated areas, none for all others. */
    public Map<String, Double> factors(Area area) {
        return area.rateFrom() == Area.RateFrom.CALIBRATED ? calibration().bySource() : Map.of();
    }

    /** Factors for a point that belongs to no area: those of the calibration where there is one. */
    public Map<String, Double> factors() {
        return calibrated() ? calibration().bySource() : Map.of();
    }

    public boolean calibrated() {
        return campaign.areas().stream().anyMatch(area -> area.rateFrom() == Area.RateFrom.CALIBRATED);
    }

    /** Background of an area and all that stands, at the area's place. */
    public double withBackground(Area area, Situation situation) {
        return area.backgroundUsvPerH() + at(area, situation).usvPerH();
    }

    /** The fit that calibrated areas use. */
    public Calibration.Fit calibration() {
        return calibration(OptionalDouble.of(Calibration.USUAL_PRIOR_SPREAD));
    }

    /** The fit with another prior spread, or plain. */
    public Calibration.Fit calibration(OptionalDouble priorSpread) {
        if (!calibrated()) {
            throw new Incomplete("areas", "hold none whose rate is calibrated, so that there is nothing to fit. Say so of one that has a survey.");
        }
        return fits.computeIfAbsent(priorSpread, prior -> Calibration.fit(readings(), sources(), prior));
    }

    /** Every point of every survey of a calibrated area, with what each source was calculated to give there that day. */
    public List<Calibration.Reading> readings() {
        Map<String, Area> calibrated = new LinkedHashMap<>();
        campaign.areas().stream().filter(area -> area.rateFrom() == Area.RateFrom.CALIBRATED).forEach(area -> calibrated.put(area.code(), area));
        List<Calibration.Reading> readings = new ArrayList<>();
        for (int i = 0; i < campaign.surveys().size(); i++) {
            Survey survey = campaign.surveys().get(i);
            Area area = calibrated.get(survey.area());
            if (area == null) {
                continue;
            }
            Situation then = situation(survey.surveyedOn());
            for (int k = 0; k < survey.points().size(); k++) {
                readings.add(reading(survey, survey.points().get(k), area, then, "surveys[" + i + "].points[" + k + "].place"));
            }
        }
        return readings;
    }

    private Calibration.Reading reading(Survey survey, Survey.Point read, Area area, Situation then, String field) {
        Position point = read.place().map(Surroundings::position).orElseGet(() -> point(area.code()));
        if (Surroundings.inConcrete(pool, point)) {
            throw new Incomplete(field, "lies below the deck outside the pool. Rooms there are not described.");
        }
        Map<String, Double> parts = new HashMap<>();
        try {
            for (RatePart part : rates.at(point, then, Map.of()).parts()) {
                parts.merge(part.source(), part.usvPerH(), Double::sum);
            }
        } catch (Invalid e) {
            throw e.faults().get(0).field().equals("point") ? new Invalid(field, e.faults().get(0).detail()) : e;
        }
        return new Calibration.Reading(survey.code(), read.name(), area.code(), survey.surveyedOn(), read.usvPerH(), area.backgroundUsvPerH(),
            survey.gsd(), parts);
    }
}
