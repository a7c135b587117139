package kerfbook.schedule;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import kerfbook.quantity.Likely;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class PertTest {
    /** PUBLISHED: V30, lecture named in the file's head; printed to two decimals, hence 0.005. */
    @ParameterizedTest @CsvFileSource(resources = "/published/pert.csv", numLinesToSkip = 2)
    void gives_the_printed_means_and_variances(double low, double likely, double high, double mean, double variance) {
        Likely hours = new Likely(low, likely, high);
        assertEquals(mean, Pert.mean(hours), 0.005);
        assertEquals(variance, Pert.variance(hours), 0.005);
    }

    /**
     * PUBLISHED: V31, same lecture: arcs between events 1 to 6, critical 1-2-3-4-5-6, T = 20.83 printed to two decimals. The variance of
     * the path, 3.806, was worked out from the printed times, not printed.
     */
    @Test void finds_the_printed_path_and_expected_time() {
        Likely twoThree = Likely.exactly(0);
        Likely oneTwo = new Likely(2, 5, 8);
        Likely threeFour = new Likely(3, 5, 10);
        Likely fourFive = new Likely(4, 6, 10);
        Likely fiveSix = new Likely(2, 4, 6);
        CriticalPath path = CriticalPath.of(List.of(Activity.of("1-2", Pert.mean(oneTwo)), Activity.of("1-3", Pert.mean(new Likely(1, 4, 7))),
            Activity.of("2-3", Pert.mean(twoThree), "1-2"), Activity.of("2-4", Pert.mean(new Likely(2, 4, 6)), "1-2"),
            Activity.of("2-6", Pert.mean(new Likely(5, 7, 12)), "1-2"), Activity.of("3-4", Pert.mean(threeFour), "1-3", "2-3"),
            Activity.of("3-5", Pert.mean(new Likely(3, 6, 9)), "1-3", "2-3"), Activity.of("4-5", Pert.mean(fourFive), "2-4", "3-4"),
            Activity.of("4-6", Pert.mean(new Likely(2, 5, 8)), "2-4", "3-4"), Activity.of("5-6", Pert.mean(fiveSix), "3-5", "4-5")));
        assertEquals(20.83, path.finishHour(), 0.005);
        assertEquals(List.of("1-2", "2-3", "3-4", "4-5", "5-6"), path.critical());
        assertEquals(3.806, Pert.variance(List.of(oneTwo, twoThree, threeFour, fourFive, fiveSix)), 0.0005);
    }

    /** BY HAND: V34, six activities with means 5, 3, 1, 2, 3, 4 (times from a published example): A-B-E-F is 15, its variance 22/3. */
    @Test void adds_up_a_small_network() {
        List<Likely> hours = List.of(new Likely(2, 5, 8), new Likely(1, 2, 9), new Likely(0.25, 0.5, 3.75), new Likely(1, 1, 7),
            new Likely(1, 2, 9), new Likely(1, 3, 11));
        List<Double> means = hours.stream().map(Pert::mean).toList();
        assertEquals(List.of(5.0, 3.0, 1.0, 2.0, 3.0, 4.0), means);
        CriticalPath path = CriticalPath.of(List.of(Activity.of("A", means.get(0)), Activity.of("B", means.get(1), "A"),
            Activity.of("C", means.get(2), "A"), Activity.of("D", means.get(3), "B"), Activity.of("E", means.get(4), "B", "C"),
            Activity.of("F", means.get(5), "D", "E")));
        assertEquals(15, path.finishHour());
        assertEquals(List.of("A", "B", "E", "F"), path.critical());
        assertEquals(22.0 / 3, Pert.variance(List.of(hours.get(0), hours.get(1), hours.get(4), hours.get(5))), 1e-12);
    }
}
