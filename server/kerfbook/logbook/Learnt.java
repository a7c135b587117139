package kerfbook.logbook;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.estimate.Finding;

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

    /** Dose received, µSv. */
    public record Received(double totalUsv, Map<String, Double> workers, Map<String, Double> areas, Map<String, Double> groups,
                           Map<String, Double> tasks) { }

    /** The factor of this kind, if anything was observed of it. */
    public Optional<LearntFactor> factor(FactorKind kind, String of) {
        return factors.stream().filter(each -> each.kind() == kind && each.of().equals(of)).findFirst();
    }
}
