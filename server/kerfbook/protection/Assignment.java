package kerfbook.protection;

import java.time.LocalDate;
import java.util.Collections;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;

/**
 * What one person is to do, in doses.
 *
 * @param start         first day of the campaign; the person's record holds what came before
 * @param planned       forecast doses by quantity, one per entry, in order; the effective dose is always there
 * @param upper         the same at the 95th percentile of the forecast; empty if there is none
 * @param constraint    set for this campaign or task
 * @param dailyAlarmUsv dose alarm of the electronic dosimeter for one day
 */
public record Assignment(LocalDate start, Map<DoseQuantity, List<DatedDose>> planned, Map<DoseQuantity, List<DatedDose>> upper,
                         Optional<Constraint> constraint, OptionalDouble dailyAlarmUsv) {
    public Assignment {
        Require.day(start, "start");
        planned = copy(planned, "planned");
        if (!planned.containsKey(DoseQuantity.EFFECTIVE_DOSE)) {
            throw new Invalid("planned.effective-dose", "is missing. Give the planned effective dose, 0 if there is none.");
        }
        upper = copy(upper, "upper");
        constraint = Require.optional(constraint);
        dailyAlarmUsv = dailyAlarmUsv == null ? OptionalDouble.empty() : dailyAlarmUsv;
        dailyAlarmUsv.ifPresent(alarm -> Require.positive(alarm, DatedDose.LARGEST_USV, "daily_alarm_usv", "µSv"));
    }

    private static Map<DoseQuantity, List<DatedDose>> copy(Map<DoseQuantity, List<DatedDose>> doses, String field) {
        Map<DoseQuantity, List<DatedDose>> copy = new EnumMap<>(DoseQuantity.class);
        if (doses != null) {
            doses.forEach((quantity, list) -> copy.put(quantity, Require.atLeastOne(list, field + "." + quantity)));
        }
        return Collections.unmodifiableMap(copy);
    }
}
