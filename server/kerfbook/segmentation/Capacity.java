package kerfbook.segmentation;

import kerfbook.campaign.Container;

/**
 * Heaviest content of one package, by all that counts in kg: payload, hoist, and, since activity is spread evenly, activity and dose rate.
 *
 * @param kg    0 where not even the lightest content keeps to the bound
 * @param binds what sets it
 */
record Capacity(double kg, Bound binds) {
    private static final double SLACK = 1e-9;
    private static final double CLOSE = 1e-3;
    private static final int MOST_STEPS = 60;

    static Capacity of(Job job) {
        Bounds bounds = job.bounds();
        Capacity least = new Capacity(bounds.container().payloadKg(), Bound.PAYLOAD);
        if (bounds.contentKg() < least.kg) {
            least = new Capacity(bounds.contentKg(), Bound.HOIST);
        }
        if (bounds.activityLimit().isPresent()) {
            double perKg = bounds.activityLimit().get().sum(job.becquerels()) / job.massKg();
            if (perKg * least.kg > 1) {
                least = new Capacity(1 / perKg, Bound.ACTIVITY);
            }
        }
        return bounds.rateCeiling().isPresent() ? least.under(bounds.rateCeiling().get(), job) : least;
    }

    /**
     * The most that keeps to the ceiling, to one part in a thousand: straight on in the logarithms from the last two loads, within the range that is
     * still open. What is returned has been asked for and keeps.
     */
    private Capacity under(RateCeiling ceiling, Job job) {
        double high = Math.min(kg, job.massKg());
        double highRate = ceiling.rate(load(job, high));
        if (highRate <= ceiling.usvPerH()) {
            return this;
        }
        double low = 0;
        double last = high;
        double lastRate = highRate;
        double power = 1;
        for (int i = 0; i < MOST_STEPS && high - low > CLOSE * high; i++) {
            double inside = Math.min((high - low) / 2, Math.max((high - low) / 50, CLOSE * high / 2));
            double guess = last * Math.pow(ceiling.usvPerH() / lastRate, 1 / power) * (1 - CLOSE / 2);
            double next = Math.min(Math.max(guess, low + inside), high - inside);
            double rate = ceiling.rate(load(job, next));
            if (rate <= ceiling.usvPerH()) {
                low = next;
            } else {
                high = next;
            }
            double slope = Math.log(rate / lastRate) / Math.log(next / last);
            power = slope > 0.05 && slope < 20 ? slope : 1;
            last = rate > 0 ? next : last;
            lastRate = rate > 0 ? rate : lastRate;
        }
        return new Capacity(low, Bound.DOSE_RATE);
    }

    private static Load load(Job job, double kg) {
        return new Load(job.bounds().container(), kg, job.activityOf(kg));
    }

    boolean takes(double content) {
        return content <= kg * (1 + SLACK);
    }

    /** How many parts of one mass. */
    int of(double partKg) {
        return (int) Math.min(Integer.MAX_VALUE, Math.floor(kg * (1 + SLACK) / partKg));
    }

    /** How many parts lie in the package side by side, over and in one another, all turned the same way. */
    static int cells(Layout.Cell cell, Bounds bounds) {
        Container box = bounds.container();
        double[] inner = {box.innerLengthMm(), box.innerWidthMm(), box.innerHeightMm()};
        int most = 0;
        for (int stack = 0; stack < 3; stack++) {
            double one = inner[(stack + 1) % 3];
            double two = inner[(stack + 2) % 3];
            int high = stacked(inner[stack], cell.box().lengthMm(), cell.pitchMm(), bounds.clearanceMm());
            most = Math.max(most, high * side(one, cell.box().widthMm(), bounds) * side(two, cell.box().heightMm(), bounds));
            most = Math.max(most, high * side(one, cell.box().heightMm(), bounds) * side(two, cell.box().widthMm(), bounds));
        }
        return most;
    }

    private static int stacked(double room, double depth, double pitch, double clearance) {
        double left = room - depth - clearance;
        return left < -SLACK * room ? 0 : 1 + (int) Math.floor(left / (pitch + clearance) + SLACK);
    }

    private static int side(double room, double size, Bounds bounds) {
        return (int) Math.floor(room / (size + bounds.clearanceMm()) + SLACK);
    }
}
