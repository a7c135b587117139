package kerfbook.choice;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import kerfbook.choice.DecisionQuestion.Attribute;
import kerfbook.choice.DecisionQuestion.Choice;
import kerfbook.choice.DecisionQuestion.Criterion;
import kerfbook.choice.DecisionQuestion.Dose;
import kerfbook.choice.DecisionQuestion.Score;
import kerfbook.quantity.Invalid;
import org.junit.jupiter.api.Test;

/** The mine of ICRP 55 by every method whose answer was found in print, and laws for any options. */
class DecisionAidsTest {
    private static final List<DoseValue.Band> BETAS = List.of(new DoseValue.Band(Optional.of(5_000.0), 0), new DoseValue.Band(Optional.of(15_000.0), 40_000),
        new DoseValue.Band(Optional.of(50_000.0), 80_000));

    /** PUBLISHED: items 76 and 77, plain and differential form answer option 1; 33 000 printed for the first ratio, totals worked out with costs from memory. */
    @Test
    void plain_and_differential_form_choose_the_first_option_of_the_mine() {
        DecisionAnswer answer = DecisionAids.of(mine(List.of(), List.of(), Optional.empty()));
        assertEquals("1", answer.plain().best());
        assertEquals(21_620, answer.plain().totals().get(0).total(), 1e-6);
        assertEquals("1", answer.differential().best());
        assertEquals(33_000, answer.effectiveness().steps().get(0).perPersonSv(), 0.011 * 33_000);
        assertTrue(answer.effectiveness().rising());
        assertTrue(answer.differential().applies());
        assertFalse(answer.integral().applies());
    }

    /** PUBLISHED: item 78, extended detriment of each option, to the printed digits (option 5 with the rounded bands that were printed). */
    @Test
    void extended_detriment_of_the_mine_is_as_printed() {
        DecisionAnswer answer = DecisionAids.of(mine(BETAS, List.of(), Optional.empty()));
        List<String[]> rows = rows();
        for (int i = 0; i < 5; i++) {
            DecisionAnswer.Weighed option = answer.options().get(i);
            assertEquals(Double.parseDouble(rows.get(i)[8]), option.doseCost() + option.betaCost().orElseThrow(), 1e-6, option.code());
        }
    }

    /** BY HAND: printed detriment and costs from memory add up to 66 500, 52 900, 52 000, 46 760 and 48 700; the least is option 4. */
    @Test
    void extended_form_chooses_the_fourth_option_of_the_mine() {
        DecisionAnswer.Ranked extended = DecisionAids.of(mine(BETAS, List.of(), Optional.empty())).extended().orElseThrow();
        assertEquals(List.of("4", "5", "3", "2", "1"), extended.totals().stream().map(DecisionAnswer.Total::code).toList());
        assertEquals(List.of(46_760L, 48_700L, 52_000L, 52_900L, 66_500L), extended.totals().stream().map(each -> Math.round(each.total())).toList());
    }

    /** BY HAND: intersections of X + α S of neighbours on the lower envelope, in USD per person-Sv. */
    @Test
    void the_mine_changes_its_best_option_at_four_values() {
        List<DecisionAnswer.Range> ranges = DecisionAids.of(mine(List.of(), List.of(), Optional.empty())).switching().ranges();
        assertEquals(List.of("1", "2", "3", "4", "5"), ranges.stream().map(DecisionAnswer.Range::option).toList());
        double[] at = {33_333, 59_091, 98_561, 183_333};
        for (int i = 0; i < 4; i++) {
            assertEquals(at[i], ranges.get(i).to().orElseThrow(), 0.001 * at[i]);
            assertEquals(ranges.get(i).to().orElseThrow(), ranges.get(i + 1).from());
        }
        assertTrue(ranges.get(4).to().isEmpty());
    }

    /** BY HAND, own weights, not those of ICRP 55: linear utilities of cost, collective and highest dose in equal parts; two other sets of weights. */
    @Test
    void utilities_of_the_mine_with_our_own_weights() {
        assertUtility("4", new double[] {1, 1, 1}, new double[] {0.3333, 0.5846, 0.6182, 0.6697, 0.6667});
        assertUtility("3", new double[] {0.5, 0.25, 0.25}, null);
        assertUtility("2", new double[] {0.6, 0.2, 0.2}, null);
    }

    /** PUBLISHED formula (uniprorad.com.br, etapa3 item 56), values BY HAND: 50 per person-mSv, 1 mSv, exponent 1.5. */
    @Test
    void the_value_rises_with_aversion_above_its_threshold() {
        DoseValue power = new DoseValue(DoseValue.Kind.POWER, Optional.of(50_000.0), List.of(), Optional.of(1_000.0), Optional.of(1.5));
        double[] msv = {0.5, 1, 2, 5, 10, 20};
        double[] perMsv = {50, 50, 141.4, 559.0, 1581.1, 4472.1};
        for (int i = 0; i < msv.length; i++) {
            assertEquals(perMsv[i], power.perPersonSv(1_000 * msv[i]) / 1_000, 0.1);
        }
    }

    /** EDGE: the upper edge belongs to its band, the next number above it does not; above the last band nothing is guessed. */
    @Test
    void bands_end_at_their_edge() {
        DoseValue bands = new DoseValue(DoseValue.Kind.BANDS, Optional.empty(), BETAS, Optional.empty(), Optional.empty());
        assertEquals(0, bands.perPersonSv(5_000));
        assertEquals(40_000, bands.perPersonSv(Math.nextUp(5_000)));
        assertEquals(80_000, bands.perPersonSv(50_000));
        assertThrows(Invalid.class, () -> bands.perPersonSv(Math.nextUp(50_000)));
    }

    /** BY HAND: dearer with more dose is dominated, and every method leaves it out of its answer. */
    @Test
    void a_dominated_option_is_named_with_its_reason() {
        DecisionAnswer answer = DecisionAids.of(new DecisionQuestion("EUR", List.of(choice("a", 10, 5), choice("b", 12, 6), choice("c", 20, 1)), DoseValue.of(1e6),
            List.of(), List.of(), List.of(), Optional.empty(), Optional.empty()));
        assertEquals(Optional.of("a"), answer.options().get(1).dominatedBy());
        assertTrue(answer.options().get(1).because().orElseThrow().contains("less collective dose"));
        assertEquals(List.of("a"), answer.effectiveness().steps().stream().map(DecisionAnswer.Step::from).toList());
    }

    /** BY HAND: b costs 100 per unit saved, c only 30 more per unit: step by step stops at a, the whole way to c pays at 60. */
    @Test
    void falling_ratios_ask_for_the_integral_form() {
        DecisionAnswer answer = DecisionAids.of(new DecisionQuestion("EUR", List.of(choice("a", 0, 10), choice("b", 100, 9), choice("c", 190, 6)), DoseValue.of(60),
            List.of(), List.of(), List.of(), Optional.empty(), Optional.empty()));
        assertFalse(answer.effectiveness().rising());
        assertEquals("a", answer.differential().best());
        assertEquals("c", answer.integral().best());
        assertEquals("c", answer.plain().best());
        assertTrue(answer.integral().applies());
    }

    /** LAW, 2 000 random sets: where ratios rise, step by step and plain form agree; the integral form always agrees; the range that holds α names the plain best. */
    @Test
    void the_forms_agree_with_each_other() {
        SplittableRandom random = new SplittableRandom(5_501);
        for (int run = 0; run < 2_000; run++) {
            List<Choice> options = new ArrayList<>();
            for (int i = 0; i < 2 + random.nextInt(6); i++) {
                options.add(choice("o" + i, random.nextInt(1, 1_000), random.nextInt(1, 1_000)));
            }
            double alpha = random.nextDouble(0.001, 5) * 1e6;
            DecisionAnswer answer = DecisionAids.of(new DecisionQuestion("EUR", options, DoseValue.of(alpha), List.of(), List.of(), List.of(), Optional.empty(), Optional.empty()));
            double least = answer.plain().totals().get(0).total();
            assertEquals(least, total(answer, answer.integral().best()), 1e-9 * least);
            if (answer.effectiveness().rising()) {
                assertEquals(least, total(answer, answer.differential().best()), 1e-9 * least);
            }
            DecisionAnswer.Range here = answer.switching().ranges().stream().filter(range -> alpha >= range.from() && (range.to().isEmpty() || alpha < range.to().get()))
                .findFirst().orElseThrow();
            assertEquals(least, total(answer, here.option()), 1e-9 * least);
        }
    }

    /** LAW: an option that is best in everything outranks all others; nothing outranks itself through a veto. */
    @Test
    void outranking_keeps_what_is_best_in_everything() {
        DecisionAnswer.Outranking found = DecisionAids.of(new DecisionQuestion("EUR", List.of(choice("a", 10, 1, 3), choice("b", 12, 6, 2), choice("c", 20, 2, 1)),
            DoseValue.of(1e6), List.of(), List.of(new Attribute("comfort", "Comfort", true)),
            List.of(new Criterion("cost", 1), new Criterion("collective-dose", 1), new Criterion("comfort", 1)), Optional.empty(), Optional.empty())).outranking().orElseThrow();
        assertEquals(List.of("a"), found.kept());
        DecisionAnswer.Pair back = found.pairs().stream().filter(pair -> pair.a().equals("b") && pair.b().equals("a")).findFirst().orElseThrow();
        assertEquals(0, back.concordance());
        assertEquals(1, back.discordance());
    }

    private static void assertUtility(String best, double[] weights, double[] expected) {
        DecisionAnswer.Utility utility = DecisionAids.of(mine(List.of(), List.of(new Criterion("cost", weights[0]), new Criterion("mean-collective", weights[1]),
            new Criterion("highest-individual", weights[2])), Optional.empty())).utility().orElseThrow();
        assertEquals(best, utility.best());
        if (expected != null) {
            for (int i = 0; i < 5; i++) {
                String code = "" + (i + 1);
                assertEquals(expected[i], utility.options().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow().utility(), 1e-4);
            }
        }
    }

    private static double total(DecisionAnswer answer, String code) {
        return answer.plain().totals().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow().total();
    }

    private static Choice choice(String code, double cost, double personSv, double... comfort) {
        return new Choice(code, code, cost, List.of(new Dose("all", personSv * 1e6, 1_000)), comfort.length == 0 ? List.of() : List.of(new Score("comfort", comfort[0])));
    }

    /** Bands as printed; the highest individual dose by group 1; S as printed is an attribute of its own. */
    private static DecisionQuestion mine(List<DoseValue.Band> betas, List<Criterion> criteria, Optional<Double> concordance) {
        List<Choice> options = new ArrayList<>();
        for (String[] row : rows()) {
            double highest = 1_000 * Double.parseDouble(row[3]);
            List<Dose> doses = new ArrayList<>();
            doses.add(new Dose("15 to 50 mSv", 1e6 * Double.parseDouble(row[7]), highest));
            if (Double.parseDouble(row[6]) > 0) {
                doses.add(new Dose("5 to 15 mSv", 1e6 * Double.parseDouble(row[6]), 10_000));
            }
            options.add(new Choice(row[0], "Option " + row[0], Double.parseDouble(row[1]), doses, List.of(new Score("mean-collective", Double.parseDouble(row[2])))));
        }
        return new DecisionQuestion("USD", options, DoseValue.of(20_000), betas, List.of(new Attribute("mean-collective", "S as printed", false)), criteria, concordance, Optional.empty());
    }

    private static List<String[]> rows() {
        try (BufferedReader in = new BufferedReader(new InputStreamReader(DecisionAidsTest.class.getResourceAsStream("/published/decision-example.csv"), StandardCharsets.UTF_8))) {
            return in.lines().filter(line -> !line.startsWith("#")).skip(1).map(line -> line.split(",")).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** EDGE: of two options there is one step, which follows no other; of three there are two. */
    @Test
    void one_step_is_not_held_against_a_step_before_it() {
        List<Choice> three = List.of(new Choice("a", "A", 0, List.of(new Dose("all", 10_000, 1_000)), List.of()),
            new Choice("b", "B", 1_000, List.of(new Dose("all", 5_000, 1_000)), List.of()), new Choice("c", "C", 9_000, List.of(new Dose("all", 1_000, 1_000)), List.of()));
        assertEquals("There is one step: more cost for less dose.", steps(three.subList(0, 2)));
        assertEquals("Each further step costs more for a person-sievert than the one before it.", steps(three));
    }

    private static String steps(List<Choice> choices) {
        return DecisionAids.of(new DecisionQuestion("EUR", choices, DoseValue.of(1), List.of(), List.of(), List.of(), Optional.empty(), Optional.empty())).effectiveness().sentence();
    }
}
