package kerfbook.choice;

import java.util.List;

/**
 * The order of removal as planned and the best one found, each by the model of the search and by a full forecast.
 *
 * @param links         what each component waits for, and whether that is kept
 * @param planned       in the order of the plan
 * @param proposed      in the best order found
 * @param plannedPersonUsv collective dose that the forecast of the plan says, likewise proposed
 * @param modelPlannedPersonUsv what the model says of the removals alone, likewise proposed and bound
 * @param savedPersonUsv by the forecasts; below 0 if the proposal costs more
 * @param proven        no order that keeps the links costs less by the model
 * @param better        the forecast of the proposed order is lower
 */
public record OrderProposal(List<Link> links, List<Place> planned, List<Place> proposed, double plannedPersonUsv, double proposedPersonUsv, double savedPersonUsv,
                            double modelPlannedPersonUsv, double modelProposedPersonUsv, double modelBoundPersonUsv, boolean proven, boolean better, String sentence,
                            List<String> notes) {

    /** @param byHand tasks added by hand put it before; such a link cannot be let go here */
    public record Link(String component, String after, boolean byHand, boolean kept) { }

    /** @param modelUsv dose of the component's removal by the model, with the weekly tasks of its time; in person-µSv */
    public record Place(String component, String name, double hours, double modelPersonUsv) { }
}
