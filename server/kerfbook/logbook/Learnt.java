package kerfbook.logbook;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import kerfbook.estimate.Finding;
import kerfbook.outlook.Factor;
import kerfbook.outlook.Received;
import kerfbook.outlook.State;

/**
 * What the log teaches about a forecast.
 *
 * @param asOf      the day as whose morning it is; entries of that day count too
 * @param tasks     those somebody worked on
 * @param factors   all factors with an observation, hours, then rates, then speeds
 * @param inForce   what was accepted and still holds
 * @param dose      person-µSv against the estimate
 * @param hours     person-hours in the areas against the estimate
 * @param split     why the dose of the work done is not what was estimated
 * @param findings  what somebody should look at
 * @param notes     how all this was worked out
 */
public record Learnt(LocalDate asOf, LearningSettings settings, int entries, List<TaskComparison> tasks, List<LearntFactor> factors,
                     List<AcceptedFactor> inForce, List<DriftChart> drift, EarnedValue.Figures dose, EarnedValue.Figures hours,
                     Optional<Split> split, Received received, List<Finding> findings, List<String> notes) {

    /**
     * {@code doseFactor = hoursFactor · rateFactor}, of the work that is done, finished or not.
     *
     * @param hoursFactor logged hours over those of the part that is done
     * @param rateFactor  logged dose per hour over that of the part that is done
     */
    public record Split(double hoursFactor, double rateFactor, double doseFactor) { }

    /** The factor of this kind, if anything was observed of it. */
    public Optional<LearntFactor> factor(FactorKind kind, String of) {
        return factors.stream().filter(each -> each.kind() == kind && each.of().equals(of)).findFirst();
    }

    /** Where the work stands, with the factors that were accepted: what the forecast of the rest starts from. */
    public State state() {
        Map<FactorKind, Map<String, Factor>> by = new TreeMap<>();
        inForce.forEach(each -> put(by, each.kind(), each.of(), each.logMean(), each.logSd()));
        return state(by);
    }

    /** The same as if every factor, proposed or not, were accepted as it is now. */
    public State stateIfAccepted() {
        Map<FactorKind, Map<String, Factor>> by = new TreeMap<>();
        factors.forEach(each -> put(by, each.kind(), each.of(), each.logMean(), each.logSd()));
        return state(by);
    }

    private static void put(Map<FactorKind, Map<String, Factor>> by, FactorKind kind, String of, double logMean, double logSd) {
        by.computeIfAbsent(kind, none -> new TreeMap<>()).put(of, new Factor(logMean, logSd));
    }

    private State state(Map<FactorKind, Map<String, Factor>> by) {
        if (entries == 0 && tasks.isEmpty()) {
            return new State(Optional.empty(), Map.of(), by.getOrDefault(FactorKind.HOURS, Map.of()), by.getOrDefault(FactorKind.RATE, Map.of()),
                by.getOrDefault(FactorKind.SPEED, Map.of()), Received.NOTHING);
        }
        Map<String, Double> remaining = new TreeMap<>();
        tasks.forEach(task -> remaining.put(task.task(), task.remaining()));
        return new State(Optional.of(asOf), remaining, by.getOrDefault(FactorKind.HOURS, Map.of()), by.getOrDefault(FactorKind.RATE, Map.of()),
            by.getOrDefault(FactorKind.SPEED, Map.of()), received);
    }
}
