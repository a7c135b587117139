package kerfbook.estimate;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Price;
import kerfbook.campaign.Price.What;
import kerfbook.cost.Cost;
import kerfbook.cost.Item;
import kerfbook.cost.Prices;
import kerfbook.quantity.Sum;

/** Puts the forecast's quantities and the campaign's prices together. */
final class CostAccount {
    private final Campaign campaign;
    private final List<Forecast.Task> tasks;
    private final Consumption used;
    private final Workload work;
    private final Map<String, Price> prices = new HashMap<>();
    private final List<Entry> entries = new ArrayList<>();
    private final Map<String, CostForecast.NotPriced> notPriced = new LinkedHashMap<>();

    private record Entry(Item item, Price price, Optional<String> of, Optional<String> component) { }

    private CostAccount(Campaign campaign, Workload work, List<Forecast.Task> tasks, Consumption used) {
        this.campaign = campaign;
        this.work = work;
        this.tasks = tasks;
        this.used = used;
        campaign.prices().forEach(price -> prices.putIfAbsent(key(price.what(), price.of()), price));
    }

    /** Empty if the campaign has no prices. */
    static Optional<CostForecast> of(Campaign campaign, Workload work, List<Forecast.Task> tasks, Consumption used) {
        return campaign.prices().isEmpty() ? Optional.empty() : Optional.of(new CostAccount(campaign, work, tasks, used).forecast());
    }

    private CostForecast forecast() {
        labour();
        equipment();
        for (Component component : campaign.components()) {
            used.of(component.code()).forEach((technique, quantities) -> consumables(component, technique, quantities));
            add(Item.Kind.PACKAGES, What.PACKAGE, component.packageType(), Optional.of(component.code()), component.packages(), "packages that the pieces of " + component.code() + " fill");
        }
        for (Price price : campaign.prices()) {
            if (price.what() == What.FIXED) {
                entries.add(new Entry(new Item(Item.Kind.FIXED, price.code(), 1, "once"), price, Optional.empty(), Optional.empty()));
            }
        }
        return summed();
    }

    /** Hours of all people, in the area or not, by component and role; after the components what belongs to none. */
    private void labour() {
        Map<String, Map<String, Sum>> hours = new LinkedHashMap<>();
        Map<String, Map<String, Integer>> counted = new HashMap<>();
        campaign.components().forEach(component -> hours.put(component.code(), new LinkedHashMap<>()));
        hours.put("", new LinkedHashMap<>());
        for (Forecast.Task task : tasks) {
            Map<String, Sum> ofTask = new LinkedHashMap<>();
            task.steps().forEach(step -> step.lines().forEach(line -> ofTask.computeIfAbsent(line.role(), none -> new Sum()).add(line.personHours())));
            String component = task.component().orElse("");
            ofTask.forEach((role, sum) -> {
                hours.get(component).computeIfAbsent(role, none -> new Sum()).add(sum.value());
                counted.computeIfAbsent(component, none -> new HashMap<>()).merge(role, 1, Integer::sum);
            });
        }
        hours.forEach((component, roles) -> roles.forEach((role, sum) -> add(Item.Kind.LABOUR, What.LABOUR_HOUR, Optional.of(role),
            component.isEmpty() ? Optional.empty() : Optional.of(component), sum.value(), "person-hours of " + role + " in "
                + counted.get(component).get(role) + " tasks of " + (component.isEmpty() ? "no component" : component))));
    }

    /** Tool-on hours by component; working days from the first to the last task of the technique's routines. */
    private void equipment() {
        Map<String, String> techniqueOf = new HashMap<>();
        campaign.routines().forEach(routine -> routine.technique().ifPresent(technique -> techniqueOf.put(routine.code(), technique)));
        for (String technique : used.techniques()) {
            Optional<String> of = Optional.of(technique);
            Optional<Price> perDay = find(What.WORKING_DAY, of);
            if (perDay.isPresent()) {
                List<Forecast.Task> its = tasks.stream().filter(task -> task.routine().map(techniqueOf::get).filter(technique::equals).isPresent()).toList();
                LocalDate first = its.stream().map(Forecast.Task::start).min(Comparator.naturalOrder()).orElseThrow();
                LocalDate last = its.stream().map(Forecast.Task::finish).max(Comparator.naturalOrder()).orElseThrow();
                add(Item.Kind.EQUIPMENT, What.WORKING_DAY, of, Optional.empty(), work.calendar().workingDaysFrom(first, last),
                    "working days from " + first + " to " + last + ", first to last task of " + technique);
            }
            if (perDay.isEmpty() || find(What.TOOL_ON_HOUR, of).isPresent()) {
                for (Component component : campaign.components()) {
                    Quantities quantities = used.of(component.code()).get(technique);
                    if (quantities != null) {
                        add(Item.Kind.EQUIPMENT, What.TOOL_ON_HOUR, of, Optional.of(component.code()), quantities.toolOnHours().mean(),
                            "tool-on hours of " + technique + " on " + component.code());
                    }
                }
            }
        }
    }

    private void consumables(Component component, String technique, Quantities quantities) {
        counted(Item.Kind.CONSUMABLES, What.KG_ABRASIVE, Driver.KG_ABRASIVE, "abrasive fed", component, technique, quantities);
        counted(Item.Kind.CONSUMABLES, What.TOOL_CHANGE, Driver.TOOL_CHANGE, "tools worn out", component, technique, quantities);
        counted(Item.Kind.CONSUMABLES, What.FILTER, Driver.FILTER, "filters used up", component, technique, quantities);
        counted(Item.Kind.DRUMS, What.DRUM, Driver.DRUM, "drums of spent solids", component, technique, quantities);
    }

    /** What cannot be counted is only worth a line where somebody gave a price for it; a saw without abrasive feed uses none that a general price means. */
    private void counted(Item.Kind heading, What what, Driver driver, String words, Component component, String technique, Quantities quantities) {
        Optional<String> because = quantities.whyNot(driver);
        Optional<String> of = Optional.of(technique);
        if (because.isEmpty()) {
            add(heading, what, of, Optional.of(component.code()), quantities.mean(driver), words + " by " + technique + " on " + component.code()
                + ", expected number");
        } else if (find(what, of).isPresent() && (what != What.KG_ABRASIVE || prices.containsKey(key(what, of)))) {
            notPriced.putIfAbsent(key(what, of) + "?", new CostForecast.NotPriced(what, of, Optional.empty(), what.unit(), "how much is used is not known: " + because.get()));
        }
    }

    private void add(Item.Kind heading, What what, Optional<String> of, Optional<String> component, double quantity, String from) {
        Optional<Price> price = find(what, of);
        if (price.isPresent()) {
            entries.add(new Entry(new Item(heading, heading == Item.Kind.LABOUR ? of.orElseThrow() : price.get().code(), quantity, from), price.get(), of, component));
        } else if (quantity > 0) {
            CostForecast.NotPriced one = new CostForecast.NotPriced(what, of, Optional.of(quantity), what.unit(), "there is no price for it");
            notPriced.merge(key(what, of), one, (before, now) -> new CostForecast.NotPriced(what, of,
                Optional.of(before.quantity().orElseThrow() + now.quantity().orElseThrow()), before.unit(), before.why()));
        }
    }

    private Optional<Price> find(What what, Optional<String> of) {
        return Optional.ofNullable(prices.getOrDefault(key(what, of), prices.get(key(what, Optional.empty()))));
    }

    private CostForecast summed() {
        Price first = campaign.prices().get(0);
        Map<String, Double> perHour = new HashMap<>();
        Map<String, Double> each = new HashMap<>();
        for (Price price : campaign.prices()) {
            (price.what() == What.LABOUR_HOUR ? perHour : each).put(price.what() == What.LABOUR_HOUR ? price.of().orElseThrow() : price.code(), price.amount());
        }
        Cost cost = Cost.of(entries.stream().map(Entry::item).toList(), new Prices(first.currency(), first.priceYear(), perHour, each));
        List<CostForecast.Line> lines = new ArrayList<>();
        Map<String, Sum> sums = new LinkedHashMap<>();
        campaign.components().forEach(component -> sums.put(component.code(), new Sum()));
        sums.put("", new Sum());
        for (int i = 0; i < entries.size(); i++) {
            Entry entry = entries.get(i);
            Cost.Line line = cost.lines().get(i);
            sums.get(entry.component().orElse("")).add(line.amount());
            lines.add(new CostForecast.Line(line.item().kind(), entry.price().code(), entry.price().what(), entry.of(), entry.component(), line.item().quantity(),
                entry.price().what().unit(), line.price(), line.amount(), line.item().where(), entry.price().origin().status().assumption()));
        }
        List<CostForecast.Heading> headings = new ArrayList<>();
        cost.byKind().forEach((kind, amount) -> headings.add(new CostForecast.Heading(kind, amount)));
        double none = sums.remove("").value();
        return new CostForecast(cost.currency(), cost.priceYear(), cost.total(), lines, headings,
            sums.entrySet().stream().map(sum -> new CostForecast.ComponentCost(sum.getKey(), sum.getValue().value())).toList(), none,
            List.copyOf(notPriced.values()));
    }

    private static String key(What what, Optional<String> of) {
        return what + "/" + of.orElse("");
    }
}
