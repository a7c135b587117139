package kerfbook.document;

import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import kerfbook.campaign.Area;
import kerfbook.campaign.Campaign;
import kerfbook.campaign.Component;
import kerfbook.campaign.Constraint;
import kerfbook.campaign.Cut;
import kerfbook.campaign.DifficultyFactor;
import kerfbook.campaign.FigureOverride;
import kerfbook.campaign.ManualTask;
import kerfbook.campaign.Option;
import kerfbook.campaign.PackageType;
import kerfbook.campaign.Price;
import kerfbook.campaign.Resource;
import kerfbook.campaign.RosterEntry;
import kerfbook.campaign.Routine;
import kerfbook.campaign.Shield;
import kerfbook.campaign.Source;
import kerfbook.campaign.Survey;
import kerfbook.campaign.Target;
import kerfbook.campaign.TimedTrial;
import kerfbook.campaign.Worker;
import kerfbook.cutting.Technique;

/** The kinds of object a campaign holds lists of, named as in the document and in addresses, in document order. */
public final class Kind<T> {
    public static final List<Kind<?>> ALL = List.of(
        new Kind<>("factors", DifficultyFactor.class, Campaign::factors, DifficultyFactor::code),
        new Kind<>("areas", Area.class, Campaign::areas, Area::code),
        new Kind<>("sources", Source.class, Campaign::sources, Source::code),
        new Kind<>("shields", Shield.class, Campaign::shields, Shield::code),
        new Kind<>("surveys", Survey.class, Campaign::surveys, Survey::code),
        new Kind<>("techniques", Technique.class, Campaign::techniques, Technique::code),
        new Kind<>("trials", TimedTrial.class, Campaign::trials, TimedTrial::code),
        new Kind<>("routines", Routine.class, Campaign::routines, Routine::code),
        new Kind<>("packages", PackageType.class, Campaign::packages, PackageType::code),
        new Kind<>("components", Component.class, Campaign::components, Component::code),
        new Kind<>("cuts", Cut.class, Campaign::cuts, Cut::code),
        new Kind<>("tasks", ManualTask.class, Campaign::tasks, ManualTask::code),
        new Kind<>("overrides", FigureOverride.class, Campaign::overrides, FigureOverride::code),
        new Kind<>("workers", Worker.class, Campaign::workers, Worker::code),
        new Kind<>("roster", RosterEntry.class, Campaign::roster, RosterEntry::code),
        new Kind<>("resources", Resource.class, Campaign::resources, Resource::code),
        new Kind<>("prices", Price.class, Campaign::prices, Price::code),
        new Kind<>("targets", Target.class, Campaign::targets, Target::code),
        new Kind<>("constraints", Constraint.class, Campaign::constraints, Constraint::code),
        new Kind<>("options", Option.class, Campaign::options, Option::code));

    private final String name;
    private final Class<T> type;
    private final Function<Campaign, List<T>> list;
    private final Function<T, String> code;

    private Kind(String name, Class<T> type, Function<Campaign, List<T>> list, Function<T, String> code) {
        this.name = name;
        this.type = type;
        this.list = list;
        this.code = code;
    }

    public static Optional<Kind<?>> named(String name) {
        for (Kind<?> kind : ALL) {
            if (kind.name.equals(name)) {
                return Optional.of(kind);
            }
        }
        return Optional.empty();
    }

    public String name() {
        return name;
    }

    public Class<T> type() {
        return type;
    }

    /** One object of a campaign as it is kept: its code and its JSON. */
    public record Part(String code, byte[] json) { }

    /** All objects of this kind, in document order. */
    public List<Part> partsOf(Campaign campaign) {
        return list.apply(campaign).stream().map(object -> new Part(code.apply(object), Json.bytes(object))).toList();
    }

    /** Reads one object of this kind; the code in it is returned with it, the JSON written anew in the house order. */
    public Part read(byte[] json) {
        T object = Json.read(json, type);
        return new Part(code.apply(object), Json.bytes(object));
    }
}
