package kerfbook.campaign;

import java.util.Optional;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.quantity.Words;

/**
 * A place where people stand.
 *
 * @param backgroundUsvPerH rate there without any source of the campaign
 * @param ceilingUsvPerH    rate above which work there stops
 * @param rateFrom          where the forecast takes the rate from
 * @param sketch            where its dosimeter is: place on the section sketch and point of calculation, in metres
 */
public record Area(String code, String name, double backgroundUsvPerH, Optional<Double> ceilingUsvPerH, RateFrom rateFrom,
                   Optional<Place> sketch, String note) {

    /** Where an area's rate comes from. */
    public enum RateFrom {
        /** From its surveys. */
        SURVEY,
        /** Background only: no source of the campaign reaches it, and the planner says so. */
        BACKGROUND,
        /** Calculated from the activity of the sources that stand that day. */
        CALCULATED,
        /** Calculated, each source scaled by the factor that fits the surveys of all calibrated areas best. */
        CALIBRATED;

        /** Worked out from activities rather than read. */
        public boolean worked() {
            return this == CALCULATED || this == CALIBRATED;
        }

        @Override
        public String toString() {
            return Words.of(this);
        }
    }

    /**
     * Metres to the right of the pool's left wall and above the pool's normal water surface.
     *
     * @param acrossM metres across from the pool's middle; left out: in the middle
     */
    public record Place(double rightM, double upM, Optional<Double> acrossM) {
        public Place {
            Require.within(rightM, -1_000, 1_000, "right_m", "m");
            Require.within(upM, -100, 100, "up_m", "m");
            acrossM = Require.optional(acrossM);
            acrossM.ifPresent(across -> Require.within(across, -1_000, 1_000, "across_m", "m"));
        }
    }

    static final double HIGHEST_RATE = 1e9;

    public Area {
        Require.code(code, "code");
        Require.name(name, "name");
        Require.within(backgroundUsvPerH, 0, HIGHEST_RATE, "background_usv_per_h", "µSv/h");
        ceilingUsvPerH = Require.optional(ceilingUsvPerH);
        ceilingUsvPerH.ifPresent(ceiling -> Require.positive(ceiling, HIGHEST_RATE, "ceiling_usv_per_h", "µSv/h"));
        if (ceilingUsvPerH.isPresent() && ceilingUsvPerH.get() < backgroundUsvPerH) {
            throw new Invalid("ceiling_usv_per_h", "is below the background of " + backgroundUsvPerH + " µSv/h.");
        }
        Require.present(rateFrom, "rate_from");
        sketch = Require.optional(sketch);
        Require.text(note, "note");
    }
}
