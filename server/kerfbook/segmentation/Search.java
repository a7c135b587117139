package kerfbook.segmentation;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BiFunction;

/** Goes through the divisions of one job and keeps those that fit. */
final class Search {
    private static final double SLACK = 1e-9;
    /** Figures closer than this, in metres or kg, count as equal. */
    private static final double EQUAL = 1e-6;

    /** A division that fits, with what it is judged by; packages are a lower bound until they are counted. */
    private record Fit(Trial trial, double metres, double heaviestKg, int leastPackages) { }

    private final Job job;
    private final Capacity capacity;
    private final Packer packer;
    private final List<Fit> fits = new ArrayList<>();
    private double fewestMetres = Double.POSITIVE_INFINITY;
    private int leastPieces = Integer.MAX_VALUE;
    private Trial furthest;
    private boolean tooMany;
    private int tried;

    Search(Job job) {
        this.job = job;
        this.capacity = Capacity.of(job);
        this.packer = new Packer(job, capacity);
    }

    void run() {
        switch (job.shape().kind()) {
            case RING, CYLINDER_SHELL -> all(Division.Pattern.BANDS, Segmentation.MOST_TWO_WAYS, Segmentation.MOST_TWO_WAYS, 1);
            case PLATE, GRID -> all(Division.Pattern.PARTS, Segmentation.MOST_TWO_WAYS, Segmentation.MOST_TWO_WAYS, 1);
            case BLOCK -> all(Division.Pattern.PARTS, Segmentation.MOST_THREE_WAYS, Segmentation.MOST_THREE_WAYS, Segmentation.MOST_THREE_WAYS);
            case TUBE_BUNDLE, ROD_BUNDLE, BOLTS -> all(Division.Pattern.LENGTHS, Segmentation.MOST_ONE_WAY, 1, 1);
            case ROUND_PLATE, ROUND_GRID -> {
                all(Division.Pattern.SECTORS, Segmentation.MOST_TWO_WAYS, 1, 1);
                all(Division.Pattern.STRIPS, Segmentation.MOST_TWO_WAYS, Segmentation.MOST_TWO_WAYS, 1);
            }
        }
        double most = fewestMetres * job.bounds().metresAllowance() * (1 + SLACK);
        fits.removeIf(fit -> fit.metres > most);
    }

    /** A finer division has neither fewer metres nor fewer pieces, so a way is left once both are past what can still be of use. */
    private void all(Division.Pattern pattern, int first, int second, int third) {
        for (int i = 1; i <= first && useful(new Division(pattern, i, 1, 1)); i++) {
            for (int j = 1; j <= second && useful(new Division(pattern, i, j, 1)); j++) {
                for (int k = 1; k <= third && useful(new Division(pattern, i, j, k)); k++) {
                    hold(new Division(pattern, i, j, k));
                }
            }
        }
    }

    private boolean useful(Division division) {
        int pieces = Layout.leastPieces(job.shape(), division);
        if (pieces > job.bounds().mostPieces()) {
            tooMany = true;
            return false;
        }
        return pieces < leastPieces || Layout.metres(job.shape(), division) <= fewestMetres * job.bounds().metresAllowance() * (1 + SLACK);
    }

    private void hold(Division division) {
        Trial trial = Trial.of(job, capacity, division);
        tried++;
        if (trial.fails().isPresent()) {
            furthest = furthest == null || trial.further(furthest, job) ? trial : furthest;
            return;
        }
        Layout layout = trial.layout().orElseThrow();
        double metres = layout.metres();
        fewestMetres = Math.min(fewestMetres, metres);
        leastPieces = Math.min(leastPieces, layout.pieces());
        fits.add(new Fit(trial, metres, trial.heaviestKg(job), packer.least(layout, trial.roomFor())));
    }

    /** The best for each aim; ties go to fewer metres, fewer packages, lighter lifts, then to the division tried first. */
    Map<Aim, Trial> chosen() {
        Map<Aim, Trial> chosen = new EnumMap<>(Aim.class);
        chosen.put(Aim.FEWEST_CUT_METRES, best((fit, packages) -> List.of(equal(fit.metres), (long) packages, equal(fit.heaviestKg))));
        chosen.put(Aim.FEWEST_PACKAGES, best((fit, packages) -> List.of((long) packages, equal(fit.metres), equal(fit.heaviestKg))));
        chosen.put(Aim.LIGHTEST_LIFT, best((fit, packages) -> List.of(equal(fit.heaviestKg), equal(fit.metres), (long) packages)));
        return chosen;
    }

    /** Judged by the least number of packages first; packages are then counted only for those that could still be best. */
    private Trial best(BiFunction<Fit, Integer, List<Long>> judge) {
        List<Fit> hopeful = new ArrayList<>(fits);
        hopeful.sort((a, b) -> compare(judge.apply(a, a.leastPackages), judge.apply(b, b.leastPackages)));
        Fit best = null;
        List<Long> mark = List.of();
        for (Fit fit : hopeful) {
            if (best != null && compare(judge.apply(fit, fit.leastPackages), mark) >= 0) {
                break;
            }
            List<Long> own = judge.apply(fit, packages(fit));
            if (best == null || compare(own, mark) < 0) {
                best = fit;
                mark = own;
            }
        }
        return Optional.ofNullable(best).orElseThrow().trial;
    }

    private int packages(Fit fit) {
        Layout layout = fit.trial.layout().orElseThrow();
        return layout.parts().size() == 1 ? fit.leastPackages : packer.pack(layout, fit.trial.roomFor()).packages();
    }

    private static long equal(double figure) {
        return Math.round(figure / EQUAL);
    }

    private static int compare(List<Long> a, List<Long> b) {
        for (int i = 0; i < a.size(); i++) {
            int order = a.get(i).compareTo(b.get(i));
            if (order != 0) {
                return order;
            }
        }
        return 0;
    }

    boolean found() {
        return !fits.isEmpty();
    }

    Reason impossible() {
        if (furthest == null) {
            return new Reason("whole", Bound.PIECE_COUNT, job.shape().count().orElse(1) + " pieces are there before the first cut, more than the "
                + job.bounds().mostPieces() + " that are wanted at most");
        }
        Reason reason = furthest.reason(job, capacity);
        return tooMany ? new Reason(reason.division(), reason.bound(), reason.text() + "; finer divisions have more than "
            + job.bounds().mostPieces() + " pieces") : reason;
    }

    Capacity capacity() {
        return capacity;
    }

    int leastPieces() {
        return leastPieces;
    }

    int tried() {
        return tried;
    }
}
