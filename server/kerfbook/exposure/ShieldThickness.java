package kerfbook.exposure;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import kerfbook.campaign.Area;
import kerfbook.campaign.Shield;
import kerfbook.campaign.Shield.Span;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;
import kerfbook.shielding.Layer;
import kerfbook.shielding.Position;

/** How thick a temporary shield has to be to bring an area's rate down to a wish. */
public final class ShieldThickness {
    private static final double STEP_MM = 0.1;
    private static final double THICKEST_MM = 2_000;
    private static final int CURVE = 21;
    private static final double ON_A_STEP = 0.97;

    /** The direction square to the shield. */
    public enum Normal {
        RIGHT, ACROSS, UP;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /** Which way the shield grows from its fixed face. */
    public enum Grows {
        PLUS, MINUS;

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /**
     * @param on            day; left out: the first of the campaign
     * @param atM           where the fixed face stands along the normal
     * @param right         bounds of the shield sideways; left out: endless; not along the normal
     * @param wantedUsvPerH rate that is wished for, background included
     * @param wantedFactor  or the part of the rate from the sources that may be left
     */
    public record Question(String area, Optional<LocalDate> on, String material, Normal normal, double atM, Grows grows, Optional<Span> right,
                           Optional<Span> across, Optional<Span> up, Optional<Double> wantedUsvPerH, Optional<Double> wantedFactor) {
        public Question {
            Require.code(area, "area");
            on = Require.optional(on);
            on.ifPresent(day -> Require.day(day, "on"));
            Require.code(material, "material");
            Require.present(normal, "normal");
            Require.within(atM, -1_000, 1_000, "at_m", "m");
            Require.present(grows, "grows");
            right = bound(right, normal == Normal.RIGHT, "right");
            across = bound(across, normal == Normal.ACROSS, "across");
            up = bound(up, normal == Normal.UP, "up");
            wantedUsvPerH = Require.optional(wantedUsvPerH);
            wantedUsvPerH.ifPresent(wish -> Require.positive(wish, 1e9, "wanted_usv_per_h", "µSv/h"));
            wantedFactor = Require.optional(wantedFactor);
            wantedFactor.ifPresent(wish -> Require.positive(wish, 1, "wanted_factor", ""));
            if (wantedUsvPerH.isPresent() == wantedFactor.isPresent()) {
                throw new Invalid("wanted_usv_per_h", "goes alone: give it or wanted_factor, not both and not neither.");
            }
        }

        private static Optional<Span> bound(Optional<Span> bound, boolean normal, String field) {
            Optional<Span> given = Require.optional(bound);
            if (given.isPresent() && normal) {
                throw new Invalid(field, "is the direction of the shield itself: its thickness is what is asked for.");
            }
            return given;
        }
    }

    /** @param usvPerH background included */
    public record At(double thicknessMm, double usvPerH) { }

    /**
     * @param wantedUsvPerH background included
     * @param thicknessMm   rounded up to 0.1 mm; absent if not reached
     * @param thickestMm    up to which was tried
     */
    public record Answer(String area, LocalDate on, String material, double backgroundUsvPerH, double withoutUsvPerH, double wantedUsvPerH,
                         Outcome outcome, Optional<Double> thicknessMm, Optional<Double> usvPerH, double thickestMm, List<At> thicknesses,
                         List<String> notes) { }

    private ShieldThickness() { }

    public static Answer of(CampaignRates rates, Question question) {
        Area area = rates.area(question.area());
        rates.units().data().material(question.material(), "material");
        LocalDate on = question.on().orElse(rates.campaign().settings().start());
        Situation now = rates.situation(on);
        double without = rates.withBackground(area, now);
        double background = area.backgroundUsvPerH();
        double wanted = question.wantedUsvPerH().orElseGet(() -> background + question.wantedFactor().orElseThrow() * (without - background));
        double thickest = thickest(question, rates.point(area.code()));
        DoubleUnaryOperator rate = thickness -> thickness <= 0 ? without : rates.withBackground(area, now.around(layers(now, question, thickness)));
        Outcome outcome = without <= wanted ? Outcome.NOT_NEEDED : rate.applyAsDouble(thickest) > wanted ? Outcome.NOT_REACHED : Outcome.FOUND;
        Optional<Double> thickness = switch (outcome) {
            case FOUND -> Optional.of(Math.ceil(10 * Bisection.least(rate, wanted, 0, thickest, STEP_MM / 2)) / 10);
            case NOT_NEEDED -> Optional.of(0.0);
            case NOT_REACHED -> Optional.empty();
        };
        double shown = Math.min(thickest, Math.max(50, 1.5 * thickness.orElse(thickest)));
        List<At> curve = new ArrayList<>();
        for (int i = 0; i < CURVE; i++) {
            double at = i * shown / (CURVE - 1);
            curve.add(new At(at, rate.applyAsDouble(at)));
        }
        List<String> notes = new ArrayList<>(List.of("What comes around the edges of a bounded shield is counted only along straight lines; scatter around them is not.",
            "Build-up is that of the last thick material; lead after water reads up to 14 % low, water after lead 26 % high (at 1.25 MeV)."));
        if (thickness.isPresent() && thickness.get() > 0 && rate.applyAsDouble(thickness.get()) < ON_A_STEP * wanted) {
            notes.add("The answer lies on a step: here the shield gets thick enough for its own build-up to count, and the calculated rate drops at once. The "
                + "true rate falls evenly; take the shield thicker.");
        }
        return new Answer(area.code(), on, question.material(), background, without, wanted, outcome, thickness, thickness.map(rate::applyAsDouble), thickest,
            curve, notes);
    }

    private static List<Layer> layers(Situation now, Question question, double thicknessMm) {
        double from = question.grows() == Grows.PLUS ? question.atM() : question.atM() - thicknessMm / 1000;
        Span own = new Span(from, from + thicknessMm / 1000);
        Shield shield = new Shield("asked", "asked", question.material(), question.normal() == Normal.RIGHT ? Optional.of(own) : question.right(),
            question.normal() == Normal.ACROSS ? Optional.of(own) : question.across(), question.normal() == Normal.UP ? Optional.of(own) : question.up(),
            Optional.empty(), Optional.empty());
        List<Layer> all = new ArrayList<>(now.layers());
        all.add(Surroundings.shield(shield));
        return all;
    }

    /** The shield does not grow over the point. */
    private static double thickest(Question question, Position point) {
        double along = switch (question.normal()) {
            case RIGHT -> point.xMm();
            case ACROSS -> point.yMm();
            case UP -> point.zMm();
        };
        double ahead = (along - 1000 * question.atM()) * (question.grows() == Grows.PLUS ? 1 : -1);
        boolean beside = !within(question.right(), point.xMm()) || !within(question.across(), point.yMm()) || !within(question.up(), point.zMm());
        return beside || ahead <= 0 ? THICKEST_MM : Math.min(THICKEST_MM, Math.max(1, ahead - 1));
    }

    private static boolean within(Optional<Span> span, double mm) {
        return span.isEmpty() || mm >= 1000 * span.get().fromM() && mm <= 1000 * span.get().toM();
    }
}
