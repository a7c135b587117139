package kerfbook.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.Routine;
import kerfbook.quantity.Invalid;

/**
 * A plan as it changes the campaign: the component with its new numbers and routines, and its cuts.
 *
 * @param plan the plan taken
 */
public record Taken(Component component, List<Cut> cuts, ShownPlan plan) {

    /** @throws Invalid if there is no such plan, or the campaign cannot carry it out */
    public static Taken of(Campaign campaign, DivisionAnswer answer, DivisionQuestion question) {
        ShownPlan plan = question.aim().flatMap(answer::plan).orElseThrow(() -> new Invalid("aim", question.aim().isEmpty()
            ? "is missing: say which of the plans is taken." : "there is no plan \"" + question.aim().get() + "\"" + answer.impossible()
                .map(reason -> ": " + reason.text() + ".").orElse(question.division().isPresent() ? "." : "; one by hand comes with its division.")));
        plan.notApplicable().ifPresent(because -> {
            throw new Invalid("technique", answer.technique() + " cannot make these cuts, because " + because + ".");
        });
        int packages = plan.packages().orElseThrow(() -> new Invalid("aim", "has pieces that go into no package. Divide further."));
        Component component = campaign.component(answer.component()).orElseThrow();
        List<String> routines = plan.cutRows().isEmpty() ? withoutTechnique(campaign, component) : Routines.exchanged(campaign, component, answer.technique(),
            Optional.empty());
        return new Taken(component.divided(plan.pieceCount(), packages, answer.packageType()).through(routines), plan.cutRows(), plan);
    }

    private static List<String> withoutTechnique(Campaign campaign, Component component) {
        List<String> kept = new ArrayList<>();
        for (Routine routine : campaign.routines()) {
            if (component.routines().contains(routine.code()) && routine.technique().isEmpty()) {
                kept.add(routine.code());
            }
        }
        if (kept.isEmpty()) {
            throw new Invalid("aim", "needs no cut, but every routine of " + component.code() + " belongs to a technique. Give it one that lifts and packs.");
        }
        kept.sort((a, b) -> component.routines().indexOf(a) - component.routines().indexOf(b));
        return kept;
    }
}
