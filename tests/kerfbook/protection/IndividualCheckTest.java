package kerfbook.protection;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Origin;
import kerfbook.tables.LimitRules;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class IndividualCheckTest {
    private static final Map<String, RuleSet> SETS = LimitRules.read();
    private static final LocalDate START = LocalDate.of(2027, 6, 1);

    /**
     * BY HAND (constructed vectors on limits that were read): I01 to I06, arithmetic in the file; exact. I04 and I06 have the same doses
     * and differ by the period rule alone.
     */
    @ParameterizedTest @CsvFileSource(resources = "/published/individual-checks.csv", numLinesToSkip = 2)
    void decides_as_the_vectors_do(String id, String set, int lastYear, String years, double planned, double constraint, String outcome,
                                   String step, double total, String period) {
        double[] usv = Arrays.stream(years.split(";")).mapToDouble(y -> 1000 * Double.parseDouble(y)).toArray();
        LocalDate day = LocalDate.of(lastYear, 6, 14);
        IndividualCheck check = check(effective(DoseRecord.ofYears(lastYear, id, usv)), SETS.get(set), job(day, 1000 * planned),
            constraint, OptionalDouble.empty());
        assertEquals(outcome, check.outcome().toString());
        assertEquals(step == null ? List.of() : List.of(step), check.reasons().stream().map(r -> r.step().toString()).toList());
        PeriodDose held = check.periods().stream().map(IndividualCheck.RulePeriod::worst)
            .filter(worst -> worst.label().equals(period)).findFirst().orElseThrow();
        assertEquals(1000 * total, held.totalUsv());
    }

    /**
     * BY HAND (constructed): I07. Twelve months at 1.5 mSv; on 31 January the January before has left the twelve months: 11 × 1.5 + 3 =
     * 19.5 mSv. BY HAND: on 30 January it may still count, 12 × 1.5 + 3 = 21 mSv, so that is refused.
     */
    @Test void i07_twelve_rolling_months_are_kept_at_the_end_of_january_only() {
        assertEquals(Outcome.ACCEPT, rolling(31, 3).outcome());
        assertEquals(19_500, rolling(31, 3).periods().get(0).worst().totalUsv());
        assertEquals(Outcome.REFUSE, rolling(30, 3).outcome());
        assertEquals(21_000, rolling(30, 3).periods().get(0).worst().totalUsv());
    }

    /** BY HAND (constructed): I08, 16.5 + 4 = 20.5 mSv in twelve months, though the calendar year begins anew. */
    @Test void i08_a_new_calendar_year_does_not_empty_twelve_rolling_months() {
        IndividualCheck check = rolling(31, 4);
        assertEquals(Outcome.REFUSE, check.outcome());
        assertEquals("Effective dose in 12 months to 2028-01-31 would be 20.5 mSv (16.5 mSv so far, 4 mSv planned), 0.5 mSv over the limit of 20 mSv.",
            check.reasons().get(0).text());
        assertEquals(Outcome.ACCEPT, check(effective(januaryRecord()), SETS.get("eu"), job(LocalDate.of(2028, 1, 31), 4000), 5,
            OptionalDouble.empty()).outcome());
    }

    private static IndividualCheck rolling(int day, double msv) {
        return check(effective(januaryRecord()), SETS.get("fr"), job(LocalDate.of(2028, 1, day), 1000 * msv), 5, OptionalDouble.empty());
    }

    private static DoseRecord januaryRecord() {
        Map<YearMonth, Received> months = new HashMap<>();
        for (int m = 1; m <= 12; m++) {
            months.put(YearMonth.of(2027, m), new Received(1500, "I07"));
        }
        Received none = new Received(0, "I07");
        return new DoseRecord(Optional.of(2027), Optional.empty(), Map.of(2027, new Received(18_000, "I07"), 2028, none), months, List.of());
    }

    /** BY HAND (constructed): I09, 5.5 + 1 = 6.5 mSv is over the 6 mSv of category B; category A may. */
    @Test void i09_a_worker_of_category_b_needs_category_a_first() {
        ExposedWorker b = new ExposedWorker(Optional.empty(), Optional.of(Category.B), Map.of(DoseQuantity.EFFECTIVE_DOSE, year(5500)));
        IndividualCheck check = check(b, SETS.get("eu"), job(START, 1000), 5, OptionalDouble.empty());
        assertEquals(Outcome.WARN, check.outcome());
        assertEquals(List.of(CheckStep.CATEGORY_AND_AGE), check.reasons().stream().map(IndividualCheck.Reason::step).toList());
        assertTrue(check.reasons().get(0).text().endsWith("Category A is needed first."));
        ExposedWorker a = new ExposedWorker(Optional.empty(), Optional.of(Category.A), Map.of(DoseQuantity.EFFECTIVE_DOSE, year(5500)));
        assertEquals(Outcome.ACCEPT, check(a, SETS.get("eu"), job(START, 1000), 5, OptionalDouble.empty()).outcome());
    }

    /** BY HAND (constructed on levels of DOE-STD-1098 that were read): I10, 5.2 mSv is over the facility's 5 and under the 20 above it. */
    @Test void i10_going_over_the_facility_level_needs_its_approval() {
        IndividualCheck check = check(effective(year(4200)), SETS.get("us-doe"), job(START, 1000), 2, OptionalDouble.empty());
        assertEquals(Outcome.ESCALATE, check.outcome());
        assertEquals(1, check.reasons().size());
        assertTrue(check.reasons().get(0).text().endsWith("0.2 mSv over the administrative level of 5 mSv. Needs approval: facility management."),
            check.reasons().get(0).text());
    }

    /** BY HAND: 4.2 + 16 = 20.2 mSv is over both levels: first the facility, then the one above approves. */
    @Test void the_approval_chain_runs_from_the_lowest_level_up() {
        IndividualCheck check = check(effective(year(4200)), SETS.get("us-doe"), job(START, 16_000), 20, OptionalDouble.empty());
        assertEquals(Outcome.ESCALATE, check.outcome());
        assertTrue(check.reasons().get(0).text().contains("facility management"));
        assertTrue(check.reasons().get(1).text().contains("Secretarial Officer"));
    }

    /** BY HAND (constructed): I11, the lens would get 19.4 + 0.7 = 20.1 mSv while the effective dose passes. */
    @Test void i11_the_lens_alone_can_refuse() {
        ExposedWorker worker = new ExposedWorker(Optional.empty(), Optional.empty(),
            Map.of(DoseQuantity.EFFECTIVE_DOSE, year(3000), DoseQuantity.LENS, year(19_400)));
        Assignment job = new Assignment(START, Map.of(DoseQuantity.EFFECTIVE_DOSE, job(START, 500), DoseQuantity.LENS, job(START, 700)),
            Map.of(), Optional.of(new Constraint("job", 1000)), OptionalDouble.empty());
        IndividualCheck check = IndividualCheck.of(worker, job, SETS.get("eu"), 18);
        assertEquals(Outcome.REFUSE, check.outcome());
        assertEquals(List.of(CheckStep.ORGAN), check.reasons().stream().map(IndividualCheck.Reason::step).toList());
    }

    /** BY HAND (constructed): I12, 0.5 + 0.4 = 0.9 mSv is over the day's alarm at 0.8: the second entry is refused or split. */
    @Test void i12_the_entry_that_would_reach_past_the_daily_alarm_is_named() {
        List<DatedDose> entries = List.of(new DatedDose(START, 500), new DatedDose(START, 400));
        IndividualCheck check = check(effective(year(0)), SETS.get("eu"), entries, 2, OptionalDouble.of(800));
        assertEquals(Outcome.REFUSE, check.outcome());
        assertEquals(List.of("Entry 2 on 2027-06-01 would bring the day to 0.9 mSv, over the daily alarm of 0.8 mSv. Refuse this entry, or split the "
            + "work over more days or people."), check.reasons().stream().map(IndividualCheck.Reason::text).toList());
        assertEquals(Outcome.ACCEPT, check(effective(year(0)), SETS.get("eu"),
            List.of(new DatedDose(START, 500), new DatedDose(START.plusDays(1), 400)), 2, OptionalDouble.of(800)).outcome());
    }

    /** BY HAND (constructed): I13, 12 + 5 = 17 mSv is accepted, at the 95th percentile 12 + 9 = 21 mSv is flagged. */
    @Test void i13_the_95th_percentile_flags_what_the_forecast_keeps() {
        assertEquals(Outcome.ACCEPT, check(effective(year(12_000)), SETS.get("eu"), job(START, 5000), 10, OptionalDouble.empty()).outcome());
        Assignment uncertain = new Assignment(START, Map.of(DoseQuantity.EFFECTIVE_DOSE, job(START, 5000)),
            Map.of(DoseQuantity.EFFECTIVE_DOSE, job(START, 9000)), Optional.of(new Constraint("job", 10_000)), OptionalDouble.empty());
        IndividualCheck check = IndividualCheck.of(effective(year(12_000)), uncertain, SETS.get("eu"), 18);
        assertEquals(Outcome.WARN, check.outcome());
        assertEquals(List.of(CheckStep.UPPER_FORECAST), check.reasons().stream().map(IndividualCheck.Reason::step).toList());
        assertTrue(check.reasons().get(0).text().startsWith("At the 95th percentile of the forecast: Effective dose in 2027 would be 21 mSv"));
    }

    /** LAW: what the forecast itself breaks is said once, not again at its 95th percentile. */
    @Test void a_broken_limit_is_said_once() {
        Map<DoseQuantity, List<DatedDose>> planned = Map.of(DoseQuantity.EFFECTIVE_DOSE, job(START, 9000));
        IndividualCheck check = IndividualCheck.of(effective(year(12_000)),
            new Assignment(START, planned, planned, Optional.empty(), OptionalDouble.empty()), SETS.get("eu"), 18);
        assertEquals(Outcome.REFUSE, check.outcome());
        assertEquals(1, check.reasons().size());
    }

    /** EDGE: 18 on the first day may, a day younger may not; without a date of birth it is said that nobody looked. */
    @Test void nobody_under_18_works() {
        assertEquals(Outcome.ACCEPT, born(START.minusYears(18)).outcome());
        assertEquals(Outcome.REFUSE, born(START.minusYears(18).plusDays(1)).outcome());
        IndividualCheck unknown = check(effective(year(0)), SETS.get("eu"), job(START, 1), 1, OptionalDouble.empty());
        assertTrue(unknown.notChecked().contains("Age: the date of birth is not given."));
        assertTrue(unknown.notChecked().contains("Category: it is not given whether the person is in category A or B."));
        assertTrue(unknown.notChecked().contains("Dose to the lens of the eye against the limit of 20 mSv: no such dose is forecast."));
    }

    private static IndividualCheck born(LocalDate day) {
        return check(new ExposedWorker(Optional.of(day), Optional.of(Category.A), Map.of(DoseQuantity.EFFECTIVE_DOSE, year(0))), SETS.get("eu"),
            job(START, 1), 1, OptionalDouble.empty());
    }

    /** EDGE: no record is not a record of 0: the limit cannot be checked, so the assignment is refused. */
    @Test void a_missing_record_refuses() {
        ExposedWorker nobody = new ExposedWorker(Optional.empty(), Optional.empty(), Map.of());
        IndividualCheck check = check(nobody, SETS.get("eu"), job(START, 1), 1, OptionalDouble.empty());
        assertEquals(Outcome.REFUSE, check.outcome());
        assertTrue(check.reasons().get(0).text().contains("is not known: the record lacks 2027"), check.reasons().get(0).text());
        IndividualCheck five = check(effective(year(10)), SETS.get("eu-special"), job(START, 1), 1, OptionalDouble.empty());
        assertEquals(Outcome.REFUSE, five.outcome());
        assertTrue(five.reasons().get(0).text().contains("the record lacks 2023, 2024, 2025, 2026"), five.reasons().get(0).text());
    }

    /** EDGE: exactly the constraint and exactly the alarm are kept; a picosievert more is not. */
    @Test void at_the_figure_itself_all_is_kept() {
        assertEquals(Outcome.ACCEPT, check(effective(year(0)), SETS.get("eu"), job(START, 800), 0.8, OptionalDouble.of(800)).outcome());
        IndividualCheck over = check(effective(year(0)), SETS.get("eu"), job(START, 800.000001), 0.8, OptionalDouble.of(800));
        assertEquals(List.of(CheckStep.TASK_CONSTRAINT, CheckStep.DAILY_ALARM), over.reasons().stream().map(IndividualCheck.Reason::step).toList());
    }

    /** EDGE: the effective dose must be said, even if it is 0. */
    @Test void an_assignment_without_effective_dose_is_refused() {
        assertThrows(Invalid.class, () -> new Assignment(START, Map.of(), Map.of(), Optional.empty(), OptionalDouble.empty()));
        assertThrows(Invalid.class, () -> new Assignment(START, Map.of(DoseQuantity.EFFECTIVE_DOSE, List.of()), Map.of(), Optional.empty(),
            OptionalDouble.empty()));
    }

    /**
     * BY HAND (constructed on the triggers of DOE-STD-1098 art. 312 that were read): I14, 2.6 mSv is 52 % of a level of 5 mSv, above 50 %:
     * formal review; 8 person-mSv alone would not call for one.
     */
    @Test void i14_more_than_half_the_level_calls_for_a_review() {
        Origin origin = new Origin("DOE-STD-1098 art. 312", Origin.Status.SEEN);
        ReviewTrigger share = new ReviewTrigger("share", ReviewTrigger.Kind.INDIVIDUAL_SHARE_OF_LEVEL, 50, origin);
        ReviewTrigger collective = new ReviewTrigger("collective", ReviewTrigger.Kind.COLLECTIVE_DOSE, Rem.usv(1), origin);
        Map<ReviewTrigger.Kind, Double> job = Map.of(ReviewTrigger.Kind.INDIVIDUAL_SHARE_OF_LEVEL, ReviewTrigger.shareOfLevel(2600, 5000),
            ReviewTrigger.Kind.COLLECTIVE_DOSE, 8000.0);
        assertEquals(ReviewTrigger.Answer.REVIEW, share.check(job).answer());
        assertEquals("Individual dose 52 % is above 50 % of the administrative level: formal review before work.", share.check(job).text());
        assertEquals(ReviewTrigger.Answer.KEPT, collective.check(job).answer());
        assertEquals(ReviewTrigger.Answer.NOT_KNOWN, collective.check(Map.of()).answer());
        assertEquals(ReviewTrigger.Answer.KEPT, share.check(Map.of(ReviewTrigger.Kind.INDIVIDUAL_SHARE_OF_LEVEL, 50.0)).answer());
        assertThrows(Invalid.class, () -> share.check(Map.of(ReviewTrigger.Kind.INDIVIDUAL_SHARE_OF_LEVEL, Double.NaN)));
    }

    private static IndividualCheck check(ExposedWorker worker, RuleSet rules, List<DatedDose> entries, double constraintMsv, OptionalDouble alarm) {
        LocalDate first = entries.get(0).date();
        return IndividualCheck.of(worker, new Assignment(first, Map.of(DoseQuantity.EFFECTIVE_DOSE, entries), Map.of(),
            Optional.of(new Constraint("job", 1000 * constraintMsv)), alarm), rules, 18);
    }

    private static ExposedWorker effective(DoseRecord record) {
        return new ExposedWorker(Optional.empty(), Optional.empty(), Map.of(DoseQuantity.EFFECTIVE_DOSE, record));
    }

    private static DoseRecord year(double usv) {
        return DoseRecord.ofYears(2027, "vector", usv);
    }

    private static List<DatedDose> job(LocalDate day, double usv) {
        return List.of(new DatedDose(day, usv));
    }
}
