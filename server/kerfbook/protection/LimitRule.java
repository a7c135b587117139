package kerfbook.protection;

import java.util.OptionalInt;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Require;

/**
 * One figure that the dose of a person in a period is held against.
 *
 * @param code       short name, unique in its rule set
 * @param quantity   which dose
 * @param period     over which time it is added up
 * @param limitUsv   largest dose allowed in that time, in µSv; the figure itself is still allowed
 * @param firstBlock first year of one block, for {@link Period#FIVE_YEAR_BLOCK} only
 * @param origin     where the figure stands, and whether it was read there
 */
public record LimitRule(String code, DoseQuantity quantity, Period period, double limitUsv, OptionalInt firstBlock, Origin origin) {
    public LimitRule {
        Require.code(code, "code");
        Require.present(quantity, "quantity");
        Require.present(period, "period");
        Require.positive(limitUsv, DatedDose.LARGEST_USV, "limit_usv", "µSv");
        firstBlock = firstBlock == null ? OptionalInt.empty() : firstBlock;
        if (firstBlock.isPresent() != (period == Period.FIVE_YEAR_BLOCK)) {
            throw new Invalid("first_block", period == Period.FIVE_YEAR_BLOCK
                ? "is missing. Give the first year of one of the five-year blocks."
                : "belongs to five-year blocks only. Leave it out.");
        }
        Require.present(origin, "origin");
    }

    /** A rule of any period but the five-year block. */
    public static LimitRule of(String code, DoseQuantity quantity, Period period, double limitUsv, Origin origin) {
        return new LimitRule(code, quantity, period, limitUsv, OptionalInt.empty(), origin);
    }
}
