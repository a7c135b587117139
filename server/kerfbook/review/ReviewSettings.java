package kerfbook.review;

import java.util.List;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What calls for a review; all of it is a site's own choice.
 *
 * @param preset           triggers of a review before work, by the name of their table
 * @param levelUsv         local administrative level of individual dose, µSv: what a share of the level is held against
 * @param shares           parts of the target (without one: of the forecast) at which work is reviewed
 * @param deviation        part of the forecast by which the dose may differ before work is reviewed afterwards
 * @param investigationUsv individual dose in a calendar year of this campaign above which a case must be opened, µSv
 */
public record ReviewSettings(String preset, double levelUsv, List<Double> shares, double deviation, double investigationUsv) {
    /** Facility level of 5 mSv (DOE-STD-1098); shares and ±25 % common practice, from memory; 15 mSv as in British practice, from memory. */
    public static final ReviewSettings USUAL = new ReviewSettings("doe", 5_000, List.of(0.25, 0.5, 0.75), 0.25, 15_000);

    public ReviewSettings {
        Require.code(preset, "preset");
        Require.positive(levelUsv, 1e9, "level_usv", "µSv");
        shares = Require.atLeastOne(shares, "shares");
        for (int i = 0; i < shares.size(); i++) {
            Require.positive(shares.get(i), 10, "shares[" + i + "]", "");
            if (i > 0 && shares.get(i) <= shares.get(i - 1)) {
                throw new Invalid("shares[" + i + "]", "is not above the one before. Give them in rising order.");
            }
        }
        Require.positive(deviation, 10, "deviation", "");
        Require.positive(investigationUsv, 1e9, "investigation_usv", "µSv");
    }
}
