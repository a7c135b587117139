package kerfbook.campaign;

import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;

/** Holds what the changes of options name against the plan. */
final class OptionReferences {
    private final BiConsumer<String, String> fault;
    private final Set<String> components;
    private final Set<String> techniques;
    private final Set<String> routines;
    private final Set<String> sources;
    private final List<Worker> workers;
    private final List<Cut> cuts;
    private final boolean priceless;

    /** @param priceless the plan has no prices, and so no currency */
    OptionReferences(BiConsumer<String, String> fault, Set<String> components, Set<String> techniques, Set<String> routines, Set<String> sources,
                     List<Worker> workers, List<Cut> cuts, boolean priceless) {
        this.fault = fault;
        this.components = components;
        this.techniques = techniques;
        this.routines = routines;
        this.sources = sources;
        this.workers = workers;
        this.cuts = cuts;
        this.priceless = priceless;
    }

    void check(Option option, String at) {
        for (int i = 0; i < option.changes().size(); i++) {
            check(option.changes().get(i), at + ".changes[" + i + "]");
        }
    }

    private void check(Change change, String at) {
        known(change.component(), components, at + ".component", "component");
        known(change.technique(), techniques, at + ".technique", "technique");
        known(change.routine(), routines, at + ".routine", "routine");
        known(change.source(), sources, at + ".source", "source");
        for (int i = 0; i < change.after().size(); i++) {
            known(Optional.of(change.after().get(i)), components, at + ".after[" + i + "]", "component");
        }
        for (int i = 0; i < change.cuts().size(); i++) {
            String code = change.cuts().get(i);
            if (cuts.stream().noneMatch(cut -> cut.code().equals(code) && change.component().equals(Optional.of(cut.component())))) {
                fault.accept(at + ".cuts[" + i + "]", "there is no cut \"" + code + "\" of this component.");
            }
        }
        change.role().ifPresent(role -> crew(change, role, at));
        if (change.price().isPresent() && priceless) {
            fault.accept(at + (change.cost().isPresent() ? ".cost" : ".cost_per_year"), "has no currency, since the campaign has no prices. Add the first price.");
        }
    }

    private void crew(Change change, String role, String at) {
        if (workers.stream().noneMatch(worker -> worker.roles().contains(role))) {
            fault.accept(at + ".role", "no worker has the role \"" + role + "\". Give it to somebody or use another role.");
        }
        for (int i = 0; i < change.members().size(); i++) {
            String code = change.members().get(i).worker();
            Optional<Worker> worker = workers.stream().filter(each -> each.code().equals(code)).findFirst();
            if (worker.isEmpty()) {
                fault.accept(at + ".members[" + i + "].worker", "there is no worker \"" + code + "\" in this campaign.");
            } else if (!worker.get().roles().contains(role)) {
                fault.accept(at + ".members[" + i + "].worker", code + " does not have the role \"" + role + "\".");
            }
        }
    }

    private void known(Optional<String> code, Set<String> codes, String field, String what) {
        if (code.isPresent() && !codes.contains(code.get())) {
            fault.accept(field, "there is no " + what + " \"" + code.get() + "\" in this campaign.");
        }
    }
}
