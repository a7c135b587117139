package kerfbook.choice;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Change;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Option;
import kerfbook.campaign.Pool;
import kerfbook.campaign.Price;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Shield;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.quantity.Origin;

/** Makes the changes of an option to a campaign: the plan as it would be, with the list of options left as it is. */
public final class Options {
    private static final int LONGEST_CODE = 60;

    private Options() { }

    /**
     * The campaign with every change of the option made, in their order. An option without changes gives the campaign itself.
     *
     * @throws Invalid with {@code changes[k].field} of the first change that does not fit
     */
    public static Campaign apply(Campaign campaign, Option option) {
        Campaign changed = campaign;
        for (int i = 0; i < option.changes().size(); i++) {
            String at = "changes[" + i + "]";
            Change change = option.changes().get(i);
            try {
                changed = priced(apply(changed, change), option, change, i);
            } catch (Invalid invalid) {
                throw new Invalid(invalid.faults().stream().map(fault -> seen(fault, at, change)).toList());
            }
        }
        return changed;
    }

    /**
     * The campaign as it is once the option is carried out: as {@link #apply}, with what people received left as it was recorded. Doses that
     * a comparison takes to have been received later belong to the comparison.
     *
     * @throws Invalid also if a year is missing in the records then: it is not known, and nothing is put in its place
     */
    public static Campaign carriedOut(Campaign campaign, Option option) {
        Campaign after = apply(campaign, option);
        return after.moved(after.settings(), after.sources(), after.shields(), after.tasks(), campaign.workers());
    }

    /** What an option says nothing about that its cost would need. */
    public static List<String> notPriced(Option option) {
        return option.changes().stream().filter(change -> change.price().isEmpty()
            && (change.kind() == Change.Kind.SHIELD || change.kind() == Change.Kind.WAIT || change.kind() == Change.Kind.FILTER || change.kind() == Change.Kind.DECONTAMINATION))
            .map(change -> change.kind().toString()).distinct().toList();
    }

    /** What is taken for granted in a change and may not hold: fewer people are reckoned with the hours of more. */
    public static List<String> cautions(Campaign plan, Option option) {
        return option.changes().stream().filter(change -> change.people().isPresent()).flatMap(change -> {
            double people = change.people().get();
            OptionalDouble most = Stream.concat(plan.routines().stream().flatMap(routine -> routine.tasks().stream()).filter(task -> fits(change, task.group()))
                .flatMap(task -> task.steps().stream()), plan.tasks().stream().filter(task -> fits(change, task.group())).flatMap(task -> task.steps().stream()))
                .flatMap(step -> step.staff().stream()).filter(staff -> staff.role().equals(change.role().orElseThrow())).mapToDouble(Staff::people).max();
            return most.isPresent() && people < most.getAsDouble() ? Stream.of(change.role().get()) : Stream.empty();
        }).distinct().map(role -> "Fewer people of the role " + role + ", and the hours are kept: nobody said how much longer fewer people need. Time, dose and cost may come out too low.")
            .toList();
    }

    /** A fault at one of the change's own fields keeps it; one elsewhere in the plan is told beside what names it. */
    private static Fault seen(Fault fault, String at, Change change) {
        boolean own = fault.field().startsWith("@");
        return own ? new Fault(at + "." + fault.field().substring(1), fault.detail())
            : new Fault(at, "does not fit the plan (" + change.kind() + "): " + fault.field() + " " + fault.detail());
    }

    /** Refused at one of the change's own fields. */
    static Invalid refused(String field, String detail) {
        return new Invalid("@" + field, detail);
    }

    private static Campaign apply(Campaign campaign, Change change) {
        return switch (change.kind()) {
            case TECHNIQUE -> technique(campaign, change);
            case ORDER -> order(campaign, change);
            case WATER_LEVEL -> level(campaign, change.waterLevelMm().orElseThrow());
            case SHIELD -> shield(campaign, change.shield().orElseThrow());
            case CREW -> change.people().isPresent() ? people(campaign, change) : members(campaign, change);
            case WAIT -> Waiting.apply(campaign, change.years().orElseThrow());
            case FILTER -> filter(campaign, change.filterM3PerH().orElseThrow());
            case DECONTAMINATION -> Cleaning.apply(campaign, change);
        };
    }

    private static Component component(Campaign campaign, Change change) {
        String code = change.component().orElseThrow();
        return campaign.component(code).orElseThrow(() -> refused("component", "there is no component \"" + code + "\" in this campaign."));
    }

    private static Campaign technique(Campaign campaign, Change change) {
        Component component = component(campaign, change);
        String code = change.technique().orElseThrow();
        Technique technique = campaign.techniques().stream().filter(each -> each.code().equals(code)).findFirst()
            .orElseThrow(() -> refused("technique", "there is no technique \"" + code + "\" in this campaign."));
        List<Cut> own = campaign.cuts().stream().filter(cut -> cut.component().equals(component.code())).toList();
        Set<String> known = own.stream().map(Cut::code).collect(Collectors.toSet());
        for (int i = 0; i < change.cuts().size(); i++) {
            if (!known.contains(change.cuts().get(i))) {
                throw refused("cuts[" + i + "]", "there is no cut \"" + change.cuts().get(i) + "\" of this component.");
            }
        }
        List<Cut> meant = own.stream().filter(cut -> change.cuts().isEmpty() || change.cuts().contains(cut.code())).toList();
        if (meant.isEmpty()) {
            throw refused("component", component.code() + " has no cuts. Divide it first.");
        }
        for (Cut cut : meant) {
            component.whyNot(technique, cut.thicknessMm()).ifPresent(why -> {
                throw refused("technique", "cannot make " + cut.code() + ": " + why);
            });
        }
        change.routine().ifPresent(routine -> requireRoutine(campaign, routine, code));
        if (meant.stream().allMatch(cut -> cut.technique().equals(code)) && change.routine().isEmpty()) {
            return campaign;
        }
        try {
            return Exchange.of(campaign, component, meant::contains, code, change.routine(), List.of()).campaign();
        } catch (Invalid invalid) {
            throw invalid.faults().get(0).field().equals("technique") ? refused("technique", invalid.faults().get(0).detail()) : invalid;
        }
    }

    private static void requireRoutine(Campaign campaign, String routine, String technique) {
        if (campaign.routines().stream().noneMatch(each -> each.code().equals(routine) && each.applies() == Routine.Applies.COMPONENT
            && each.technique().equals(Optional.of(technique)))) {
            throw refused("routine", "\"" + routine + "\" is no routine for components that belongs to the technique \"" + technique + "\".");
        }
    }

    private static Campaign order(Campaign campaign, Change change) {
        Component component = component(campaign, change);
        for (int i = 0; i < change.after().size(); i++) {
            String before = change.after().get(i);
            if (campaign.component(before).isEmpty()) {
                throw refused("after[" + i + "]", "there is no component \"" + before + "\" in this campaign.");
            }
        }
        try {
            return campaign.cutting(campaign.techniques(), campaign.routines(), campaign.components().stream()
                .map(each -> each.code().equals(component.code()) ? each.following(change.after()) : each).toList(), campaign.cuts(), campaign.tasks(),
                campaign.overrides());
        } catch (Invalid circle) {
            throw refused("after", "makes a circle: " + circle.faults().get(0).detail());
        }
    }

    private static Pool pool(Campaign campaign, String field) {
        return campaign.settings().pool().orElseThrow(() -> refused(field, "needs a pool in the settings."));
    }

    private static Campaign level(Campaign campaign, double levelMm) {
        Pool pool = pool(campaign, "water_level_mm");
        pool.requireLevel(levelMm, "@water_level_mm");
        return campaign.with(campaign.settings().with(pool.at(levelMm)));
    }

    private static Campaign filter(Campaign campaign, double m3PerH) {
        Pool pool = pool(campaign, "filter_m3_per_h");
        return campaign.with(campaign.settings().with(pool.with(pool.water().orElseThrow(() -> refused("filter_m3_per_h",
            "needs the pool's water in the settings: what clouds it, and when it is clear.")).withFilter(m3PerH))));
    }

    private static Campaign shield(Campaign campaign, Shield shield) {
        if (campaign.areas().stream().noneMatch(area -> area.rateFrom().worked())) {
            throw refused("shield", "changes nothing: no area's rate is calculated. Surveys know nothing of a shield that does not stand yet.");
        }
        List<Shield> all = new ArrayList<>(campaign.shields());
        if (all.removeIf(each -> each.code().equals(shield.code()))) {
            all.clear();
            campaign.shields().forEach(each -> all.add(each.code().equals(shield.code()) ? shield : each));
        } else {
            all.add(shield);
        }
        return campaign.shielded(all);
    }

    private static Campaign people(Campaign campaign, Change change) {
        String role = change.role().orElseThrow();
        double people = change.people().orElseThrow();
        boolean[] met = {false};
        List<Routine> routines = campaign.routines().stream().map(routine -> new Routine(routine.code(), routine.name(), routine.applies(), routine.technique(),
            routine.tasks().stream().map(task -> fits(change, task.group()) ? new RoutineTask(task.code(), task.name(), task.group(), task.after(), task.lagHours(),
                task.packs(), task.frees(), task.liftCoverMm(), task.needs(), staffed(task.steps(), role, people, met)) : task).toList())).toList();
        List<ManualTask> tasks = campaign.tasks().stream().map(task -> fits(change, task.group()) ? new ManualTask(task.code(), task.name(), task.group(),
            task.component(), task.after(), task.before(), task.lagHours(), task.notBefore(), task.needs(), staffed(task.steps(), role, people, met)) : task).toList();
        if (!met[0]) {
            throw refused(change.group().isPresent() ? "group" : "role", "no step needs the role \"" + role + "\" there.");
        }
        return campaign.crewed(routines, tasks, campaign.roster());
    }

    private static boolean fits(Change change, String group) {
        return change.group().isEmpty() || change.group().get().equals(group);
    }

    private static List<Step> staffed(List<Step> steps, String role, double people, boolean[] met) {
        List<Step> staffed = new ArrayList<>();
        for (Step step : steps) {
            met[0] |= step.staff().stream().anyMatch(staff -> staff.role().equals(role));
            staffed.add(new Step(step.code(), step.name(), step.driver(), step.count(), step.hoursEach(), step.mode(), step.alongside(), step.factors(),
                step.staff().stream().map(staff -> staff.role().equals(role) ? new Staff(role, people, staff.area(), staff.presence()) : staff).toList(), step.origin()));
        }
        return staffed;
    }

    private static Campaign members(Campaign campaign, Change change) {
        String role = change.role().orElseThrow();
        List<RosterEntry> roster = new ArrayList<>();
        boolean replaced = false;
        for (RosterEntry entry : campaign.roster()) {
            if (entry.role().equals(role) && entry.task().isPresent() && (change.component().isEmpty() || entry.task().get().startsWith(change.component().get() + "/"))) {
                continue;                           // what is said of single tasks gives way
            }
            boolean same = entry.role().equals(role) && entry.task().isEmpty() && entry.group().equals(change.group()) && entry.component().equals(change.component());
            roster.add(same && !replaced ? new RosterEntry(entry.code(), role, entry.group(), entry.component(), change.members()) : entry);
            replaced |= same;
        }
        if (!replaced) {
            roster.add(new RosterEntry(free("crew-" + role, campaign.roster().stream().map(RosterEntry::code).collect(Collectors.toSet())), role, change.group(),
                change.component(), change.members()));
        }
        return campaign.crewed(campaign.routines(), campaign.tasks(), roster);
    }

    /** What the change costs, as a price that is paid once. */
    private static Campaign priced(Campaign campaign, Option option, Change change, int at) {
        if (change.price().isEmpty()) {
            return campaign;
        }
        if (campaign.prices().isEmpty()) {
            throw refused(change.cost().isPresent() ? "cost" : "cost_per_year", "has no currency, since the campaign has no prices. Add the first price.");
        }
        Price first = campaign.prices().get(0);
        List<Price> prices = new ArrayList<>(campaign.prices());
        prices.add(new Price(free("option-" + option.code() + "-" + (at + 1), prices.stream().map(Price::code).collect(Collectors.toSet())),
            option.name(), Price.What.FIXED, Optional.empty(), change.price().get(), first.currency(), first.priceYear(),
            new Origin("Given with the option " + option.name() + ".", Origin.Status.JUDGEMENT)));
        return campaign.priced(prices);
    }

    static String free(String wish, Set<String> taken) {
        String base = wish.length() <= LONGEST_CODE - 4 ? wish : wish.substring(0, LONGEST_CODE - 4);
        String code = base;
        for (int i = 2; taken.contains(code); i++) {
            code = base + "-" + i;
        }
        return code;
    }
}
