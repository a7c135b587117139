package kerfbook.outlook;

import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import kerfbook.campaign.Scope;
import kerfbook.estimate.Finding;

/**
 * An outlook in words, counted on the twenty outcomes that every page shows.
 *
 * @param heading how many outcomes end above the target
 * @param under   what was received, between what 8 in 10 outcomes end, and when
 * @param decide  what asks a person for a decision, nothing typed by hand
 */
public record Verdict(String heading, String under, List<Finding> decide) {
    private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM yyyy", Locale.ENGLISH);
    private static final double PER_MSV = 1000;
    /** Outcomes 3 to 18 of 20: 8 in 10. */
    private static final int LOW = 2;
    private static final int HIGH = 17;

    public Verdict {
        decide = List.copyOf(decide);
    }

    /** @param receivedUsv collective dose in the log, 0 before the first entry */
    public static Verdict of(Outlook outlook, double receivedUsv, Thresholds thresholds) {
        Optional<Outlook.Target> campaign = outlook.targets().stream().filter(target -> target.scope() == Scope.CAMPAIGN).findFirst();
        List<Finding> decide = new ArrayList<>();
        for (Outlook.Target target : outlook.targets()) {
            int above = Spread.OUTCOMES - target.kept().of20();
            if (above >= thresholds.targetOf20()) {
                decide.add(new Finding(Finding.Weight.DECIDE, "targets", target.code(), above + " of 20 outcomes of "
                    + target.of().map(of -> "\"" + of + "\"").orElse("the campaign") + " end above the target of " + msv(target.personUsv()) + " person-mSv.",
                    "Change the plan, or record why more is accepted."));
            }
        }
        for (Outlook.Person person : outlook.people()) {
            for (Outlook.Bound bound : person.bounds()) {
                int above = Spread.OUTCOMES - bound.kept().of20();
                if (above >= thresholds.constraintOf20()) {
                    decide.add(new Finding(Finding.Weight.DECIDE, "workers", person.worker(), person.worker() + " ends above the constraint "
                        + bound.constraint() + " of " + msv(bound.individualUsv()) + " mSv in " + above + " of 20 outcomes.",
                        "Share the work out differently, or record why it is accepted."));
                }
            }
        }
        return new Verdict(heading(outlook, campaign), under(outlook, campaign, receivedUsv), decide);
    }

    private static String heading(Outlook outlook, Optional<Outlook.Target> campaign) {
        if (campaign.isEmpty()) {
            return "8 in 10 outcomes finish between " + range(outlook.personUsv()) + " person-mSv; no target is set";
        }
        int above = Spread.OUTCOMES - campaign.get().kept().of20();
        String how = above == 0 ? "None" : above == Spread.OUTCOMES ? "All" : Integer.toString(above);
        return how + (above == Spread.OUTCOMES ? " 20" : " of 20") + " equally likely outcomes " + (above == 1 ? "finishes" : "finish") + " above the ALARA target";
    }

    private static String under(Outlook outlook, Optional<Outlook.Target> campaign, double receivedUsv) {
        StringBuilder words = new StringBuilder();
        if (outlook.asOf().isPresent()) {
            words.append(msv(receivedUsv)).append(campaign.map(target -> " of " + msv(target.personUsv())).orElse("")).append(" person-mSv received by ")
                .append(DAY.format(outlook.asOf().get())).append(". ");
        }
        List<LocalDate> days = outlook.finish().outcomes();
        words.append("8 in 10 outcomes finish between ").append(range(outlook.personUsv())).append(" person-mSv, and on a day between ")
            .append(DAY.format(days.get(LOW))).append(" and ").append(DAY.format(days.get(HIGH))).append('.');
        return words.toString();
    }

    private static String range(Spread spread) {
        return msv(spread.outcomes().get(LOW)) + " and " + msv(spread.outcomes().get(HIGH));
    }

    /** Three significant digits, without powers of ten. */
    static String msv(double usv) {
        double msv = usv / PER_MSV;
        if (msv == 0) {
            return "0";
        }
        int decimals = (int) Math.max(0, 2 - Math.floor(Math.log10(Math.abs(msv) * (1 + 5e-4))));
        String text = String.format(Locale.ROOT, "%." + Math.min(6, decimals) + "f", msv);
        return decimals == 0 || !text.contains(".") ? text : text.replaceAll("0+$", "").replaceAll("\\.$", "");
    }
}
