package kerfbook.choice;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiFunction;
import java.util.stream.Collectors;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.DifficultyFactor;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;
import kerfbook.campaign.Staff;
import kerfbook.campaign.Step;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.quantity.Require;

/**
 * A routine of the library as it is taken into a campaign.
 *
 * @param library        code in the library
 * @param code           code in the campaign
 * @param technique      technique of the campaign, where the library's routine belongs to one
 * @param roles          the library's roles and the campaign's; one that is left out keeps its code
 * @param areas          likewise
 * @param factors        likewise
 * @param withoutFactors factors of the library that are left away
 * @param liftCoverMm    water over a piece on the hook, where the routine lifts pieces
 */
public record FromLibrary(String library, String code, Optional<String> name, Optional<String> technique, List<Pair> roles, List<Pair> areas,
                          List<Pair> factors, List<String> withoutFactors, Optional<Double> liftCoverMm) {

    /** What something is called in the library and in the campaign. */
    public record Pair(String library, String campaign) {
        public Pair {
            Require.code(library, "library");
            Require.code(campaign, "campaign");
        }
    }

    public FromLibrary {
        Require.code(library, "library");
        Require.code(code, "code");
        name = Require.optional(name);
        name.ifPresent(given -> Require.name(given, "name"));
        technique = Require.optional(technique);
        technique.ifPresent(given -> Require.code(given, "technique"));
        roles = pairs(roles, "roles");
        areas = pairs(areas, "areas");
        factors = pairs(factors, "factors");
        withoutFactors = Require.distinct(Require.list(withoutFactors, "without_factors"), "without_factors");
        liftCoverMm = Require.optional(liftCoverMm);
        liftCoverMm.ifPresent(cover -> Require.within(cover, -20_000, 50_000, "lift_cover_mm", "mm"));
    }

    /** With the library's own words, as far as the campaign uses the same. */
    public static FromLibrary plain(String library, String code, String technique, List<String> withoutFactors) {
        return new FromLibrary(library, code, Optional.empty(), Optional.of(technique), List.of(), List.of(), List.of(), withoutFactors, Optional.empty());
    }

    /**
     * Faults are counted by the technique's rate where it has one, else by the shift.
     *
     * @throws Invalid naming what the campaign does not have
     */
    public Routine routine(RoutineLibrary from, Campaign campaign) {
        RoutineLibrary.Entry entry = from.find(library).orElseThrow(() -> new Invalid("library", "there is no routine \"" + library + "\" in the library."));
        if (technique.isPresent() == entry.handbookTechniques().isEmpty()) {
            throw new Invalid("technique", technique.isPresent() ? "does not go with this routine, which is for all techniques."
                : "is missing: say which technique of the campaign this routine belongs to.");
        }
        if (technique.isPresent() && campaign.techniques().stream().noneMatch(each -> each.code().equals(technique.get()))) {
            throw new Invalid("technique", "there is no technique \"" + technique.get() + "\" in this campaign.");
        }
        if (liftCoverMm.isPresent() != entry.lifts()) {
            throw new Invalid("lift_cover_mm", entry.lifts() ? "is missing: say how much water is over a piece on the hook; negative when it is lifted out."
                : "does not go with this routine, which lifts nothing.");
        }
        List<Fault> faults = new ArrayList<>();
        Map<String, String> role = mapped(entry.roles(), roles, "roles", campaign.workers().stream().flatMap(worker -> worker.roles().stream())
            .collect(Collectors.toSet()), "no worker of the campaign has this role", faults);
        Map<String, String> area = mapped(entry.areas(), areas, "areas", campaign.areas().stream().map(Area::code).collect(Collectors.toSet()),
            "the campaign has no such area", faults);
        withoutFactors.stream().filter(each -> !entry.factors().contains(each)).forEach(each -> faults.add(new Fault("without_factors",
            "the routine does not use \"" + each + "\".")));
        Map<String, String> factor = mapped(entry.factors().stream().filter(each -> !withoutFactors.contains(each)).toList(), factors, "factors",
            campaign.factors().stream().map(DifficultyFactor::code).collect(Collectors.toSet()),
            "the campaign has no such difficulty factor; map it, add it, or leave it away with without_factors", faults);
        if (!faults.isEmpty()) {
            throw new Invalid(faults);
        }
        boolean rated = technique.flatMap(code -> campaign.techniques().stream().filter(each -> each.code().equals(code)).findFirst())
            .flatMap(Technique::faultsPerH).isPresent();
        BiFunction<RoutineTask, Step, Step> inWords = (task, step) -> new Step(step.code(), step.name(), step.driver(), step.count(), step.hoursEach(),
            step.mode(), step.alongside(), step.factors().stream().filter(factor::containsKey).map(factor::get).distinct().toList(),
            step.staff().stream().map(staff -> new Staff(role.get(staff.role()), staff.people(), area.get(staff.area()), staff.presence())).toList(), step.origin());
        return new Routine(code, name.orElse(entry.name()), entry.applies(), technique, entry.tasks().stream().map(task -> new RoutineTask(task.code(),
            task.name(), task.group(), task.after(), task.lagHours(), task.packs(), task.code().equals("cut") && basket(campaign) ? Optional.of(true) : Optional.empty(),
            task.code().equals("lift") ? liftCoverMm : Optional.empty(), List.of(), task.steps().stream().map(step -> inWords.apply(task, rated ? from.rated(step) : step)).toList())).toList());
    }

    /** Where the pool has a basket, what is cut off hangs in it. */
    private static boolean basket(Campaign campaign) {
        return campaign.settings().pool().flatMap(pool -> pool.basket()).isPresent();
    }

    private static List<Pair> pairs(List<Pair> given, String field) {
        List<Pair> copy = Require.list(given, field);
        Require.distinct(copy.stream().map(Pair::library).toList(), field);
        return copy;
    }

    private static Map<String, String> mapped(List<String> words, List<Pair> pairs, String field, Set<String> known, String unknown, List<Fault> faults) {
        Map<String, String> all = new HashMap<>();
        words.forEach(word -> all.put(word, word));
        for (int i = 0; i < pairs.size(); i++) {
            if (all.replace(pairs.get(i).library(), pairs.get(i).campaign()) == null) {
                faults.add(new Fault(field + "[" + i + "].library", "the routine does not speak of \"" + pairs.get(i).library() + "\"."));
            }
        }
        for (String word : words) {
            if (!known.contains(all.get(word))) {
                faults.add(new Fault(field, "\"" + all.get(word) + "\"" + (all.get(word).equals(word) ? "" : " (for " + word + ")") + ": " + unknown + "."));
            }
        }
        return all;
    }
}
