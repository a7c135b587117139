package kerfbook.exposure;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Area;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Shield;
import kerfbook.shielding.Axis;
import kerfbook.shielding.Position;
import kerfbook.shielding.Shape;

/** The pool, what stands in it and what that gives in every area, on one day: all that a section sketch shows. */
public final class Overview {
    /**
     * What stands, as it is calculated; sizes are those of the outline along each direction.
     *
     * @param form      ring, cylinder, box or sphere
     * @param innerDiameterM of a ring
     * @param becquerel activity on the day, all nuclides together
     */
    public record Standing(String code, String name, SourceState state, String form, double rightM, double acrossM, double upM, double sizeRightM,
                           double sizeAcrossM, double sizeUpM, Optional<Double> innerDiameterM, double becquerel, List<String> notes) { }

    /**
     * @param calculatedUsvPerH background and all that stands, every factor 1
     * @param calibratedUsvPerH the same with the factors of the calibration, if there is one
     * @param calculated        parts behind the calculated rate
     * @param calibrated        parts behind the calibrated rate, empty without calibration
     */
    public record InArea(String area, String name, Area.RateFrom rateFrom, Area.Place place, double backgroundUsvPerH, Optional<Double> ceilingUsvPerH,
                         double calculatedUsvPerH, Optional<Double> calibratedUsvPerH, boolean extrapolated, List<RatePart> calculated,
                         List<RatePart> calibrated) { }

    /** @param notCalculable areas without a place, or with one in the concrete below the deck */
    public record Answer(LocalDate on, Pool pool, List<Shield> shields, List<Standing> sources, List<InArea> areas, List<String> notCalculable,
                         List<String> notes) { }

    /** One area's parts with their photon lines, every factor as the area has it. */
    public record Detail(LocalDate on, String area, Area.RateFrom rateFrom, double backgroundUsvPerH, double usvPerH, boolean extrapolated,
                         List<DetailPart> parts, List<String> notes) { }

    /** A part with its lines; the lines are without the factor. */
    public record DetailPart(RatePart part, List<DoseRate.Line> lines, List<String> notes) { }

    private static final List<String> NOTES = List.of(
        "Components do not shield one another, and what is between them counts as water or air: where one stands in front of another the rate is too high.",
        "Rooms below the deck outside the pool are not described.",
        "Streaming through gaps, skyshine and scatter from walls and floors are not covered.");

    private Overview() { }

    public static Answer of(CampaignRates rates, Optional<LocalDate> asked) {
        LocalDate on = asked.orElse(rates.campaign().settings().start());
        Situation now = rates.situation(on);
        Map<String, Double> factors = rates.factors();
        List<InArea> areas = new ArrayList<>();
        for (Area area : rates.calculableAreas()) {
            Position point = rates.point(area.code());
            CalculatedRate one = rates.rates().at(point, now, Map.of());
            Optional<CalculatedRate> fitted = rates.calibrated() ? Optional.of(rates.rates().at(point, now, factors)) : Optional.empty();
            areas.add(new InArea(area.code(), area.name(), area.rateFrom(), area.sketch().orElseThrow(), area.backgroundUsvPerH(), area.ceilingUsvPerH(),
                area.backgroundUsvPerH() + one.usvPerH(), fitted.map(rate -> area.backgroundUsvPerH() + rate.usvPerH()), one.extrapolated(), one.parts(),
                fitted.map(CalculatedRate::parts).orElse(List.of())));
        }
        List<String> calculable = areas.stream().map(InArea::area).toList();
        return new Answer(on, rates.pool(), rates.campaign().shields().stream().filter(shield -> shield.standsOn(on)).toList(),
            now.sources().stream().map(source -> standing(rates, source, on)).toList(), areas,
            rates.campaign().areas().stream().map(Area::code).filter(code -> !calculable.contains(code)).toList(), NOTES);
    }

    public static Detail of(CampaignRates rates, String code, Optional<LocalDate> asked) {
        Area area = rates.area(code);
        LocalDate on = asked.orElse(rates.campaign().settings().start());
        Situation now = rates.situation(on);
        CalculatedRate rate = rates.at(area, now);
        List<DetailPart> parts = new ArrayList<>();
        for (int i = 0; i < now.sources().size(); i++) {
            PlacedSource source = now.sources().get(i);
            parts.add(new DetailPart(rate.parts().get(i), rates.rates().answer(source, now.layers(), rates.point(code), on).lines().stream()
                .map(DoseRate.Line::of).toList(), source.notes()));
        }
        return new Detail(on, code, area.rateFrom(), area.backgroundUsvPerH(), area.backgroundUsvPerH() + rate.usvPerH(), rate.extrapolated(), parts, NOTES);
    }

    private static Standing standing(CampaignRates rates, PlacedSource source, LocalDate on) {
        Position centre = source.geometry().centre();
        double[] size = size(source.geometry().shape(), source.geometry().axis());
        Optional<Double> inner = source.geometry().shape() instanceof Shape.HollowCylinder ring ? Optional.of(2 * ring.innerRadiusMm() / 1000) : Optional.empty();
        double becquerel = rates.units().after(source.inventory(), ChronoUnit.DAYS.between(source.referenceOn(), on)).becquerels().values().stream()
            .mapToDouble(Double::doubleValue).sum();
        return new Standing(source.code(), rates.name(source.code()), source.state(), form(source.geometry().shape()), centre.xMm() / 1000, centre.yMm() / 1000,
            centre.zMm() / 1000, size[0] / 1000, size[1] / 1000, size[2] / 1000, inner, becquerel, source.notes());
    }

    private static String form(Shape shape) {
        return shape instanceof Shape.HollowCylinder ? "ring" : shape instanceof Shape.Cylinder ? "cylinder" : shape instanceof Shape.Box ? "box" : "sphere";
    }

    /** Outline along right, across and up, mm. */
    private static double[] size(Shape shape, Axis axis) {
        if (shape instanceof Shape.Box box) {
            return new double[] {box.xMm(), box.yMm(), box.zMm()};
        }
        if (shape instanceof Shape.Sphere sphere) {
            return new double[] {2 * sphere.radiusMm(), 2 * sphere.radiusMm(), 2 * sphere.radiusMm()};
        }
        double diameter = shape instanceof Shape.HollowCylinder ring ? 2 * ring.outerRadiusMm() : 2 * ((Shape.Cylinder) shape).radiusMm();
        double length = shape instanceof Shape.HollowCylinder ring ? ring.lengthMm() : ((Shape.Cylinder) shape).lengthMm();
        return new double[] {axis == Axis.X ? length : diameter, axis == Axis.Y ? length : diameter, axis == Axis.Z ? length : diameter};
    }
}
