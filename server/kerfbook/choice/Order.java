package kerfbook.choice;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.estimate.Basis;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.estimate.RemovalWork;
import kerfbook.quantity.Invalid;

/** Which component goes first: the order of a campaign's removals with the least dose, and the plan that follows it. */
public final class Order {
    /** In place of a list of codes: every link is let go that tasks added by hand do not ask for. */
    public static final String ALL = "all";
    private static final List<String> NOTES = List.of(
        "The model removes one component after the other, each with the hours that the plan gives it, waiting included.",
        "What is not yet packed counts as standing in place; a component's own pieces in the basket or on the hook count as in the plan, and decay as it does in place.",
        "Weekly tasks lie evenly over the time; tasks before and after all removals are taken as the same in every order.",
        "Between 41 days, or every day of a shorter campaign, doses lie on straight lines. Both orders are forecast in full, and the saving is the difference of the forecasts.",
        "A link between two components is kept unless it is let go here: only the planner knows which is needed and which is only the order of the plan.");

    private final Campaign campaign;
    private final Basis basis;
    private final Map<String, List<String>> kept = new LinkedHashMap<>();
    private final List<OrderProposal.Link> links = new ArrayList<>();
    private final Forecast before;
    private final RemovalWork work;
    private final Removal removal;

    private Order(Campaign campaign, Basis basis, List<String> letGo) {
        this.campaign = campaign;
        this.basis = basis;
        boolean all = letGo.equals(List.of(ALL)) && campaign.component(ALL).isEmpty();
        for (int i = 0; i < letGo.size(); i++) {
            if (!all && campaign.component(letGo.get(i)).isEmpty()) {
                throw new Invalid("let_go", "names \"" + letGo.get(i) + "\", which is no component of this campaign.");
            }
        }
        before = Estimate.of(campaign, basis, "");
        work = RemovalWork.of(campaign, basis, before);
        List<int[]> after = new ArrayList<>();
        for (int c = 0; c < work.components().size(); c++) {
            Component component = campaign.component(work.components().get(c)).orElseThrow();
            boolean loose = all || letGo.contains(component.code());
            component.after().forEach(first -> links.add(new OrderProposal.Link(component.code(), first, false, !loose)));
            work.needed().get(c).stream().sorted().forEach(first -> links.add(new OrderProposal.Link(component.code(), first, true, true)));
            Set<String> firsts = new LinkedHashSet<>(work.needed().get(c));
            List<String> own = loose ? List.of() : component.after();
            firsts.addAll(own);
            kept.put(component.code(), own);
            after.add(firsts.stream().mapToInt(work.components()::indexOf).filter(place -> place >= 0).sorted().toArray());
        }
        removal = new Removal(work.hours(), after, work.stepHours(), work.own(), work.from());
    }

    /** @param letGo codes of components whose links are only the order of the plan, or {@value #ALL} alone */
    public static OrderProposal propose(Campaign campaign, Basis basis, List<String> letGo) {
        return new Order(campaign, basis, letGo).proposal();
    }

    /** The plan in an order: each component waits for the one before it besides what it kept. */
    public static Campaign following(Campaign campaign, Basis basis, List<String> letGo) {
        Order order = new Order(campaign, basis, letGo);
        return order.following(BestOrder.of(order.removal).order());
    }

    private Campaign following(int[] order) {
        Map<String, List<String>> after = new LinkedHashMap<>(kept);
        for (int i = 1; i < order.length; i++) {
            Set<String> firsts = new LinkedHashSet<>(after.get(code(order[i])));
            firsts.add(code(order[i - 1]));
            after.put(code(order[i]), List.copyOf(firsts));
        }
        return campaign.cutting(campaign.techniques(), campaign.routines(), campaign.components().stream()
            .map(component -> component.following(after.getOrDefault(component.code(), component.after()))).toList(), campaign.cuts(), campaign.tasks(), campaign.overrides());
    }

    private OrderProposal proposal() {
        int[] planned = IntStream.range(0, work.components().size()).toArray();
        BestOrder best = BestOrder.of(removal);
        double modelPlanned = removal.dose(planned);
        boolean same = Arrays.equals(planned, best.order());
        Forecast after = same ? before : Estimate.of(following(best.order()), basis, "");
        double saved = before.totals().personUsv() - after.totals().personUsv();
        boolean better = saved > 1e-6;
        return new OrderProposal(links, places(planned), places(best.order()), before.totals().personUsv(), after.totals().personUsv(), saved, modelPlanned,
            best.personUsv(), best.bound(), best.proven(), better, sentence(best, saved, better, same), NOTES);
    }

    private String sentence(BestOrder best, double saved, boolean better, boolean same) {
        if (better) {
            return String.format(Locale.ROOT, "Another order saves %.2f of %.1f person-mSv.", saved / 1000, before.totals().personUsv() / 1000);
        }
        boolean bound = links.stream().anyMatch(link -> !link.byHand() && link.kept());
        return (same ? "The planned order is the best that the links allow" : "No better order was found: what the model prefers costs no less in the full forecast")
            + (best.proven() ? "." : ", as far as the search went.") + (bound ? " Let go what is not needed, and ask again." : "");
    }

    private List<OrderProposal.Place> places(int[] order) {
        List<OrderProposal.Place> places = new ArrayList<>();
        boolean[] gone = new boolean[order.length];
        double at = 0;
        for (int c : order) {
            places.add(new OrderProposal.Place(code(c), name(code(c)), work.hours()[c], removal.dose(c, at, gone)));
            gone[c] = true;
            at += work.hours()[c];
        }
        return places;
    }

    private String code(int place) {
        return work.components().get(place);
    }

    private String name(String code) {
        return campaign.component(code).map(Component::name).orElseThrow();
    }
}
