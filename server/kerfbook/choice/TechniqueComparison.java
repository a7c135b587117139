package kerfbook.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.DifficultyFactor;
import kerfbook.campaign.Routine;
import kerfbook.cutting.CuttingTime;
import kerfbook.cutting.Handbook;
import kerfbook.cutting.HandbookTechnique;
import kerfbook.cutting.Medium;
import kerfbook.cutting.Removed;
import kerfbook.cutting.Technique;
import kerfbook.cutting.Wear;
import kerfbook.estimate.Basis;
import kerfbook.estimate.CostForecast;
import kerfbook.estimate.Estimate;
import kerfbook.estimate.Forecast;
import kerfbook.quantity.Incomplete;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;

/**
 * One component cut with every technique there is. Each row is a whole forecast of the campaign in which only this component's cuts and
 * routine are exchanged: same sources, same rules for rates, same people.
 */
public final class TechniqueComparison {
    private static final double MM_PER_M = 1_000;

    /** All rows: techniques of the campaign first, then those of the handbook that have a routine in the library. */
    public record Answer(String component, String name, List<ComparisonRow> rows, List<String> notes) { }

    private final Campaign campaign;
    private final Component component;
    private final List<Cut> cuts;
    private final Basis basis;

    private TechniqueComparison(Campaign campaign, Component component, Basis basis) {
        this.campaign = campaign;
        this.component = component;
        this.basis = basis;
        this.cuts = campaign.cuts().stream().filter(cut -> cut.component().equals(component.code())).toList();
        if (cuts.isEmpty()) {
            throw new Incomplete("components[" + campaign.components().indexOf(component) + "].code", component.code()
                + " has no cuts: there is nothing to compare. Divide it first.");
        }
    }

    /** @throws Incomplete if the component has no cuts, or the campaign cannot be forecast */
    public static Answer of(Campaign campaign, Component component, Handbook handbook, RoutineLibrary library, Basis basis) {
        TechniqueComparison comparison = new TechniqueComparison(campaign, component, basis);
        List<ComparisonRow> rows = new ArrayList<>();
        campaign.techniques().forEach(technique -> rows.add(comparison.ofCampaign(technique)));
        Set<String> own = campaign.techniques().stream().map(Technique::code).collect(Collectors.toSet());
        for (HandbookTechnique known : handbook.techniques().values()) {
            Optional<RoutineLibrary.Entry> routine = library.cutting(known.technique().code());
            if (routine.isPresent() && !own.contains(known.technique().code())) {
                rows.add(comparison.ofHandbook(known.technique(), routine.get(), library));
            }
        }
        return new Answer(component.code(), component.name(), rows, List.of(
            "Each row is a forecast of the whole campaign; only the cuts and the cutting routine of this component are exchanged. Their number, length and thickness stay.",
            "Pieces and packages stay as they are: a wider kerf takes nothing off them here."));
    }

    private ComparisonRow ofCampaign(Technique technique) {
        boolean present = cuts.stream().allMatch(cut -> cut.technique().equals(technique.code()));
        Optional<String> because = cuts.stream().flatMap(cut -> component.whyNot(technique, cut.thicknessMm()).stream()).findFirst();
        if (because.isPresent()) {
            return refused(technique, "campaign", present, because.get());
        }
        return row(technique, "campaign", present, () -> {
            if (present) {
                return new Exchange(campaign, component.routines().stream().filter(code -> routine(campaign, code).technique().isPresent()).findFirst().orElse(""), List.of());
            }
            return exchanged(campaign, technique.code(), Optional.empty(), List.of());
        });
    }

    private ComparisonRow ofHandbook(Technique technique, RoutineLibrary.Entry entry, RoutineLibrary library) {
        Optional<String> because = because(technique, component.topDepthMm() > 0 ? Medium.WATER : Medium.AIR);
        return because.isPresent() ? refused(technique, "handbook", false, because.get())
            : row(completed(technique, entry), "handbook", false, () -> withLibrary(completed(technique, entry), entry, library));
    }

    private Optional<String> because(Technique technique, Medium where) {
        return cuts.stream().flatMap(cut -> technique.whyNot(component.material(), cut.thicknessMm(), where,
            where == Medium.WATER ? Optional.of(component.topDepthMm() / MM_PER_M) : Optional.empty()).stream()).findFirst();
    }

    private ComparisonRow row(Technique technique, String from, boolean present, Supplier<Exchange> exchange) {
        try {
            Exchange swapped = exchange.get();
            Forecast forecast = Estimate.of(swapped.campaign(), basis, "comparison");
            return new ComparisonRow(technique.code(), technique.name(), from, present, Optional.of(swapped.routine()),
                Optional.of(from.equals("handbook") ? "library" : "campaign"), Optional.empty(), Optional.of(figures(forecast, technique)), swapped.notes());
        } catch (Invalid invalid) {
            Invalid.Fault fault = invalid.faults().get(0);
            return refused(technique, from, present, (fault.field().isEmpty() ? "" : fault.field() + " ") + fault.detail());
        }
    }

    private static ComparisonRow refused(Technique technique, String from, boolean present, String because) {
        return new ComparisonRow(technique.code(), technique.name(), from, present, Optional.empty(), Optional.empty(), Optional.of(because), Optional.empty(), List.of());
    }

    private Exchange exchanged(Campaign in, String technique, Optional<String> routine, List<String> notes) {
        return Exchange.of(in, component, cut -> true, technique, routine, notes);
    }

    private Exchange withLibrary(Technique technique, RoutineLibrary.Entry entry, RoutineLibrary library) {
        List<Technique> techniques = new ArrayList<>(campaign.techniques());
        techniques.add(technique);
        Campaign known = campaign.cutting(techniques, campaign.routines(), campaign.components(), campaign.cuts(), campaign.tasks(), campaign.overrides());
        Set<String> factors = campaign.factors().stream().map(DifficultyFactor::code).collect(Collectors.toSet());
        List<Routine> routines = new ArrayList<>(campaign.routines());
        Set<String> left = new TreeSet<>();
        for (RoutineLibrary.Entry each : library.of(technique.code())) {
            List<String> without = each.factors().stream().filter(factor -> !factors.contains(factor)).toList();
            left.addAll(without);
            routines.add(FromLibrary.plain(each.code(), code(each), technique.code(), without).routine(library, known));
        }
        List<String> notes = new ArrayList<>(List.of("Speed, wear and every duration are planning values of the handbook and the library."));
        if (!left.isEmpty()) {
            notes.add("Without the difficulty factors that the campaign does not have: " + String.join(", ", left) + ".");
        }
        entry.assumedWear().ifPresent(wear -> notes.add("Life of filters and filling of drums are planning values, no source."));
        return exchanged(known.cutting(techniques, routines, campaign.components(), campaign.cuts(), campaign.tasks(), campaign.overrides()), technique.code(),
            Optional.of(code(entry)), notes);
    }

    private static String code(RoutineLibrary.Entry entry) {
        return "library-" + entry.code();
    }

    /** With the wear that the library's routines count with, where the handbook holds none. */
    private static Technique completed(Technique technique, RoutineLibrary.Entry entry) {
        if (entry.assumedWear().isEmpty()) {
            return technique;
        }
        Wear wear = technique.wear();
        Optional<Likely> filter = wear.filterLifeH().or(() -> entry.assumedWear().get().filterLifeH());
        Optional<Likely> drum = wear.drumKg().or(() -> entry.assumedWear().get().drumKg());
        return technique.with(new Wear(wear.toolLifeH(), wear.toolLifeM2(), wear.abrasiveKgPerMin(), filter, drum, wear.toolLifeM(), wear.toolLifeCuts()));
    }

    private ComparisonRow.Figures figures(Forecast forecast, Technique technique) {
        Forecast.ComponentDose own = forecast.components().stream().filter(each -> each.component().equals(component.code())).findFirst().orElseThrow();
        List<Forecast.Task> tasks = forecast.tasks().stream().filter(task -> task.component().equals(Optional.of(component.code()))).toList();
        double from = tasks.stream().mapToDouble(Forecast.Task::startHour).min().orElse(0);
        double to = tasks.stream().mapToDouble(task -> task.startHour() + task.hours()).max().orElse(0);
        Optional<Forecast.Person> highest = forecast.people().stream().filter(person -> person.usv() > 0)
            .reduce((one, other) -> other.usv() > one.usv() ? other : one);
        Likely on = Likely.exactly(0);
        Optional<Likely> tools = Optional.of(on);
        Optional<Likely> abrasive = Optional.of(on);
        double kerfKg = 0;
        for (Cut cut : cuts) {
            Likely hours = CuttingTime.hours(cut.count(), cut.lengthMm(), cut.thicknessMm(), component.material(), technique);
            on = on.plus(hours);
            kerfKg += Removed.kerfKg(technique, cut.count(), cut.lengthMm(), cut.thicknessMm(), component.densityKgPerM3()).likely() * cut.metal();
            tools = both(tools, Removed.tools(technique, cut.count(), cut.lengthMm(), cut.thicknessMm(), hours));
            abrasive = both(abrasive, Removed.abrasiveKg(technique, hours));
        }
        Likely all = on;
        Likely solids = abrasive.orElse(Likely.exactly(0)).plus(Likely.exactly(kerfKg));
        return new ComparisonRow.Figures(own.toolOnHours(), own.hours(), to - from, own.personHours(), own.personUsv(), forecast.totals().personUsv(),
            highest.map(Forecast.Person::usv).orElse(0.0), highest.map(Forecast.Person::worker), own.kerfKg(), abrasive.map(Likely::mean), tools.map(Likely::mean),
            technique.wear().filterLifeH().map(life -> all.by(life).mean()), technique.wear().drumKg().map(filling -> solids.by(filling).mean()),
            own.finish(), forecast.finish(), forecast.totals().workingDays(), forecast.totals().personHours(),
            forecast.cost().map(cost -> new ComparisonRow.RowCost(cost.currency(), cost.priceYear(), cost.components().stream()
                .filter(each -> each.component().equals(component.code())).mapToDouble(CostForecast.ComponentCost::amount).sum(), cost.total(), cost.notPriced().size())));
    }

    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    private static Optional<Likely> both(Optional<Likely> one, Optional<Likely> other) {
        return one.flatMap(left -> other.map(left::plus));
    }

    private static Routine routine(Campaign campaign, String code) {
        return campaign.routines().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow();
    }
}
