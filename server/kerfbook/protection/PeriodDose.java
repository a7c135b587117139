package kerfbook.protection;

import java.time.LocalDate;
import java.util.List;
import java.util.OptionalDouble;

/**
 * One person's dose in one period against one rule.
 *
 * @param label        the period in words: "2027", "12 months to 2027-05-14", "2023–2027", "working life"
 * @param beforeUsv    received before and in the campaign so far, as far as it is known
 * @param plannedUsv   planned
 * @param totalUsv     both together; if years are missing, at least this much
 * @param remainingUsv limit less total, below 0 if it is exceeded; empty if years are missing
 * @param missing      what the record lacks to say it, such as "2024"
 */
public record PeriodDose(String label, LocalDate from, LocalDate to, double beforeUsv, double plannedUsv, double totalUsv,
                         double limitUsv, OptionalDouble remainingUsv, List<String> missing, Verdict verdict) { }
