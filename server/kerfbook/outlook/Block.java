package kerfbook.outlook;

import java.util.Arrays;
import kerfbook.estimate.Resolved;

/**
 * Some trials at once, on one thread: first what is shared, then each task in the order of the network, then what needs all of them. One row per
 * series, one place per trial.
 */
final class Block {
    static final int TRIALS = 256;

    final Model model;
    final Series series;
    private final long[] inputKeys;
    private final long[][] stepKeys;
    private final double[][] factors;
    private final long[] faultKeys;
    private final double[][] failed;
    /** Of all techniques together, then of each that fails. */
    final double[][] faults;
    private final double[] count = new double[TRIALS];
    final Course course;
    final Staffed staffed;
    final double[] usv = new double[TRIALS];
    final double[] hours = new double[TRIALS];
    private final double[] step = new double[TRIALS];
    private final double[] shifts = new double[TRIALS];
    private final double[] scratch = new double[TRIALS];
    private final double[] ratio = new double[TRIALS];
    final double[] total = new double[TRIALS];
    final double[] span = new double[TRIALS];
    final double[] cost = new double[TRIALS];
    final double[] highest = new double[TRIALS];
    final double[][] groups;
    final double[][] components;
    final double[][] techniques;
    final double[][] targets;
    final double[][] people;
    final double[][][] bounds;
    final double[][] weeks;
    private final double[] byWeek;
    final double[][] cumulative;
    final double[][] used;
    private final double[][] techniqueFrom;
    private final double[][] techniqueTo;

    Block(Model model, long seed, Series series) {
        this.model = model;
        this.series = series;
        inputKeys = model.program.keys(seed);
        stepKeys = new long[model.works.length][];
        for (Work work : model.works) {
            stepKeys[work.place] = work.steps.stream().mapToLong(each -> Draw.key(seed, each.text)).toArray();
        }
        factors = rows(model.program.size());
        faultKeys = model.failing.all.stream().mapToLong(each -> Draw.key(seed, each.text())).toArray();
        failed = rows(faultKeys.length);
        faults = rows(faultKeys.length == 0 ? 0 : 1 + model.failing.techniques.size());
        course = new Course(model);
        staffed = new Staffed(model, factors);
        groups = rows(model.groups.size());
        components = rows(model.components.size());
        techniques = rows(model.techniques.size());
        targets = rows(model.resolved.targets().size());
        people = rows(model.workers.size());
        bounds = new double[model.narrow.size()][][];
        Arrays.setAll(bounds, i -> rows(model.workers.size()));
        weeks = rows(series.weeks.count());
        byWeek = new double[(series.weeks.count() + 1) * TRIALS];
        cumulative = rows(series.weeks.count());
        used = rows(model.costs.used.size());
        techniqueFrom = rows(model.costs.days.size());
        techniqueTo = rows(model.costs.days.size());
    }

    private static double[][] rows(int count) {
        return new double[count][TRIALS];
    }

    /** Works out {@code n} trials; what came out goes into the series. */
    void run(long firstTrial, int n, Series.Into into) {
        into.block(n);
        model.program.run(factors, inputKeys, firstTrial, n);
        fail(firstTrial, n);
        clear(n);
        for (int i : model.order) {
            Work work = model.works[i];
            if (work.weekly) {
                timeOnly(work, firstTrial, n);
            } else {
                draw(work, firstTrial, n, null);
                place(work, n);
                sum(work, n, course.start);
                into.task(this, work, n);
            }
        }
        weekly(firstTrial, n, into);
        for (double[] group : groups) {
            Rows.add(total, n, group);
        }
        staffed.end(n);
        Rows.add(cost, n, staffed.cost);
        for (int k = 0; k < n; k++) {
            span[k] = (course.end[k] + series.weeklyEndsLaterTicks) / Work.TICKS;
        }
        course.countCritical(n);
        share(n);
        costs(n);
        accumulate(n);
        into.whole(this, firstTrial, n);
    }

    private void clear(int n) {
        course.begin(n);
        staffed.begin(n);
        for (double[][] rows : new double[][][] {groups, components, techniques, targets, people}) {
            Rows.fill(rows, n, 0);
        }
        for (double[][] rows : bounds) {
            Rows.fill(rows, n, 0);
        }
        for (int i = 0; i < techniqueFrom.length; i++) {
            Rows.fill(techniqueFrom[i], n, Double.POSITIVE_INFINITY);
            Rows.fill(techniqueTo[i], n, 0);
        }
        Arrays.fill(byWeek, 0);
        Rows.fill(total, n, 0);
        Rows.fill(cost, n, model.costs.once);
    }

    /** How many faults there are, and of which technique. */
    private void fail(long firstTrial, int n) {
        for (double[] row : faults) {
            Rows.fill(row, n, 0);
        }
        for (int i = 0; i < failed.length; i++) {
            Failing.Of of = model.failing.all.get(i);
            Rows.poisson(failed[i], n, faultKeys[i], firstTrial, of.mean(), of.factor() == Program.ONE ? null : factors[of.factor()]);
            if (of.told()) {
                Rows.add(faults[0], n, failed[i]);
                Rows.add(faults[1 + model.failing.techniques.indexOf(of.technique())], n, failed[i]);
            }
        }
    }

    /** Hours and dose of one task; of a weekly one, as often as it comes back. */
    private void draw(Work work, long firstTrial, int n, double[] times) {
        Rows.fill(hours, n, 0);
        Rows.fill(usv, n, 0);
        for (int pass = 0; pass < (work.shifts ? 2 : 1); pass++) {
            if (pass == 1) {
                countShifts(n);
            }
            for (int i = 0; i < work.steps.size(); i++) {
                Work.Step each = work.steps.get(i);
                if ((each.kind == Work.Kind.SHIFTS) == (pass == 1)) {
                    time(each, stepKeys[work.place][i], firstTrial, n);
                    if (pass == 1) {
                        Rows.times(step, n, shifts);
                    }
                    if (!each.alongside) {
                        Rows.add(hours, n, step);
                    }
                    if (times != null) {
                        Rows.times(step, n, times);
                    }
                    staffed.step(each, n, step, usv);
                }
            }
        }
    }

    private void timeOnly(Work work, long firstTrial, int n) {
        Rows.fill(hours, n, 0);
        for (int i = 0; i < work.steps.size(); i++) {
            if (!work.steps.get(i).alongside) {
                time(work.steps.get(i), stepKeys[work.place][i], firstTrial, n);
                Rows.add(hours, n, step);
            }
        }
        place(work, n);
    }

    /** Whole shifts that the other steps take, as the forecast counts them. */
    private void countShifts(int n) {
        for (int k = 0; k < n; k++) {
            shifts[k] = Math.max(1, Math.ceil(hours[k] / series.hoursPerShift - 1e-9));
        }
    }

    private void time(Work.Step each, long key, long firstTrial, int n) {
        if (each.kind == Work.Kind.FAULTS) {
            Rows.fill(count, n, 0);
            for (int fault : each.faults) {
                Rows.add(count, n, failed[fault]);
            }
            Rows.times(step, n, key, firstTrial, count, each.each, each.width, each.hours);
        } else if (each.each == null) {
            Rows.fill(step, n, each.hours);
        } else {
            Rows.pert(step, n, key, firstTrial, each.each.cells, each.width, each.hours);
        }
        if (each.shared != Program.ONE) {
            Rows.times(step, n, factors[each.shared]);
        }
    }

    private void place(Work work, int n) {
        course.place(work, n, hours);
        for (int i = 0; i < techniqueFrom.length; i++) {
            if (model.costs.days.get(i).technique() == work.technique && work.remaining > 0) {
                Rows.earlier(techniqueFrom[i], n, course.start);
                Rows.later(techniqueTo[i], n, course.finish[work.place], 0);
            }
        }
    }

    private void sum(Work work, int n, double[] start) {
        Rows.add(groups[work.group], n, usv);
        if (work.component >= 0) {
            Rows.add(components[work.component], n, usv);
        }
        if (work.technique >= 0) {
            Rows.add(techniques[work.technique], n, usv);
        }
        for (int target : work.targets) {
            Rows.add(targets[target], n, usv);
        }
        series.weeks.spread(byWeek, n, usv, start, course.finish[work.place], scratch);
    }

    private void weekly(long firstTrial, int n, Series.Into into) {
        for (int k = 0; k < n; k++) {
            ratio[k] = Math.max(0, course.last[k] - course.first[k]) / model.weekly.planTicks();
        }
        for (Work work : model.works) {
            if (work.weekly) {
                draw(work, firstTrial, n, ratio);
                Rows.begin(step, n, course.finish[work.place], hours);
                sum(work, n, step);
                into.task(this, work, n);
            }
        }
    }

    private void share(int n) {
        for (int i = 0; i < staffed.crews.length; i++) {
            Model.Crew crew = model.crews.get(i);
            for (Resolved.Share share : crew.shares()) {
                int worker = model.workers.indexOf(share.worker());
                Rows.add(people[worker], n, staffed.crews[i], share.share());
                for (int bound : crew.constraints()) {
                    Rows.add(bounds[bound][worker], n, staffed.crews[i], share.share());
                }
            }
        }
        Rows.fill(highest, n, 0);
        for (int i = 0; i < people.length; i++) {
            Rows.later(highest, n, people[i], series.receivedByWorker[i]);
        }
    }

    private void costs(int n) {
        for (Costs.Moved moved : model.costs.moved) {
            add(cost, moved, n);
        }
        for (int i = 0; i < used.length; i++) {
            Rows.fill(used[i], n, 0);
            for (Costs.Moved moved : model.costs.used.get(i).parts()) {
                add(used[i], moved, n);
            }
        }
        for (int i = 0; i < techniqueFrom.length; i++) {
            double perDay = series.hoursPerDay * Work.TICKS;
            double price = model.costs.days.get(i).price();
            for (int k = 0; k < n; k++) {
                if (techniqueTo[i][k] > 0) {
                    double from = Math.floor((techniqueFrom[i][k] + 4) / perDay);
                    double to = Math.max(from + 1, Math.ceil((techniqueTo[i][k] - 4) / perDay));
                    cost[k] += price * (to - from);
                }
            }
        }
    }

    private void add(double[] to, Costs.Moved moved, int n) {
        if (moved.factor() == Program.ONE) {
            for (int k = 0; k < n; k++) {
                to[k] += moved.amount();
            }
        } else {
            Rows.add(to, n, factors[moved.factor()], moved.amount());
        }
    }

    private void accumulate(int n) {
        for (int i = 0; i < weeks.length; i++) {
            System.arraycopy(byWeek, i * TRIALS, weeks[i], 0, n);
            System.arraycopy(weeks[i], 0, cumulative[i], 0, n);
            if (i > 0) {
                Rows.add(cumulative[i], n, cumulative[i - 1]);
            }
        }
    }
}
