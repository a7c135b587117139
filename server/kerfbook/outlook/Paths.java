package kerfbook.outlook;

import java.util.Optional;

/** What single trials came to, so that two options can be compared draw by draw. */
public final class Paths {
    private final double[] usv;
    private final double[] hours;
    private final double[] highestUsv;
    private final double[] cost;

    Paths(double[] usv, double[] hours, double[] highestUsv, double[] cost) {
        this.usv = usv;
        this.hours = hours;
        this.highestUsv = highestUsv;
        this.cost = cost;
    }

    public int trials() {
        return usv.length;
    }

    /** Collective dose, person-µSv. */
    public double usv(int trial) {
        return usv[trial];
    }

    /** Working hours from start to finish. */
    public double hours(int trial) {
        return hours[trial];
    }

    /** Highest dose of one person, µSv. */
    public double highestUsv(int trial) {
        return highestUsv[trial];
    }

    /** Empty for a campaign without prices. */
    public Optional<Double> cost(int trial) {
        return cost.length == 0 ? Optional.empty() : Optional.of(cost[trial]);
    }

    double[] usv() {
        return usv;
    }
}
