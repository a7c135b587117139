package kerfbook.cli;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Forecast;

/** A forecast as plain text, doses in mSv. */
final class ForecastText {
    private static final double USV_PER_MSV = 1_000;

    private ForecastText() { }

    /** Groups, totals against targets, the highest person against the constraints. */
    static String brief(Forecast forecast) {
        StringBuilder text = new StringBuilder();
        text.append(forecast.name()).append(forecast.invented() ? " (invented, not a real campaign)" : "").append('\n');
        text.append(forecast.start()).append(" to ").append(forecast.finish()).append(", ").append(forecast.totals().workingDays())
            .append(" working days, ").append(forecast.totals().tasks()).append(" tasks\n\n");
        text.append(groups(forecast)).append('\n');
        forecast.targets().forEach(target -> text.append(target(target)));
        text.append(highest(forecast));
        long decisions = forecast.findings().stream().filter(finding -> finding.weight() == Finding.Weight.DECIDE).count();
        text.append(decisions == 0 ? "" : decisions + (decisions == 1 ? " finding needs" : " findings need") + " a decision.\n");
        return text.append(forecast.cautions().get(0)).append('\n').toString();
    }

    /** The same with every task, every person and every finding. */
    static String full(Forecast forecast) {
        StringBuilder text = new StringBuilder(brief(forecast)).append('\n');
        TextTable tasks = new TextTable("<Task", "<Start", "<Finish", ">Hours", ">Person-hours", ">Person-mSv");
        forecast.tasks().forEach(task -> tasks.row(task.id(), task.start().toString(), task.finish().toString(), hours(task.hours()),
            hours(task.personHours()), msv(task.personUsv())));
        TextTable people = new TextTable("<Person", "<Name", ">Hours", ">Planned mSv", "<Verdict");
        forecast.people().forEach(person -> people.row(person.worker(), person.name(), hours(person.hours()), msv(person.usv()), person.verdict().toString()));
        text.append(tasks).append('\n').append(people).append('\n');
        for (Finding finding : forecast.findings()) {
            text.append(finding.weight()).append(": ").append(finding.fact()).append(' ').append(finding.means()).append('\n');
        }
        forecast.cautions().forEach(caution -> text.append(caution).append('\n'));
        return text.append("Inputs ").append(forecast.inputs()).append('\n').toString();
    }

    private static TextTable groups(Forecast forecast) {
        TextTable table = new TextTable("<Tasks of group", ">Tasks", ">Hours", ">Person-hours", ">Person-mSv");
        forecast.groups().forEach(group -> table.row(group.group(), Integer.toString(group.tasks()), hours(group.hours()), hours(group.personHours()),
            msv(group.personUsv())));
        Forecast.Totals totals = forecast.totals();
        table.row("all", Integer.toString(totals.tasks()), hours(totals.taskHours()), hours(totals.personHours()), msv(totals.personUsv()));
        return table;
    }

    private static String target(Forecast.TargetVerdict target) {
        return "Target " + target.code() + scope(target.scope().toString(), target.of()) + ": " + msv(target.personUsv()) + " of "
            + msv(target.targetUsv()) + " person-mSv, " + (target.kept() ? "kept" : "NOT KEPT") + "\n";
    }

    private static String highest(Forecast forecast) {
        List<String> lines = new ArrayList<>();
        forecast.people().stream().max(Comparator.comparingDouble(Forecast.Person::usv)).ifPresent(person -> {
            lines.add("Highest person: " + person.worker() + ", " + msv(person.usv()) + " mSv planned, " + person.verdict());
        });
        for (Forecast.ConstraintVerdict verdict : forecast.constraints()) {
            lines.add("Constraint " + verdict.code() + scope(verdict.scope().toString(), verdict.of()) + ": " + verdict.worker().orElse("nobody") + " "
                + msv(verdict.highestUsv()) + " of " + msv(verdict.constraintUsv()) + " mSv, " + (verdict.kept() ? "kept" : "NOT KEPT"));
        }
        return String.join("\n", lines) + "\n";
    }

    private static String scope(String scope, Optional<String> of) {
        return " (" + scope + of.map(name -> " " + name).orElse("") + ")";
    }

    private static String hours(double hours) {
        return String.format(Locale.ROOT, "%.1f", hours);
    }

    /** To a thousandth of a mSv: a µSv. */
    private static String msv(double usv) {
        return String.format(Locale.ROOT, "%.3f", usv / USV_PER_MSV);
    }
}
