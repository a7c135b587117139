package kerfbook.review;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.TaskProgress;
import kerfbook.protection.ReviewTrigger;

/**
 * Everything about reviews of a campaign, where it stands on a day.
 *
 * @param settings  as they hold, chosen or usual
 * @param chosen    whether somebody chose them
 * @param groups    headings of the tasks
 * @param triggered triggers of a review before work, by group, before controls
 * @param before    what "before controls" means here, in words
 * @param due       reviews that should be held
 * @param casesDue  cases that should be opened
 * @param findings  what somebody must decide
 */
public record Register(LocalDate today, ReviewSettings settings, boolean chosen, List<String> groups, List<Authorised> authorisations,
                       List<Held> holdPoints, List<Meeting> reviews, List<Case> cases, List<Due.Triggered> triggered, String before, List<Due> due,
                       List<Due.CaseDue> casesDue, List<Finding> findings) {
    /** A review that was held. */
    public record Meeting(String code, Instant at, String by, Review review) { }

    /**
     * What the register is made from besides its steps.
     *
     * @param before  the forecast before controls
     * @param how     what that means here, in words
     * @param presets triggers by name
     */
    public record Known(Forecast forecast, Forecast before, String how, Map<String, List<ReviewTrigger>> presets, Circumstances now, List<TaskProgress> progress) { }

    /** @param steps in their order */
    public static Register of(List<Step> steps, Known known) {
        Map<String, List<Step>> about = new LinkedHashMap<>();
        steps.forEach(step -> about.computeIfAbsent(step.subject(), none -> new ArrayList<>()).add(step));
        List<Authorised> authorisations = new ArrayList<>();
        List<Held> points = new ArrayList<>();
        List<Meeting> reviews = new ArrayList<>();
        List<Case> cases = new ArrayList<>();
        about.forEach((subject, those) -> {
            String code = subject.substring(subject.indexOf('/') + 1);
            switch (subject.substring(0, Math.max(0, subject.indexOf('/')))) {
                case "authorisation" -> authorisations.add(Authorised.of(code, those, known.now()));
                case "hold-point" -> points.add(Held.of(code, those));
                case "review" -> reviews.add(new Meeting(code, those.get(0).at(), those.get(0).by(), those.get(0).noted().review().orElseThrow()));
                case "case" -> cases.add(Case.of(code, those));
                default -> { }
            }
        });
        Optional<ReviewSettings> chosen = steps.stream().flatMap(step -> step.noted().settings().stream()).reduce((earlier, later) -> later);
        ReviewSettings settings = chosen.orElse(ReviewSettings.USUAL);
        List<Due.Triggered> triggered = Due.triggered(known.before(), known.presets().get(settings.preset()), settings);
        List<Due> due = Due.of(known.forecast(), triggered, reviews.stream().map(Meeting::review).toList(), settings, known.now().entries(), known.progress());
        List<Due.CaseDue> casesDue = Due.cases(known.forecast(), cases, settings, known.now().entries());
        return new Register(known.now().today(), settings, chosen.isPresent(), known.forecast().groups().stream().map(Forecast.Group::group).toList(),
            authorisations, points, reviews, cases, triggered, known.how(), due, casesDue, findings(authorisations, points, cases, due, casesDue));
    }

    /** As others than the radiation protection officer may see it: nobody else's dose, stay time or case. */
    public Register seenBy(Optional<String> worker) {
        return new Register(today, settings, chosen, groups, authorisations.stream().map(each -> own(each, worker)).toList(), holdPoints, reviews,
            cases.stream().filter(each -> each.investigation().worker().isEmpty() || each.investigation().worker().equals(worker)).toList(), triggered, before, due,
            casesDue.stream().filter(each -> Optional.of(each.worker()).equals(worker)).toList(), findings);
    }

    private static Authorised own(Authorised each, Optional<String> worker) {
        Authorisation says = each.says();
        List<Authorisation.Stay> stays = says.stays().stream().filter(stay -> Optional.of(stay.worker()).equals(worker)).toList();
        return new Authorised(each.code(), each.revision(), each.state(), new Authorisation(says.kind(), says.group(), says.work(), says.conditions(), says.dosimetry(),
            says.briefing(), says.training(), says.clothing(), says.coverage(), stays, says.voiding(), says.doseReduction(), says.frisking(), says.workDocument(),
            says.issuedOn(), says.expiresOn(), says.crew(), says.personUsv(), says.highestUsv()), each.because(), each.acknowledged(), each.notAcknowledged(),
            each.history());
    }

    private static List<Finding> findings(List<Authorised> authorisations, List<Held> points, List<Case> cases, List<Due> due, List<Due.CaseDue> casesDue) {
        List<Finding> all = new ArrayList<>();
        if (!casesDue.isEmpty()) {
            long people = casesDue.stream().map(Due.CaseDue::worker).distinct().count();
            all.add(decide("cases", (people == 1 ? "1 person" : people + " people") + " received more than a constraint or the investigation level, and no case is open.",
                "Look into it before they go in again. Open a case: cause, dose, corrective action."));
        }
        for (Authorised each : authorisations) {
            if (each.state() == Authorised.State.VOID) {
                all.add(decide(each.code(), "Work authorisation " + each.code() + " is void. " + String.join(" ", each.because()),
                    "Stop the work of " + each.says().group() + ". Draft a new revision, or close it."));
            }
            if (each.state() == Authorised.State.IN_FORCE && !each.notAcknowledged().isEmpty()) {
                all.add(new Finding(Finding.Weight.CHECK, "reviews", each.code(), "Revision " + each.revision() + " of work authorisation " + each.code() + " is not acknowledged by "
                    + each.notAcknowledged().size() + " of " + each.says().crew().size() + ".", "They acknowledge it before they enter."));
            }
        }
        for (Held each : points) {
            if (each.state() == Held.State.HOLDING) {
                all.add(decide(each.code(), "Hold point " + each.code() + " holds " + each.point().group() + ": " + each.point().criterion(),
                    each.point().releases() + " releases it, with a reason."));
            }
        }
        for (Due each : due) {
            all.add(decide(each.kind() + "-" + all.size(), (each.kind() == Review.Kind.IN_PROGRESS ? "An " : "A ") + each.kind() + " review of " + each.group() + " is due. " + String.join(" ", each.because()), "Hold it and write it down."));
        }
        cases.stream().filter(Case::open).forEach(each -> all.add(decide(each.code(), "Case " + each.code() + " is open.", "Close it when the corrective action is done.")));
        return all;
    }

    private static Finding decide(String code, String fact, String means) {
        return new Finding(Finding.Weight.DECIDE, "reviews", code, fact, means);
    }
}
