package kerfbook.outlook;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Scope;
import kerfbook.campaign.Target;
import kerfbook.estimate.Resolved;

/** Which series are counted, where each stands in the tally, and what is added to each because it was received before. */
final class Series {
    /** What takes the rows of a block. */
    interface Into {
        /** Comes before the others. */
        default void block(int n) { }

        void task(Block block, Work work, int n);

        void whole(Block block, long firstTrial, int n);
    }

    final Model model;
    final Weeks weeks;
    final Tally tally;
    final double hoursPerShift;
    final double hoursPerDay;
    /** By how much, in the plan, the last weekly task ends after everything else. */
    final double weeklyEndsLaterTicks;
    final double[] receivedByWorker;
    final int personHours = 0;
    final int cost = 1;
    final int groups = 2;
    final int components;
    final int techniques;
    final int areas;
    final int targets;
    final int people;
    final int bounds;
    final int weekly;
    final int cumulative;
    final int used;
    final int faults;
    /** Of each task its dose, its hours and its finish in ticks. */
    final int tasks;

    Series(Model model, Weeks weeks, int parts) {
        this.model = model;
        this.weeks = weeks;
        hoursPerShift = model.resolved.campaign().settings().calendar().productiveHoursPerShift();
        hoursPerDay = model.resolved.calendar().hoursPerDay();
        weeklyEndsLaterTicks = later(model);
        receivedByWorker = model.workers.stream().mapToDouble(worker -> model.state.received().byWorker().getOrDefault(worker, 0.0)).toArray();
        components = groups + model.groups.size();
        techniques = components + model.components.size();
        areas = techniques + model.techniques.size();
        targets = areas + model.areas.size();
        people = targets + model.resolved.targets().size();
        bounds = people + model.workers.size();
        weekly = bounds + model.narrow.size() * model.workers.size();
        cumulative = weekly + weeks.count();
        used = cumulative + weeks.count();
        faults = used + model.costs.used.size();
        tasks = faults + (model.failing.all.isEmpty() ? 0 : 1 + model.failing.techniques.size());
        tally = new Tally(tasks + 3 * model.works.length, parts);
    }

    private static double later(Model model) {
        double all = 0;
        double others = 0;
        for (Work work : model.works) {
            Resolved.Task task = model.resolved.tasks().get(work.place);
            double finish = Weekly.ticks(task.forecast().startHour()) + Weekly.ticks(task.forecast().hours());
            all = Math.max(all, finish);
            others = work.weekly ? others : Math.max(others, finish);
        }
        return model.state.asOf().isPresent() ? 0 : all - others;
    }

    /** The row of a series for a whole block. */
    private interface Each {
        void row(int at, double[] row);
    }

    private void each(Block block, Each each) {
        each.row(personHours, block.staffed.personHours);
        each.row(cost, block.cost);
        rows(groups, block.groups, each);
        rows(components, block.components, each);
        rows(techniques, block.techniques, each);
        rows(areas, block.staffed.areas, each);
        rows(targets, block.targets, each);
        rows(people, block.people, each);
        for (int i = 0; i < block.bounds.length; i++) {
            rows(bounds + i * model.workers.size(), block.bounds[i], each);
        }
        rows(weekly, block.weeks, each);
        rows(cumulative, block.cumulative, each);
        rows(used, block.used, each);
        rows(faults, block.faults, each);
    }

    private static void rows(int first, double[][] rows, Each each) {
        for (int i = 0; i < rows.length; i++) {
            each.row(first + i, rows[i]);
        }
    }

    /** Ranges from the first trials. */
    final class Ranging implements Into {
        @Override
        public void task(Block block, Work work, int n) {
            tally.range(tasks + 3 * work.place, block.usv, n);
            tally.range(tasks + 3 * work.place + 1, block.hours, n);
            tally.range(tasks + 3 * work.place + 2, block.course.finish[work.place], n);
        }

        @Override
        public void whole(Block block, long firstTrial, int n) {
            each(block, (at, row) -> tally.range(at, row, n));
        }
    }

    /** Counts, one thread's part. */
    final class Counting implements Into {
        private final Tally.Hand hand = tally.new Hand();
        private final Totals totals;
        private final long[] keptTargets = new long[model.resolved.targets().size()];
        private final long[] keptBounds;
        int part;

        Counting(Totals totals) {
            this.totals = totals;
            keptBounds = new long[model.resolved.constraints().size() * model.workers.size()];
        }

        @Override
        public void block(int n) {
            hand.block(n);
        }

        @Override
        public void task(Block block, Work work, int n) {
            hand.count(tasks + 3 * work.place, part, block.usv, n);
            hand.count(tasks + 3 * work.place + 1, part, block.hours, n);
            hand.count(tasks + 3 * work.place + 2, part, block.course.finish[work.place], n);
        }

        @Override
        public void whole(Block block, long firstTrial, int n) {
            each(block, (at, row) -> hand.count(at, part, row, n));
            totals.take(block, (int) firstTrial, n);
            List<Target> all = model.resolved.targets();
            for (int i = 0; i < keptTargets.length; i++) {
                double[] row = all.get(i).scope() == Scope.CAMPAIGN ? block.total : block.targets[i];
                keptTargets[i] += kept(row, n, all.get(i).personUsv(), receivedUnder(all.get(i)));
            }
            List<Constraint> constraints = model.resolved.constraints();
            for (int i = 0; i < constraints.size(); i++) {
                Constraint constraint = constraints.get(i);
                for (int w = 0; w < model.workers.size(); w++) {
                    double[] row = constraint.scope() == Scope.CAMPAIGN ? block.people[w] : block.bounds[model.narrow.indexOf(constraint)][w];
                    keptBounds[i * model.workers.size() + w] += kept(row, n, constraint.individualUsv(), receivedUnder(constraint, w));
                }
            }
        }

        void hand(Block block) {
            hand.hand();
            synchronized (totals) {
                add(totals.keptTargets, keptTargets);
                add(totals.keptBounds, keptBounds);
                for (int i = 0; i < block.course.critical.length; i++) {
                    totals.critical[i] += block.course.critical[i];
                }
            }
        }

        private static void add(long[] to, long[] more) {
            for (int i = 0; i < to.length; i++) {
                to[i] += more[i];
            }
        }
    }

    /** What single trials came to, and counts over all of them. */
    static final class Totals {
        static final int SHOWN = 9;

        final double[] usv;
        final double[] hours;
        final double[] highest;
        final double[] cost;
        final double[][] shown;
        final long[] keptTargets;
        final long[] keptBounds;
        final long[] critical;
        private final double received;

        Totals(Series series, int trials) {
            Model model = series.model;
            usv = new double[trials];
            hours = new double[trials];
            highest = new double[trials];
            cost = new double[model.costs.priced ? trials : 0];
            shown = new double[Math.min(SHOWN, trials)][series.weeks.count()];
            keptTargets = new long[model.resolved.targets().size()];
            keptBounds = new long[model.resolved.constraints().size() * model.workers.size()];
            critical = new long[model.works.length];
            received = model.state.received().usv();
        }

        void take(Block block, int first, int n) {
            for (int k = 0; k < n; k++) {
                usv[first + k] = received + block.total[k];
            }
            System.arraycopy(block.span, 0, hours, first, n);
            System.arraycopy(block.highest, 0, highest, first, n);
            if (cost.length > 0) {
                System.arraycopy(block.cost, 0, cost, first, n);
            }
            for (int i = first; i < Math.min(shown.length, first + n); i++) {
                for (int week = 0; week < shown[i].length; week++) {
                    shown[i][week] = received + block.cumulative[week][i - first];
                }
            }
        }
    }

    double receivedUnder(Target target) {
        Map<String, Double> tasks = model.state.received().byTask();
        return switch (target.scope()) {
            case CAMPAIGN -> model.state.received().usv();
            case GROUP -> model.state.received().byGroup().getOrDefault(target.of().orElseThrow(), 0.0);
            case COMPONENT, TASK -> Arrays.stream(model.works).filter(work -> Model.covers(target.scope(), target.of(), model.resolved.tasks().get(work.place)))
                .mapToDouble(work -> tasks.getOrDefault(model.resolved.tasks().get(work.place).id(), 0.0)).sum();
        };
    }

    double receivedUnder(Constraint constraint, int worker) {
        return constraint.scope() == Scope.CAMPAIGN ? receivedByWorker[worker] : model.receivedUnder(model.workers.get(worker), constraint);
    }

    private static int kept(double[] row, int n, double bound, double received) {
        int kept = 0;
        for (int k = 0; k < n; k++) {
            kept += row[k] + received <= bound ? 1 : 0;
        }
        return kept;
    }
}
