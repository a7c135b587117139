package kerfbook.estimate;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Function;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.cutting.Technique;

/** What the cuts of each component use up, technique by technique. */
final class Consumption {
    private final Map<String, Map<String, Quantities>> byComponent = new LinkedHashMap<>();
    private final Map<String, Technique> techniques;

    Consumption(Campaign campaign) {
        techniques = campaign.techniques().stream().collect(Collectors.toMap(Technique::code, Function.identity()));
        Map<String, Component> components = new LinkedHashMap<>();
        for (Component component : campaign.components()) {
            components.put(component.code(), component);
            byComponent.put(component.code(), new LinkedHashMap<>());
        }
        for (Cut cut : campaign.cuts()) {
            byComponent.get(cut.component()).merge(cut.technique(), Quantities.of(cut, components.get(cut.component()), techniques.get(cut.technique())),
                Quantities::plus);
        }
    }

    /** By technique, in the order of the cuts. */
    Map<String, Quantities> of(String component) {
        return byComponent.get(component);
    }

    Technique technique(String code) {
        return techniques.get(code);
    }

    /** Codes of the techniques that cut something. */
    Set<String> techniques() {
        Set<String> used = new TreeSet<>();
        byComponent.values().forEach(each -> used.addAll(each.keySet()));
        return used;
    }

    /** All of a component together. */
    Quantities together(String component) {
        return List.copyOf(byComponent.get(component).values()).stream().reduce(Quantities.EMPTY, Quantities::plus);
    }
}
