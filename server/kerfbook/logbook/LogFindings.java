package kerfbook.logbook;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Finding.Weight;
import kerfbook.logbook.TaskComparison.State;
import kerfbook.quantity.Sum;

/** What the log shows that somebody should look at; worked out, never typed. */
final class LogFindings {
    private static final double SCATTER_ASKS_ABOVE = 1.5;

    private LogFindings() { }

    static List<Finding> of(List<TaskComparison> tasks, List<Entry> strays, List<LearntFactor> factors, List<DriftChart> drift) {
        List<Finding> findings = new ArrayList<>();
        for (DriftChart chart : drift) {
            if (chart.alarm()) {
                findings.add(new Finding(Weight.DECIDE, "lessons", chart.kind() + " " + chart.of(), sentence(named(chart.kind(), chart.of())) + " drifts. " + chart.words(),
                    "Find out why. Then accept what was learnt, take a new survey, or record why nothing changes."));
            }
        }
        for (LearntFactor factor : factors) {
            if (factor.proposed()) {
                findings.add(new Finding(Weight.DECIDE, "lessons", factor.kind() + " " + factor.of(), factor.words(),
                    "The forecast of the rest does not know this until it is accepted."));
            }
            factor.seenGsd().filter(seen -> Math.log(seen) > SCATTER_ASKS_ABOVE * sigma(factor, drift)).ifPresent(seen ->
                findings.add(new Finding(Weight.CHECK, "lessons", factor.kind() + " " + factor.of(),
                    String.format(Locale.ROOT, "Single values of %s scatter by a factor of %.2f, more than is taken as usual.", named(factor.kind(), factor.of()), seen),
                    "Its stated range is too narrow. Look whether two kinds of work go by one name.")));
        }
        tasks(tasks, findings);
        if (!strays.isEmpty()) {
            Sum usv = new Sum();
            strays.forEach(entry -> usv.add(entry.usv()));
            findings.add(new Finding(Weight.CHECK, "log", "", Learning.plural(strays.size(), "entry").replace("entrys", "entries") + " with "
                + Math.round(usv.value()) + " µSv name tasks that the plan no longer has.", "Their dose counts as received, but not as work done."));
        }
        return List.copyOf(findings);
    }

    private static void tasks(List<TaskComparison> tasks, List<Finding> findings) {
        for (TaskComparison task : tasks) {
            if (task.state() != State.OPEN && task.hours() == 0 && task.forecastHours() > 0) {
                findings.add(new Finding(Weight.CHECK, "log", task.task(), task.name() + " is closed and has no entry.",
                    "Nothing is learnt from it. If somebody worked on it, log that."));
            } else if (task.state() == State.OPEN && task.assumedShare()) {
                findings.add(new Finding(Weight.CHECK, "log", task.task(), task.name() + " has entries, and nobody said how far it is.",
                    String.format(Locale.ROOT, "By its hours %.0f %% are taken as done, never more than 90. Say how far it is, or close it.", 100 * task.share())));
            } else if (task.state() == State.OPEN && task.share() == 1) {
                findings.add(new Finding(Weight.CHECK, "log", task.task(), task.name() + " is done by its share and not closed.", "Close it, so that it counts."));
            }
        }
    }

    private static double sigma(LearntFactor factor, List<DriftChart> drift) {
        return drift.stream().filter(chart -> chart.kind() == factor.kind() && chart.of().equals(factor.of())).findFirst().orElseThrow().sigma();
    }

    private static String named(FactorKind kind, String of) {
        return switch (kind) {
            case HOURS -> "the time for \"" + of + "\"";
            case RATE -> "the dose rate in the area \"" + of + "\"";
            case SPEED -> "the time with the tool on of \"" + of + "\"";
        };
    }

    private static String sentence(String words) {
        return Character.toUpperCase(words.charAt(0)) + words.substring(1);
    }
}
