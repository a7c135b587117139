package kerfbook.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Random;
import java.util.SplittableRandom;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.ValueSource;

class PeriodCheckTest {
    private static final Origin ORIGIN = new Origin("test", Origin.Status.INVENTED);
    private static final LocalDate START = LocalDate.of(2027, 3, 15);
    private static final DoseRecord RECORD = DoseRecord.ofYears(2027, "test", 5000, 4000, 3000, 2000, 1000);

    private static LimitRule rule(Period period, double limitUsv) {
        return new LimitRule("rule", DoseQuantity.EFFECTIVE_DOSE, period, limitUsv,
            period == Period.FIVE_YEAR_BLOCK ? OptionalInt.of(2020) : OptionalInt.empty(), ORIGIN);
    }

    /** BY HAND: one mSv received in 2027 before the start; 2 mSv planned in 2027 and 4 in 2028. */
    @Test void calendar_years_are_added_up_one_by_one() {
        List<PeriodDose> periods = PeriodCheck.of(rule(Period.CALENDAR_YEAR, 20_000), RECORD, START,
            List.of(new DatedDose(LocalDate.of(2028, 1, 1), 4000), new DatedDose(LocalDate.of(2027, 12, 31), 2000))).periods();
        assertEquals(List.of(
            new PeriodDose("2027", LocalDate.of(2027, 1, 1), LocalDate.of(2027, 12, 31), 1000, 2000, 3000, 20_000, OptionalDouble.of(17_000),
                List.of(), Verdict.WITHIN),
            new PeriodDose("2028", LocalDate.of(2028, 1, 1), LocalDate.of(2028, 12, 31), 0, 4000, 4000, 20_000, OptionalDouble.of(16_000),
                List.of(), Verdict.WITHIN)), periods);
    }

    /**
     * BY HAND: the total of 2026 without months counts on 31 December, that of 2027 on the day before the start. On 14 May 2027 the twelve
     * months hold 2 + 1 + 6 = 9 mSv; on 31 December 2027 they begin on 1 January and hold 1 + 6 + 1 = 8; on 14 March 2028, from 15 March, 7.
     */
    @Test void undated_totals_count_as_late_as_they_can_have_been() {
        List<PeriodDose> periods = PeriodCheck.of(rule(Period.ROLLING_12_MONTHS, 20_000), RECORD, START, List.of(
            new DatedDose(LocalDate.of(2027, 5, 14), 6000), new DatedDose(LocalDate.of(2027, 12, 31), 1000),
            new DatedDose(LocalDate.of(2028, 3, 13), 0), new DatedDose(LocalDate.of(2028, 3, 14), 0))).periods();
        assertEquals(List.of("12 months to 2027-05-14", "12 months to 2027-12-31", "12 months to 2028-03-13", "12 months to 2028-03-14"),
            periods.stream().map(PeriodDose::label).toList());
        assertEquals(List.of(9000.0, 8000.0, 8000.0, 7000.0), periods.stream().map(PeriodDose::totalUsv).toList());
    }

    /** BY HAND: of 2 mSv in 2026, 0.5 in June by month; on 15 July 2027 June has left and the undated 1.5 of the year has not. */
    @Test void months_take_their_share_out_of_the_undated_year() {
        DoseRecord record = new DoseRecord(Optional.of(2026), Optional.empty(), Map.of(2026, new Received(2000, "t"), 2027, new Received(0, "t")),
            Map.of(YearMonth.of(2026, 6), new Received(500, "t")), List.of());
        assertEquals(2000, twelveMonths(record, LocalDate.of(2027, 6, 29)));
        assertEquals(1500, twelveMonths(record, LocalDate.of(2027, 6, 30)));
        assertEquals(1500, twelveMonths(record, LocalDate.of(2027, 12, 30)));
        assertEquals(0, twelveMonths(record, LocalDate.of(2027, 12, 31)));
    }

    private static double twelveMonths(DoseRecord record, LocalDate end) {
        return PeriodCheck.of(rule(Period.ROLLING_12_MONTHS, 20_000), record, START, List.of(new DatedDose(end, 0))).periods().get(0).beforeUsv();
    }

    /** EDGE: twelve months over a leap day: to 28 February 2029 they begin on 29 February 2028, to 29 February 2028 on 1 March 2027. */
    @Test void twelve_months_mind_the_leap_day() {
        LocalDate leapDay = LocalDate.of(2028, 2, 29);
        List<PeriodDose> periods = PeriodCheck.of(rule(Period.ROLLING_12_MONTHS, 20_000), RECORD, START,
            List.of(new DatedDose(leapDay, 1), new DatedDose(LocalDate.of(2029, 2, 28), 1))).periods();
        assertEquals(LocalDate.of(2027, 3, 1), periods.get(0).from());
        assertEquals(leapDay, periods.get(1).from());
        assertEquals(2, periods.get(1).plannedUsv());
    }

    /** LAW: the worst twelve months are the worst of all twelve months that hold a planned dose, tried day by day. */
    @ParameterizedTest @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void no_other_twelve_months_hold_more(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        List<DatedDose> planned = new ArrayList<>();
        List<DatedDose> logged = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            planned.add(new DatedDose(START.plusDays(random.nextInt(200, 1400)), random.nextInt(400)));
            logged.add(new DatedDose(START.plusDays(random.nextInt(260)), random.nextInt(150)));
        }
        PeriodDose worst = PeriodCheck.of(rule(Period.ROLLING_12_MONTHS, 20_000), RECORD.with(logged), START, planned).worst().orElseThrow();
        double most = 0;
        for (LocalDate end = START; end.isBefore(START.plusDays(2000)); end = end.plusDays(1)) {
            LocalDate from = end.minusMonths(12);
            LocalDate to = end;
            if (planned.stream().anyMatch(d -> d.date().isAfter(from) && !d.date().isAfter(to))) {
                double sum = from.isBefore(LocalDate.of(2026, 12, 31)) ? 3000 : from.isBefore(START.minusDays(1)) ? 1000 : 0;
                for (List<DatedDose> doses : List.of(planned, logged)) {
                    sum += doses.stream().filter(d -> d.date().isAfter(from) && !d.date().isAfter(to)).mapToDouble(DatedDose::usv).sum();
                }
                most = Math.max(most, sum);
            }
        }
        assertEquals(most, worst.totalUsv());
        assertEquals(worst.beforeUsv() + worst.plannedUsv(), worst.totalUsv());
    }

    /** LAW: doses in any order give the same, to the last digit; a day's dose may come in parts. */
    @ParameterizedTest @EnumSource(Period.class)
    void order_does_not_matter(Period period) {
        SplittableRandom random = new SplittableRandom(5);
        List<DatedDose> planned = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            planned.add(new DatedDose(START.plusDays(random.nextInt(900)), random.nextDouble(0, 70)));
        }
        DoseRecord record = new DoseRecord(Optional.of(2023), Optional.empty(), RECORD.yearly(), Map.of(), List.of());
        PeriodCheck check = PeriodCheck.of(rule(period, 20_000), record, START, planned);
        Collections.shuffle(planned, new Random(3));
        assertEquals(check, PeriodCheck.of(rule(period, 20_000), record, START, planned));
        assertFalse(check.periods().isEmpty());
    }

    /** LAW: one more dose of 10 µSv leaves at most as much, and 10 µSv less in a period that holds it. */
    @ParameterizedTest @EnumSource(Period.class)
    void one_more_dose_never_leaves_more(Period period) {
        DoseRecord record = new DoseRecord(Optional.of(2023), Optional.empty(), RECORD.yearly(), Map.of(), List.of());
        List<DatedDose> planned = List.of(new DatedDose(START.plusDays(30), 100), new DatedDose(START.plusDays(500), 200));
        List<DatedDose> more = List.of(planned.get(0), planned.get(1), new DatedDose(START.plusDays(500), 10));
        List<PeriodDose> before = PeriodCheck.of(rule(period, 20_000), record, START, planned).periods();
        List<PeriodDose> after = PeriodCheck.of(rule(period, 20_000), record, START, more).periods();
        for (int i = 0; i < before.size(); i++) {
            boolean holds = !after.get(i).from().isAfter(START.plusDays(500)) && !after.get(i).to().isBefore(START.plusDays(500));
            assertEquals(before.get(i).remainingUsv().getAsDouble() - (holds ? 10 : 0), after.get(i).remainingUsv().getAsDouble());
        }
    }

    /** BY HAND: five years to 2027 hold 5 + 4 + 3 + 2 + 1 + 6 = 21 mSv, to 2028 16, to 2029 with 3 planned in it 15. */
    @Test void any_five_years_slide_along() {
        PeriodCheck check = PeriodCheck.of(rule(Period.ANY_FIVE_CONSECUTIVE_YEARS, 100_000), RECORD, START,
            List.of(new DatedDose(START, 6000), new DatedDose(LocalDate.of(2029, 6, 1), 3000)));
        assertEquals(List.of("2023–2027", "2024–2028", "2025–2029"), check.periods().stream().map(PeriodDose::label).toList());
        assertEquals(List.of(21_000.0, 16_000.0, 15_000.0), check.periods().stream().map(PeriodDose::totalUsv).toList());
        assertEquals("2023–2027", check.worst().orElseThrow().label());
    }

    /** BY HAND: blocks 2025–2029 and 2030–2034; the first holds 3 + 2 + 1 before. EDGE: years before the anchor fall into blocks as well. */
    @Test void blocks_stand_still() {
        PeriodCheck check = PeriodCheck.of(rule(Period.FIVE_YEAR_BLOCK, 100_000), RECORD, START,
            List.of(new DatedDose(LocalDate.of(2029, 12, 31), 6000), new DatedDose(LocalDate.of(2030, 1, 1), 3000)));
        assertEquals(List.of("2025–2029", "2030–2034"), check.periods().stream().map(PeriodDose::label).toList());
        assertEquals(List.of(12_000.0, 3000.0), check.periods().stream().map(PeriodDose::totalUsv).toList());
        LimitRule later = new LimitRule("r", DoseQuantity.EFFECTIVE_DOSE, Period.FIVE_YEAR_BLOCK, 1, OptionalInt.of(2031), ORIGIN);
        assertEquals("2026–2030", PeriodCheck.of(later, RECORD, START, List.of(new DatedDose(START, 0))).periods().get(0).label());
    }

    /** BY HAND: 380 mSv before 2023, 15 in the record, 5 planned are 400 of 400 mSv. EDGE: without the earlier dose nobody can say. */
    @Test void a_working_life_counts_everything() {
        LimitRule rule = rule(Period.WORKING_LIFE, 400_000);
        DoseRecord whole = new DoseRecord(Optional.empty(), Optional.of(new Received(380_000, "passport")), RECORD.yearly(), Map.of(), List.of());
        PeriodDose life = PeriodCheck.of(rule, whole, START, List.of(new DatedDose(START, 5000))).worst().orElseThrow();
        assertEquals(400_000, life.totalUsv());
        assertEquals(Verdict.WITHIN, life.verdict());
        PeriodDose unknown = PeriodCheck.of(rule, RECORD, START, List.of(new DatedDose(START, 5000))).worst().orElseThrow();
        assertEquals(Verdict.NOT_KNOWN, unknown.verdict());
        assertEquals(List.of("all years before 2023"), unknown.missing());
    }

    /** EDGE: a missing year is not 0. It leaves the verdict open, unless what is known is too much already. */
    @Test void a_missing_year_is_not_known() {
        DoseRecord gap = new DoseRecord(Optional.empty(), Optional.empty(),
            Map.of(2024, new Received(1, "t"), 2027, new Received(99_000, "t")), Map.of(), List.of());
        LimitRule rule = rule(Period.ANY_FIVE_CONSECUTIVE_YEARS, 100_000);
        PeriodDose open = PeriodCheck.of(rule, gap, START, List.of(new DatedDose(START, 1))).worst().orElseThrow();
        assertEquals(Verdict.NOT_KNOWN, open.verdict());
        assertEquals(List.of("2023", "2025", "2026"), open.missing());
        assertTrue(open.remainingUsv().isEmpty());
        assertEquals(Verdict.OVER_LIMIT, PeriodCheck.of(rule, gap, START, List.of(new DatedDose(START, 1000))).worst().orElseThrow().verdict());
        DoseRecord since = new DoseRecord(Optional.of(2027), Optional.empty(), Map.of(2027, new Received(1, "t")), Map.of(), List.of());
        assertEquals(Verdict.WITHIN, PeriodCheck.of(rule, since, START, List.of(new DatedDose(START, 1))).worst().orElseThrow().verdict());
    }

    /** EDGE: the year of the start needs a record unless it starts with the year; later years need none. */
    @Test void the_year_of_the_start_counts_only_up_to_it() {
        LimitRule rule = rule(Period.CALENDAR_YEAR, 20_000);
        DoseRecord to2026 = DoseRecord.ofYears(2026, "t", 1000);
        LocalDate newYear = LocalDate.of(2027, 1, 1);
        assertEquals(Verdict.WITHIN, PeriodCheck.of(rule, to2026, newYear, List.of(new DatedDose(newYear, 1))).worst().orElseThrow().verdict());
        LocalDate second = newYear.plusDays(1);
        assertEquals(List.of("2027"), PeriodCheck.of(rule, to2026, second, List.of(new DatedDose(second, 1))).worst().orElseThrow().missing());
        assertEquals(List.of(), PeriodCheck.of(rule, to2026, second, List.of(new DatedDose(second.plusYears(1), 1))).worst().orElseThrow().missing());
    }

    /** EDGE: the limit itself is kept, a picosievert more is not, though binary fractions of it add up to a hair more. */
    @Test void the_limit_itself_is_kept() {
        LimitRule rule = rule(Period.CALENDAR_YEAR, 19_000);
        List<DatedDose> tenths = new ArrayList<>(Collections.nCopies(180_000, new DatedDose(START, 0.1)));
        assertTrue(tenths.stream().mapToDouble(DatedDose::usv).reduce(0, Double::sum) != 18_000, "the plain sum is off");
        PeriodDose full = PeriodCheck.of(rule, RECORD, START, tenths).worst().orElseThrow();
        assertEquals(Verdict.WITHIN, full.verdict());
        assertEquals(OptionalDouble.of(0), full.remainingUsv());
        tenths.add(new DatedDose(START, 1e-6));
        assertEquals(Verdict.OVER_LIMIT, PeriodCheck.of(rule, RECORD, START, tenths).worst().orElseThrow().verdict());
    }

    /** BY HAND: 20 − 1 mSv remain in 2027; in twelve months to the start 20 − 2 − 1. */
    @Test void remaining_dose_on_a_day() {
        assertEquals(OptionalDouble.of(19_000), PeriodCheck.remainingUsv(rule(Period.CALENDAR_YEAR, 20_000), RECORD, START, START));
        assertEquals(OptionalDouble.of(17_000), PeriodCheck.remainingUsv(rule(Period.ROLLING_12_MONTHS, 20_000), RECORD, START, START));
        assertEquals(OptionalDouble.empty(), PeriodCheck.remainingUsv(rule(Period.CALENDAR_YEAR, 20_000), DoseRecord.notKnown(), START, START));
    }

    /** EDGE. */
    @Test void nothing_planned_gives_no_period() {
        PeriodCheck check = PeriodCheck.of(rule(Period.CALENDAR_YEAR, 20_000), RECORD, START, List.of());
        assertTrue(check.periods().isEmpty() && check.worst().isEmpty());
    }

    /** EDGE: records and plans that contradict their dates or themselves. */
    @Test void contradictions_are_refused() {
        LimitRule rule = rule(Period.CALENDAR_YEAR, 20_000);
        List<DatedDose> planned = List.of(new DatedDose(START, 1));
        assertThrows(Invalid.class, () -> PeriodCheck.of(rule, DoseRecord.ofYears(2028, "t", 1), START, planned));
        assertThrows(Invalid.class, () -> PeriodCheck.of(rule, RECORD, START, List.of(new DatedDose(START.minusDays(1), 1))));
        assertThrows(Invalid.class, () -> PeriodCheck.of(rule, RECORD.with(List.of(new DatedDose(START.minusDays(1), 1))), START, planned));
        Map<Integer, Received> years = Map.of(2026, new Received(2000, "t"), 2027, new Received(0, "t"));
        assertThrows(Invalid.class, () -> record(years, Map.of(YearMonth.of(2026, 6), new Received(2000.000001, "t"))));
        assertThrows(Invalid.class, () -> record(years, Map.of(YearMonth.of(2025, 6), new Received(1, "t"))));
        DoseRecord april = record(years, Map.of(YearMonth.of(2027, 4), new Received(0, "t")));
        assertThrows(Invalid.class, () -> PeriodCheck.of(rule, april, START, planned));
        assertThrows(Invalid.class, () -> new DoseRecord(Optional.of(2027), Optional.empty(), years, Map.of(), List.of()));
    }

    private static DoseRecord record(Map<Integer, Received> years, Map<YearMonth, Received> months) {
        return new DoseRecord(Optional.empty(), Optional.empty(), years, months, List.of());
    }

    /** EDGE. */
    @ParameterizedTest @ValueSource(doubles = {-1e-12, Double.NaN, Double.POSITIVE_INFINITY, 1.0000001e9})
    void doses_that_are_no_doses_are_refused(double usv) {
        assertThrows(Invalid.class, () -> new DatedDose(START, usv));
        assertThrows(Invalid.class, () -> new Received(usv, "t"));
        assertThrows(Invalid.class, () -> rule(Period.CALENDAR_YEAR, usv));
        assertThrows(Invalid.class, () -> new Constraint("c", usv));
        assertThrows(Invalid.class, () -> new Constraint("c", 1).verdict(usv));
    }

    /** EDGE: the first year of a block goes with blocks, and only with them. */
    @Test void only_blocks_have_a_first_year() {
        assertThrows(Invalid.class, () -> LimitRule.of("r", DoseQuantity.LENS, Period.FIVE_YEAR_BLOCK, 1, ORIGIN));
        assertThrows(Invalid.class, () -> new LimitRule("r", DoseQuantity.LENS, Period.CALENDAR_YEAR, 1, OptionalInt.of(2020), ORIGIN));
    }
}
