package kerfbook.outlook;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import kerfbook.campaign.Driver;
import kerfbook.campaign.FigureOverride;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Faults as chance: how many there are, and what clearing them takes. */
class FaultsDrawnTest {
    private static final int TRIALS = 200_000;
    private static final int CHECKED = 2_000;
    /** 0.5, 1, 2.5 h: {@code h = 0.5 + 2 x}, x beta with a = 2: mean 1/3, variance 2 · 4/252. */
    private static final Likely EACH = new Likely(0.5, 1, 2.5);
    private static final double MEAN_EACH = 7.0 / 6;
    private static final double SQUARE_EACH = MEAN_EACH * MEAN_EACH + 4 * 8 / 252.0;

    /** PUBLISHED: quantiles of Apache Commons Statistics, an independent implementation by the incomplete gamma function; both sides of the change of method at 50. */
    @ParameterizedTest
    @ValueSource(doubles = {1e-9, 0.01, 0.5, 3, 20, 49.999, 50, 50.001, 77.7, 400, 2_500, 10_000})
    void quantiles_are_those_of_another_implementation(double mean) {
        PoissonDistribution other = PoissonDistribution.of(mean);
        Random random = new Random(5);
        for (int i = 0; i < CHECKED; i++) {
            double u = i % 10 == 0 ? Math.pow(10, -12 * random.nextDouble()) : 1 - random.nextDouble();
            int n = (int) Poisson.quantile(mean, Math.min(u, 1 - 1e-12));
            assertTrue(other.cumulativeProbability(n) >= u - 1e-10 && (n == 0 || other.cumulativeProbability(n - 1) < u + 1e-10), mean + " at " + u + ": " + n);
        }
    }

    /** PUBLISHED: drawn counts against the probabilities of Commons Statistics (χ² over classes of at least 20 expected, within five standard errors), mean and variance λ. */
    @ParameterizedTest
    @ValueSource(doubles = {0.3, 2, 17, 120})
    void counts_have_the_probabilities_and_moments_of_a_poisson_distribution(double mean) {
        double[] row = new double[TRIALS];
        Rows.poisson(row, TRIALS, Draw.key(3, Draw.text("faults/x")), 0, mean, null);
        Spread counts = Spread.of(row);
        assertEquals(mean, counts.mean(), 3 * Math.sqrt(mean / TRIALS));
        assertEquals(mean, counts.sd() * counts.sd(), 3 * Math.sqrt((mean + 2 * mean * mean) / TRIALS));
        PoissonDistribution other = PoissonDistribution.of(mean);
        int[] seen = new int[400];
        for (double n : row) {
            seen[(int) n]++;
        }
        double chi = 0;
        int classes = 0;
        for (int n = 0; n < seen.length; n++) {
            double expected = TRIALS * other.probability(n);
            if (expected >= 20) {
                chi += (seen[n] - expected) * (seen[n] - expected) / expected;
                classes++;
            }
        }
        assertEquals(classes, chi, 5 * Math.sqrt(2 * classes));
    }

    /** EDGE: nothing fails at a rate of 0; the least and the greatest uniform number give a finite count. */
    @Test
    void the_ends_of_the_range_are_finite() {
        assertEquals(0, Poisson.quantile(0, 0.999), 0);
        for (double mean : new double[] {1e-300, 1, 50, 50.5, 10_000}) {
            double least = Poisson.quantile(mean, 0x1.0p-53);
            double most = Poisson.quantile(mean, 1 - 0x1.0p-53);
            assertTrue(least >= 0 && least <= mean && most >= Math.floor(mean) && most <= mean + 10 * Math.sqrt(mean) + 40, mean + ": " + least + ", " + most);
        }
    }

    /** LAW: with the same luck, a higher rate never means fewer faults. */
    @Test
    void a_count_never_falls_when_the_rate_rises() {
        Random random = new Random(9);
        for (int i = 0; i < CHECKED; i++) {
            double u = random.nextDouble();
            double mean = Math.exp(12 * random.nextDouble() - 3);
            assertTrue(Poisson.quantile(mean * (1 + 0.1 * random.nextDouble()), u) >= Poisson.quantile(mean, u));
        }
    }

    private static Known plan(Likely rate, int hours) {
        return new Known().saw(rate, Known.clearing(EACH)).plate("plate", hours);
    }

    /**
     * BY HAND: compound Poisson. 3 faults an hour in 2 h: λ = 6, hours of clearing λ·E[h], variance λ·E[h²]; dose is 10 µSv/h times that. Fourth cumulant over
     * squared variance bounds the error of the variance: 1/λ·E[h⁴]/E[h²]² ≤ 2.5² /6 here.
     */
    @Test
    void hours_and_dose_have_the_moments_of_a_compound_poisson_sum() {
        Outlook outlook = Known.run(plan(Likely.exactly(3), 2).model(Known.STEADY), 21, TRIALS);
        double variance = 6 * SQUARE_EACH;
        double error = variance * Math.sqrt((2 + 2.5 * 2.5 / 6) / TRIALS);
        Outlook.Task task = outlook.tasks().get(0);
        assertEquals(2 + 6 * MEAN_EACH, task.hours().mean(), 3 * Math.sqrt(variance / TRIALS));
        assertEquals(variance, task.hours().sd() * task.hours().sd(), 3 * error);
        assertEquals(60 * MEAN_EACH, outlook.personUsv().mean(), 30 * Math.sqrt(variance / TRIALS));
        assertEquals(100 * variance, outlook.personUsv().sd() * outlook.personUsv().sd(), 300 * error);
        Spread number = outlook.faults().orElseThrow().number();
        assertEquals(6, number.mean(), 3 * Math.sqrt(6.0 / TRIALS));
        assertEquals(PoissonDistribution.of(6).inverseCumulativeProbability(0.05), number.p5(), 0);
        assertEquals(PoissonDistribution.of(6).inverseCumulativeProbability(0.95), number.p95(), 0);
        assertTrue(outlook.sensitivity().stream().noneMatch(input -> input.kind() == Outlook.Kind.FAULTS), "a known rate is no uncertain input");
    }

    /**
     * BY HAND: the rate is drawn once and shared. Two plates of 2 h at a mean of 0.55 an hour: λ = 2.2, variance of the number λ + λ²·c with
     * c = (0.9/0.55)² a(6 − a)/252, a = 1 + 4 · 0.3/0.9; drawn apart for each plate it would be λ + λ²·c/2.
     */
    @Test
    void the_rate_is_shared_by_all_that_a_technique_cuts() {
        Known plan = plan(new Likely(0.2, 0.5, 1.1), 2).plate("other", 2);
        Spread number = Known.run(plan.model(Known.STEADY), 4, TRIALS).faults().orElseThrow().number();
        double a = 1 + 4 * 0.3 / 0.9;
        double c = Math.pow(0.9 / 0.55, 2) * a * (6 - a) / 252;
        double variance = 2.2 + 2.2 * 2.2 * c;
        assertEquals(2.2, number.mean(), 3 * Math.sqrt(variance / TRIALS));
        assertEquals(variance, number.sd() * number.sd(), 3 * variance * Math.sqrt(3.5 / TRIALS));
        assertTrue(2.2 * 2.2 * c / 2 > 6 * variance * Math.sqrt(3.5 / TRIALS), "the test can tell the two apart");
        Outlook.Input input = Known.run(plan.model(Known.STEADY), 4, 10_000).sensitivity().get(0);
        assertEquals("faults/saw", input.input());
        assertEquals(Outlook.Kind.FAULTS, input.kind());
        assertTrue(input.rankCorrelation() > 0.2 && input.highUsv() > input.lowUsv());
    }

    /** LAW: a rate of 0 gives the plan without the step to the last digit of everything. */
    @Test
    void nothing_fails_at_a_rate_of_zero() {
        Known without = new Known().saw(Likely.exactly(0)).plate("plate", 2).task("walk", new Likely(1, 2, 5));
        Known with = plan(Likely.exactly(0), 2).task("walk", new Likely(1, 2, 5));
        Outlook none = Known.run(without.model(State.NONE), 5, 2_000);
        Outlook zero = Known.run(with.model(State.NONE), 5, 2_000);
        assertEquals(none.personUsv(), zero.personUsv());
        assertEquals(none.hours(), zero.hours());
        assertEquals(none.tasks(), zero.tasks());
        assertEquals(none.people(), zero.people());
        assertEquals(none.weeks(), zero.weeks());
        assertEquals(none.runs(), zero.runs());
        assertEquals(none.sensitivity(), zero.sensitivity());
        assertEquals(Optional.empty(), none.faults());
        assertEquals(Spread.exactly(0), zero.faults().orElseThrow().number());
    }

    /** LAW: in no trial do more faults shorten the work or lower its dose. */
    @Test
    void more_faults_never_shorten_a_trial() {
        Paths few = Simulation.result(plan(new Likely(0.2, 0.5, 1.1), 20).model(State.NONE), new Plan(6, 5_000, 2), Progress.UNWATCHED).paths();
        Paths many = Simulation.result(plan(new Likely(0.4, 1, 2.2), 20).model(State.NONE), new Plan(6, 5_000, 2), Progress.UNWATCHED).paths();
        assertTrue(IntStream.range(0, 5_000).allMatch(k -> many.hours(k) >= few.hours(k) && many.usv(k) >= few.usv(k)));
        assertTrue(IntStream.range(0, 5_000).filter(k -> many.hours(k) > few.hours(k)).count() > 4_900);
    }

    /** LAW: threads change no digit, neither below nor above the change of method; another seed does. */
    @Test
    void threads_change_no_digit() {
        for (int hours : new int[] {2, 300}) {
            Model model = plan(new Likely(0.2, 0.5, 1.1), hours).plate("other", 1).model(State.NONE);
            Outlook one = Simulation.run(model, new Plan(7, 2_001, 1), Progress.UNWATCHED);
            assertEquals(one, Simulation.run(model, new Plan(7, 2_001, 2), Progress.UNWATCHED));
            assertEquals(one, Simulation.run(model, new Plan(7, 2_001, 3), Progress.UNWATCHED));
            assertNotEquals(one.faults(), Simulation.run(model, new Plan(8, 2_001, 1), Progress.UNWATCHED).faults());
        }
    }

    /** LAW: another component changes no fault of those that were there. */
    @Test
    void another_component_keeps_the_luck_of_the_first() {
        Outlook one = Known.run(plan(new Likely(0.2, 0.5, 1.1), 2).model(Known.STEADY), 8, 2_000);
        Outlook two = Known.run(plan(new Likely(0.2, 0.5, 1.1), 2).plate("other", 5).model(Known.STEADY), 8, 2_000);
        assertEquals(one.tasks().get(0).hours(), two.tasks().get(0).hours());
        assertEquals(7 * 0.55, two.faults().orElseThrow().number().mean(), 3 * two.faults().orElseThrow().number().error().mean());
    }

    /** LAW: two steps that clear the same faults meet the same number of them, which is told once. */
    @Test
    void all_steps_of_a_fault_happen_as_often() {
        Known plan = new Known().saw(Likely.exactly(1.5), Known.step("look", Driver.FAULT, Likely.exactly(1)), Known.step("log", Driver.FAULT, Likely.exactly(1))).plate("plate", 2);
        Outlook outlook = Known.run(plan.model(Known.STEADY), 2, 4_000);
        Spread hours = outlook.tasks().get(0).hours();
        Spread number = outlook.faults().orElseThrow().number();
        assertEquals(2 + 2 * number.mean(), hours.mean(), 1e-9);
        assertEquals(2 * number.sd(), hours.sd(), 1e-9);
    }

    /** BY HAND: half of the cuts left, tool-on time learnt to be 1.4 times: 3 · 2 · 0.5 · 1.4 = 4.2 faults expected. */
    @Test
    void what_is_left_and_what_was_learnt_set_the_number() {
        State half = new State(Optional.of(LocalDate.of(2027, 3, 2)), Map.of("plate/saw/cut", 0.5), Map.of("work", new Factor(0, 0)), Map.of("edge", new Factor(0, 0)),
            Map.of("saw", new Factor(Math.log(1.4), 0)), Received.NOTHING);
        Outlook outlook = Known.run(plan(Likely.exactly(3), 2).model(half), 3, TRIALS);
        assertEquals(4.2, outlook.faults().orElseThrow().number().mean(), 3 * Math.sqrt(4.2 / TRIALS));
        assertEquals(1.4 + 4.2 * MEAN_EACH, outlook.tasks().get(0).hours().mean(), 3 * Math.sqrt(4.2 * SQUARE_EACH / TRIALS));
        State done = new State(half.asOf(), Map.of("plate/saw/cut", 0.0), half.hours(), half.rates(), half.speeds(), Received.NOTHING);
        assertEquals(Optional.empty(), Known.run(plan(Likely.exactly(3), 2).model(done), 3, 200).faults());
    }

    /** LAW: a number of faults that somebody gave is not drawn. */
    @Test
    void a_replaced_number_is_no_chance() {
        Known plan = plan(Likely.exactly(3), 2);
        plan.overrides.add(new FigureOverride("o", "plate/saw/cut", "clear", Optional.empty(), FigureOverride.Figure.QUANTITY, 4, "agreed", LocalDate.of(2027, 2, 1)));
        Outlook outlook = Known.run(plan.model(Known.STEADY), 3, 2_000);
        assertEquals(Optional.empty(), outlook.faults());
        assertEquals(2 + 4 * MEAN_EACH, outlook.tasks().get(0).hours().mean(), 3 * 4 * Math.sqrt(32.0 / 252 / 2_000));
    }

    /** EDGE: ten thousand in one place are drawn; one more is refused at the rate. */
    @Test
    void a_number_that_cannot_be_right_is_refused() {
        assertEquals(10_000, Known.run(plan(Likely.exactly(1000), 10).model(Known.STEADY), 1, 100).faults().orElseThrow().number().mean(), 40);
        Invalid refused = assertThrows(Invalid.class, () -> plan(Likely.exactly(1000), 11).model(Known.STEADY));
        assertEquals("techniques[0].faults_per_h", refused.faults().get(0).field());
    }

    /** LAW: the demonstration's mean number is its forecast's, told for each technique, in whole outcomes. */
    @Test
    void the_demonstration_fails_as_often_as_forecast() {
        Outlook outlook = Known.run(Model.of(OutlookTest.demo(), kerfbook.tables.BasisTables.read(), "demo", State.NONE), 1, 20_000);
        Outlook.Faults faults = outlook.faults().orElseThrow();
        assertEquals(12.73, faults.number().mean(), 3 * faults.number().error().mean() + 0.005);
        assertEquals(faults.number().mean(), faults.techniques().stream().mapToDouble(each -> each.number().mean()).sum(), 1e-9);
        assertEquals(6, faults.techniques().size());
        faults.number().outcomes().forEach(outcome -> assertEquals(Math.rint(outcome), outcome, 0));
        assertTrue(outlook.notes().stream().anyMatch(note -> note.startsWith("Faults are chance")));
    }
}
