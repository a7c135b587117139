package kerfbook.choice;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Cut;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Routine;
import kerfbook.campaign.RoutineTask;

/**
 * A campaign in which cuts of one component are made with another technique, by the routine of that technique.
 *
 * @param routine the routine that came in
 * @param notes   what had to give way
 */
record Exchange(Campaign campaign, String routine, List<String> notes) {

    /**
     * @param which   the cuts that change hands
     * @param routine left out: the campaign's first of the technique
     * @throws kerfbook.quantity.Invalid if the campaign has no routine of the technique
     */
    @SuppressWarnings("OptionalUsedAsFieldOrParameterType")
    static Exchange of(Campaign in, Component component, Predicate<Cut> which, String technique, Optional<String> routine, List<String> notes) {
        Set<String> staying = in.cuts().stream().filter(cut -> cut.component().equals(component.code()) && !which.test(cut)).map(Cut::technique)
            .collect(Collectors.toSet());
        List<String> routines = Routines.exchanged(in, component, technique, routine, staying);
        List<Component> components = in.components().stream()
            .map(each -> each.code().equals(component.code()) ? each.through(routines) : each).toList();
        List<Cut> exchanged = in.cuts().stream().map(cut -> cut.component().equals(component.code()) && which.test(cut)
            ? new Cut(cut.code(), cut.component(), cut.name(), technique, cut.count(), cut.lengthMm(), cut.thicknessMm(), cut.metalShare()) : cut).toList();
        List<String> gone = component.routines().stream().filter(code -> !routines.contains(code)).map(code -> component.code() + "/" + code + "/").toList();
        List<FigureOverride> kept = in.overrides().stream().filter(each -> gone.stream().noneMatch(each.task()::startsWith)).toList();
        List<String> said = new ArrayList<>(notes);
        if (kept.size() < in.overrides().size()) {
            said.add(in.overrides().size() - kept.size() + " replaced figures belong to tasks of the routine of now and do not count here.");
        }
        String used = routine.or(() -> routines.stream().filter(code -> named(in, code).technique().equals(Optional.of(technique))).findFirst()).orElseThrow();
        List<ManualTask> tied = in.tasks().stream().map(task -> tied(task, gone, component.code() + "/" + used + "/", named(in, used))).toList();
        if (!tied.equals(in.tasks())) {
            said.add("Tasks of their own that stood before or after a task of the routine of now stand before the first or after the last of this one, or by its task of the same code.");
        }
        return new Exchange(in.cutting(in.techniques(), in.routines(), components, exchanged, tied, kept), used, said);
    }

    /** A task that is tied to tasks of a routine that goes, tied to the one that comes. */
    private static ManualTask tied(ManualTask task, List<String> gone, String prefix, Routine comes) {
        List<String> first = comes.tasks().stream().filter(each -> each.after().isEmpty()).map(RoutineTask::code).toList();
        List<String> last = comes.last().stream().map(RoutineTask::code).toList();
        return task.tied(retied(task.after(), gone, prefix, comes, last), retied(task.before(), gone, prefix, comes, first));
    }

    private static List<String> retied(List<String> ids, List<String> gone, String prefix, Routine comes, List<String> instead) {
        Set<String> all = new LinkedHashSet<>();
        for (String id : ids) {
            Optional<String> old = gone.stream().filter(id::startsWith).findFirst();
            String code = old.map(from -> id.substring(from.length())).orElse("");
            if (old.isEmpty()) {
                all.add(id);
            } else if (comes.tasks().stream().anyMatch(each -> each.code().equals(code))) {
                all.add(prefix + code);
            } else {
                instead.forEach(each -> all.add(prefix + each));
            }
        }
        return List.copyOf(all);
    }

    private static Routine named(Campaign campaign, String code) {
        return campaign.routines().stream().filter(each -> each.code().equals(code)).findFirst().orElseThrow();
    }
}
