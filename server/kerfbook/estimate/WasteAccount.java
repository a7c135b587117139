package kerfbook.estimate;

import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Driver;
import kerfbook.campaign.Inventory;
import kerfbook.campaign.Pool;
import kerfbook.campaign.PoolWater;
import kerfbook.cutting.Technique;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Likely;
import kerfbook.quantity.Origin;
import kerfbook.quantity.Sum;
import kerfbook.shielding.Decay;
import kerfbook.shielding.Nuclide;
import kerfbook.waste.CutSolids;
import kerfbook.waste.SecondaryWaste;
import kerfbook.waste.Shares;

/** Puts together where mass and activity of the components go. */
final class WasteAccount {
    private final Campaign campaign;
    private final Map<String, Nuclide> nuclides;
    private final Consumption used;

    WasteAccount(Campaign campaign, Map<String, Nuclide> nuclides, Consumption used) {
        this.campaign = campaign;
        this.nuclides = nuclides;
        this.used = used;
    }

    /** @param components with the day on which each is packed or, where no task packs it, finished */
    WasteForecast of(List<Forecast.ComponentDose> components) {
        List<WasteForecast.OfComponent> all = new ArrayList<>();
        for (int i = 0; i < components.size(); i++) {
            all.add(new One(campaign.components().get(i)).of(components.get(i).packedOn().orElse(components.get(i).finish())));
        }
        List<String> incomplete = all.stream().filter(each -> !each.notKnown().isEmpty()).map(WasteForecast.OfComponent::component).toList();
        return new WasteForecast(all, new WasteForecast.Totals(sum(all, WasteForecast.OfComponent::metresCut), sum(all, WasteForecast.OfComponent::massKg),
            sum(all, WasteForecast.OfComponent::kerfKg), known(all, WasteForecast.OfComponent::piecesKg), known(all, WasteForecast.OfComponent::chipsKg),
            known(all, WasteForecast.OfComponent::finesKg), known(all, WasteForecast.OfComponent::airborneKg),
            known(all, WasteForecast.OfComponent::abrasiveKg), known(all, WasteForecast.OfComponent::coarseAbrasiveKg),
            known(all, WasteForecast.OfComponent::slowAbrasiveKg), sum(all, WasteForecast.OfComponent::spentSolidsKg),
            known(all, WasteForecast.OfComponent::tools), known(all, WasteForecast.OfComponent::filters), known(all, WasteForecast.OfComponent::drums),
            all.stream().mapToInt(WasteForecast.OfComponent::packages).sum(), incomplete));
    }

    /** One component while it is put together. */
    private final class One {
        private final Component component;
        private final Map<String, Quantities> byTechnique;
        private final List<String> notKnown = new ArrayList<>();
        private final List<String> assumed = new ArrayList<>();

        One(Component component) {
            this.component = component;
            byTechnique = used.of(component.code());
        }

        WasteForecast.OfComponent of(LocalDate on) {
            Quantities all = used.together(component.code());
            Optional<Double> abrasive = expected(Driver.KG_ABRASIVE, "");
            Optional<Double> tools = expected(Driver.TOOL_CHANGE, "tools");
            Optional<Double> filters = expected(Driver.FILTER, "filters");
            Optional<Double> drums = expected(Driver.DRUM, "drums");
            Optional<SecondaryWaste> parts = parts();
            boolean fits = all.kerfKg() <= component.massKg();
            if (!fits) {
                notKnown.add("what is left of it: the cuts take " + Findings.number(all.kerfKg()) + " kg out of " + Findings.number(component.massKg()) + " kg");
            }
            Optional<WasteForecast.Activity> activity = fits ? activity(on, all.kerfKg() / component.massKg()) : Optional.empty();
            boolean fed = abrasive.isPresent();
            return new WasteForecast.OfComponent(component.code(), all.metres(), component.massKg(), all.kerfKg(),
                fits ? Optional.of(component.massKg() - all.kerfKg()) : Optional.empty(), parts.map(SecondaryWaste::chipsKg), parts.map(SecondaryWaste::finesKg),
                parts.map(SecondaryWaste::airborneKg), abrasive, parts.filter(each -> fed).map(SecondaryWaste::coarseAbrasiveKg),
                parts.filter(each -> fed).map(SecondaryWaste::slowAbrasiveKg), all.kerfKg() + abrasive.orElse(0.0), tools, filters, drums,
                component.packages(), activity, notKnown, assumed);
        }

        /** Sum over the techniques that say it; no word on abrasive where none is fed. */
        private Optional<Double> expected(Driver driver, String words) {
            Sum sum = new Sum();
            boolean any = false;
            for (Map.Entry<String, Quantities> each : byTechnique.entrySet()) {
                Optional<String> because = each.getValue().whyNot(driver);
                if (because.isEmpty()) {
                    any = true;
                    sum.add(each.getValue().of(driver).mean());
                } else if (!words.isEmpty()) {
                    notKnown.add(words + " of " + each.getKey() + ": " + because.get());
                }
            }
            return any ? Optional.of(sum.value()) : Optional.empty();
        }

        /** Kerf and abrasive by where they end, if all techniques say how much stays in the water. */
        private Optional<SecondaryWaste> parts() {
            Optional<PoolWater> water = campaign.settings().pool().flatMap(Pool::water);
            List<SecondaryWaste> parts = new ArrayList<>();
            boolean all = true;
            for (Map.Entry<String, Quantities> each : byTechnique.entrySet()) {
                Technique technique = used.technique(each.getKey());
                assume("speed, kerf and wear of " + each.getKey(), technique.origin());
                Optional<PoolWater.Release> release = water.flatMap(given -> given.release(each.getKey()));
                boolean fed = each.getValue().whyNot(Driver.KG_ABRASIVE).isEmpty();
                double kerf = each.getValue().kerfKg();
                if (kerf == 0 && !fed) {
                    continue;
                }
                if (release.isEmpty() || fed && release.get().slowAbrasive().isEmpty()) {
                    notKnown.add("fines of " + each.getKey() + ": no release of " + (release.isEmpty() ? "it" : "its abrasive") + " is given (settings.pool.water.releases)");
                    all = false;
                    continue;
                }
                assume("what stays in the water of " + each.getKey(), release.get().origin());
                CutSolids solids = new CutSolids(kerf, CutSolids.none(), fed ? each.getValue().kgAbrasive().mean() : 0, 0);
                parts.add(SecondaryWaste.of(solids, new Shares(release.get().suspended().mean(), release.get().airborne().map(Likely::mean).orElse(0.0),
                    release.get().slowAbrasive().map(Likely::mean).orElse(0.0))));
            }
            return all ? Optional.of(together(parts)) : Optional.empty();
        }

        private void assume(String what, Origin origin) {
            if (origin.status().assumption()) {
                assumed.add(what + ": " + origin.status());
            }
        }

        private Optional<WasteForecast.Activity> activity(LocalDate on, double share) {
            if (component.inventory().isEmpty()) {
                return Optional.empty();
            }
            Inventory inventory = component.inventory().get();
            Sum whole = new Sum();
            Sum pieces = new Sum();
            Sum kerf = new Sum();
            List<WasteForecast.Part> parts = new ArrayList<>();
            for (Inventory.Activity each : inventory.activities()) {
                Nuclide nuclide = nuclides.get(each.nuclide());
                double now;
                if (nuclide == null) {
                    notKnown.add("activity on " + on + ": the half-life of " + each.nuclide() + " is not known");
                    return Optional.empty();
                }
                try {
                    now = each.becquerel() * Decay.factor(nuclide.halfLifeDays(), ChronoUnit.DAYS.between(inventory.referenceOn(), on));
                } catch (Invalid tooFarBack) {
                    notKnown.add("activity on " + on + ": " + each.nuclide() + " is given for " + inventory.referenceOn() + ", too many half-lives away");
                    return Optional.empty();
                }
                double cut = now * share;
                parts.add(new WasteForecast.Part(each.nuclide(), now, now - cut, cut));
                whole.add(now);
                pieces.add(now - cut);
                kerf.add(cut);
            }
            assume("activity", inventory.origin());
            return Optional.of(new WasteForecast.Activity(on, whole.value(), pieces.value(), kerf.value(), parts));
        }
    }

    private static SecondaryWaste together(List<SecondaryWaste> parts) {
        return new SecondaryWaste(sum(parts, SecondaryWaste::chipsKg), CutSolids.none(), sum(parts, SecondaryWaste::finesKg), CutSolids.none(),
            sum(parts, SecondaryWaste::airborneKg), CutSolids.none(), sum(parts, SecondaryWaste::coarseAbrasiveKg),
            sum(parts, SecondaryWaste::slowAbrasiveKg), 0);
    }

    private static <T> double sum(List<T> all, Function<T, Double> figure) {
        Sum sum = new Sum();
        all.forEach(each -> sum.add(figure.apply(each)));
        return sum.value();
    }

    private static <T> Optional<Double> known(List<T> all, Function<T, Optional<Double>> figure) {
        List<Double> given = all.stream().map(figure).flatMap(Optional::stream).toList();
        return given.isEmpty() ? Optional.empty() : Optional.of(sum(given, Function.identity()));
    }
}
