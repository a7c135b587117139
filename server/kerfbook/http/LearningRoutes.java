package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Supplier;
import kerfbook.account.Role;
import kerfbook.campaign.Campaign;
import kerfbook.cutting.Technique;
import kerfbook.document.Json;
import kerfbook.estimate.Finding;
import kerfbook.estimate.Forecast;
import kerfbook.logbook.AcceptedFactor;
import kerfbook.logbook.AcceptedFactor.Carried;
import kerfbook.logbook.Calibration;
import kerfbook.logbook.DriftChart;
import kerfbook.logbook.EarnedValue;
import kerfbook.logbook.FactorKind;
import kerfbook.logbook.LearningSettings;
import kerfbook.logbook.Learnt;
import kerfbook.logbook.LearntFactor;
import kerfbook.logbook.TaskComparison;
import kerfbook.quantity.Invalid;
import kerfbook.store.LearntFactors;

/** What the log teaches, and the factors that the radiation protection officer takes over from it. */
final class LearningRoutes {
    /** @param invented the day is not the clock's: the campaign is invented and shown as of it */
    private record Answer(LocalDate asOf, boolean invented, long campaignVersion, int entries, LearningSettings settings, List<TaskComparison> tasks,
                          List<LearntFactor> factors, List<DriftChart> drift, EarnedValue.Figures dose, EarnedValue.Figures hours,
                          Optional<Learnt.Split> split, Optional<Calibration> calibration, List<Finding> findings, List<String> notes,
                          boolean mayAccept) { }

    /** @param inForce whether it is what holds now */
    private record Accepted(long number, Instant acceptedAt, boolean inForce, double factor, FactorKind kind, String of, double logMean, double logSd, int count,
                            LocalDate upTo, String reason, String by, Optional<Carried> from, boolean withdrawn) {
        static Accepted of(LearntFactors.Row row, boolean inForce) {
            AcceptedFactor factor = row.factor();
            return new Accepted(row.number(), row.acceptedAt(), inForce, Math.exp(factor.logMean()), factor.kind(), factor.of(), factor.logMean(),
                factor.logSd(), factor.count(), factor.upTo(), factor.reason(), factor.by(), factor.from(), factor.withdrawn());
        }
    }

    /** @param campaign name under which another campaign may cite these factors */
    private record Rows(String campaign, List<Accepted> items) { }

    /** What was on the screen when it was accepted. */
    private record Seen(int count, double logMean) { }

    /** Accepts what the log shows ({@code seen}), brings a factor from another campaign ({@code from}), or withdraws one ({@code withdrawn}). */
    private record Ask(String kind, String of, String reason, Optional<Seen> seen, Optional<Carried> from, Optional<Boolean> withdrawn) {
        Ask {
            if (List.of(seen.isPresent(), from.isPresent(), withdrawn.orElse(false)).stream().filter(each -> each).count() != 1) {
                throw new Invalid("seen", "must be there, or from, or withdrawn: exactly one of the three.");
            }
        }
    }

    private final Lessons lessons;

    private LearningRoutes(Lessons lessons) {
        this.lessons = lessons;
    }

    static void on(Routes routes, Lessons lessons) {
        LearningRoutes here = new LearningRoutes(lessons);
        routes.get("/api/campaigns/{id}/learning", here::learning);
        routes.get("/api/campaigns/{id}/learnt", here::list);
        routes.post("/api/campaigns/{id}/learnt", here::add);
    }

    private void learning(Context ctx) {
        Address.plain(ctx);
        Lessons.Lesson lesson = lessons.of(Address.id(ctx));
        Learnt learnt = lesson.learnt();
        Routes.json(ctx, Json.bytes(new Answer(learnt.asOf(), lessons.today().invented(lesson.stored().id()).isPresent(), lesson.stored().version(), learnt.entries(),
            learnt.settings(), learnt.tasks(), learnt.factors(), learnt.drift(), learnt.dose(), learnt.hours(), learnt.split(), lessons.calibration(lesson),
            learnt.findings(), learnt.notes(), Caller.of(ctx).role() == Role.RADIATION_PROTECTION_OFFICER)));
    }

    private void list(Context ctx) {
        Address.plain(ctx);
        Lessons.Lesson lesson = lessons.of(Address.id(ctx));
        Routes.json(ctx, Json.bytes(new Rows(lesson.stored().name(), rows(lesson))));
    }

    private static List<Accepted> rows(Lessons.Lesson lesson) {
        return lesson.accepted().stream().map(row -> Accepted.of(row, lesson.learnt().inForce().contains(row.factor()))).toList();
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        Caller caller = Caller.of(ctx);
        if (caller.role() != Role.RADIATION_PROTECTION_OFFICER) {
            throw new Refused(403, "A learnt factor is accepted by the radiation protection officer.");
        }
        long id = Address.id(ctx);
        Ask ask = Json.read(EntryRoutes.small(ctx), Ask.class);
        FactorKind kind = kind(ask.kind());
        Lessons.Lesson lesson = lessons.of(id);
        requireKnown(lesson.campaign(), lesson.forecast(), kind, ask.of());
        AcceptedFactor factor = factor(lesson, kind, ask, caller.signature());
        LearntFactors.Row row = lessons.factors().add(id, before -> {
            if (before.size() != lesson.accepted().size()) {
                throw new Refused(409, "Another factor was accepted meanwhile. Look again.");
            }
            return factor;
        });
        ctx.status(201);
        Routes.json(ctx, Json.bytes(Accepted.of(row, !factor.withdrawn())));
    }

    private static FactorKind kind(String text) {
        for (FactorKind kind : FactorKind.values()) {
            if (kind.toString().equals(text)) {
                return kind;
            }
        }
        throw new Invalid("kind", "must be hours, rate or speed.");
    }

    private static void requireKnown(Campaign campaign, Forecast forecast, FactorKind kind, String of) {
        Set<String> known = Set.copyOf(switch (kind) {
            case HOURS -> forecast.groups().stream().map(Forecast.Group::group).toList();
            case RATE -> forecast.areas().stream().map(Forecast.AreaDose::area).toList();
            case SPEED -> campaign.techniques().stream().map(Technique::code).toList();
        });
        if (!known.contains(of)) {
            throw new Invalid("of", "names no " + switch (kind) {
                case HOURS -> "group of tasks";
                case RATE -> "area";
                case SPEED -> "technique";
            } + " of this campaign. Choose one of " + String.join(", ", known.stream().sorted().toList()) + ".");
        }
    }

    private static AcceptedFactor factor(Lessons.Lesson lesson, FactorKind kind, Ask ask, String by) {
        LocalDate upTo = lesson.learnt().asOf();
        if (ask.from().isPresent()) {
            return AcceptedFactor.carrying(kind, ask.of(), ask.from().get(), lesson.learnt().settings(), upTo, ask.reason(), by);
        }
        if (ask.withdrawn().orElse(false)) {
            if (lesson.learnt().inForce().stream().noneMatch(each -> each.kind() == kind && each.of().equals(ask.of()))) {
                throw new Refused(409, "No such factor is in force.");
            }
            return AcceptedFactor.withdrawing(kind, ask.of(), upTo, ask.reason(), by);
        }
        Supplier<Refused> changed = () -> new Refused(409, "Entries came in since this was shown, and the figure is another now. Look at it again.");
        LearntFactor now = lesson.learnt().factor(kind, ask.of()).orElseThrow(changed);
        Seen seen = ask.seen().orElseThrow();
        if (now.count() != seen.count() || !(Math.abs(now.logMean() - seen.logMean()) <= 1e-9)) {
            throw changed.get();
        }
        LocalDate last = lesson.learnt().drift().stream().filter(chart -> chart.kind() == kind && chart.of().equals(ask.of())).findFirst()
            .map(chart -> chart.points().get(chart.points().size() - 1).on()).orElse(upTo);
        return new AcceptedFactor(kind, ask.of(), now.logMean(), now.logSd(), now.count(), last, ask.reason(), by, Optional.empty(), false);
    }
}
