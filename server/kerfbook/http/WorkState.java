package kerfbook.http;

import kerfbook.campaign.Campaign;
import kerfbook.estimate.Basis;
import kerfbook.outlook.State;

/** Where the work of a campaign stands, as a run starts from it. */
@FunctionalInterface
interface WorkState {
    /** Nothing is logged: the plan. */
    WorkState PLAN = (campaign, plan, basis) -> State.NONE;

    State of(long campaign, Campaign plan, Basis basis);
}
