package kerfbook.http;

import io.javalin.http.Context;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.logbook.Beside;
import kerfbook.logbook.Entry;
import kerfbook.logbook.EntryCheck;
import kerfbook.logbook.LogPlan;
import kerfbook.logbook.Need;
import kerfbook.quantity.Invalid;
import kerfbook.store.Accounts;
import kerfbook.store.Entries;
import kerfbook.store.HandIns;
import kerfbook.store.Kept;
import kerfbook.store.Page;
import kerfbook.store.Sender;
import kerfbook.store.Sums;

/** The entries of the log: kept once under the id that the tablet gave them; a person's dose is shown to the person and the radiation protection officer. */
final class EntryRoutes {
    /** Longest entry that is read, in bytes. */
    static final int LARGEST = 16 * 1024;
    private static final int USUAL_PAGE = 200;
    private static final Pattern ID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");

    /** @param usv and remark, enteredBy: only for those who may see the dose */
    private record Row(String id, String worker, String task, LocalDate on, String area, double hours, Optional<Double> usv, Optional<String> step,
                       Optional<Double> foundUsvPerH, Optional<String> remark, Instant madeAt, Instant receivedAt, Optional<String> replaces,
                       Optional<String> replacedBy, List<String> confirmed, Optional<String> enteredBy, boolean mayCorrect) { }

    private record Rows(List<Row> items, int offset, int limit, long total) { }

    private record Part(String code, long entries, double hours, double personUsv) { }

    private record DayPart(LocalDate on, long entries, double hours, double personUsv) { }

    /** @param people all for the radiation protection officer, else the caller alone */
    private record State(Instant now, LocalDate today, long entries, double hours, double personUsv, Optional<LocalDate> last, long handedIn, List<Part> people,
                         List<Part> tasks, List<Part> areas, List<DayPart> days) { }

    private final LogPlans plans;
    private final Entries entries;
    private final HandIns handIns;
    private final Today today;
    private final Accounts accounts;

    private EntryRoutes(LogPlans plans, Entries entries, HandIns handIns, Today today, Accounts accounts) {
        this.today = today;
        this.accounts = accounts;
        this.plans = plans;
        this.entries = entries;
        this.handIns = handIns;
    }

    static void on(Routes routes, LogPlans plans, Entries entries, HandIns handIns, Today today, Accounts accounts) {
        EntryRoutes here = new EntryRoutes(plans, entries, handIns, today, accounts);
        routes.get("/api/campaigns/{id}/entries", here::list);
        routes.get("/api/campaigns/{id}/entries/choices", ctx -> Choices.answer(ctx, plans, entries, today));
        routes.get("/api/campaigns/{id}/entries/state", here::state);
        routes.get("/api/campaigns/{id}/entries/{entry}", here::one);
        routes.put("/api/campaigns/{id}/entries/{entry}", here::put);
    }

    private void put(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        Caller caller = Caller.of(ctx);
        Entry entry = read(ctx);
        Privacy.requireMayEnter(caller, entry.worker(), accounts);
        Instant now = now();
        Optional<Duration> skew = deviceTime(ctx).map(device -> Duration.between(now, device));
        LogPlan plan = plans.of(campaign);
        Instant moment = today.moment(campaign, now);       // asked before: the thread that writes must not wait for a reader
        Entries.Put put = entries.put(campaign, entry, sender(caller, now), (beside, replaced) -> {
            replaced.ifPresent(old -> requireMayCorrect(caller, old));
            check(plan, entry, beside, moment, skew);
        });
        ctx.status(put.fresh() ? 201 : 200);
        Routes.json(ctx, Json.bytes(row(caller, put.kept(), put.fresh() ? Optional.empty() : entries.replacedBy(campaign).apply(entry.id()))));
    }

    static void check(LogPlan plan, Entry entry, Beside beside, Instant now, Optional<Duration> skew) {
        EntryCheck.refuse(plan, entry, beside, now, false);
        List<Need> needs = EntryCheck.ask(plan, entry, beside, now, skew);
        if (!needs.isEmpty()) {
            throw new Refused(Problem.asking(needs));
        }
    }

    private void one(Context ctx) {
        Address.plain(ctx);
        long campaign = existing(ctx);
        Kept kept = entries.find(campaign, id(ctx)).orElseThrow(() -> new Refused(404, "There is no such entry."));
        Routes.json(ctx, Json.bytes(row(Caller.of(ctx), kept, entries.replacedBy(campaign).apply(kept.entry().id()))));
    }

    private void list(Context ctx) {
        Address.Page page = Address.page(ctx, USUAL_PAGE, Set.of("from", "worker"));
        long campaign = existing(ctx);
        Caller caller = Caller.of(ctx);
        Optional<LocalDate> from = day(ctx, "from");
        Optional<String> worker = Optional.ofNullable(ctx.queryParam("worker"));
        Predicate<Kept> which = kept -> from.filter(kept.entry().on()::isBefore).isEmpty() && worker.filter(code -> !code.equals(kept.entry().worker())).isEmpty();
        Page<Kept> found = entries.page(campaign, which, page.offset(), page.limit());
        Function<String, Optional<String>> replacedBy = entries.replacedBy(campaign);
        Routes.json(ctx, Json.bytes(new Rows(found.rows().stream().map(kept -> row(caller, kept, replacedBy.apply(kept.entry().id()))).toList(), page.offset(), page.limit(), found.total())));
    }

    private void state(Context ctx) {
        Address.plain(ctx);
        long campaign = existing(ctx);
        Caller caller = Caller.of(ctx);
        Sums sums = entries.sums(campaign);
        List<Part> people = parts(sums.workers()).stream().filter(part -> sees(caller, part.code())).toList();
        Routes.json(ctx, Json.bytes(new State(now(), today.of(campaign), sums.entries(), sums.hours(), sums.personUsv(), sums.last(), handIns.open(campaign), people,
            parts(sums.tasks()), parts(sums.areas()),
            sums.days().entrySet().stream().map(each -> new DayPart(each.getKey(), each.getValue().entries(), each.getValue().hours(), each.getValue().usv())).toList())));
    }

    private static List<Part> parts(Map<String, Sums.Part> sums) {
        return sums.entrySet().stream().map(each -> new Part(each.getKey(), each.getValue().entries(), each.getValue().hours(), each.getValue().usv())).toList();
    }

    private static Row row(Caller caller, Kept kept, Optional<String> replacedBy) {
        Entry entry = kept.entry();
        boolean open = sees(caller, entry.worker());
        return new Row(entry.id(), entry.worker(), entry.task(), entry.on(), entry.area(), entry.hours(), Optional.of(entry.usv()).filter(usv -> open), entry.step(),
            entry.foundUsvPerH(), Optional.of(entry.remark()).filter(text -> open), entry.madeAt(), kept.receivedAt(), entry.replaces(), replacedBy,
            entry.confirmed(), Optional.of(kept.enteredBy()).filter(name -> open), mayCorrect(caller, kept) && replacedBy.isEmpty());
    }

    /** Whether the caller may see this person's dose. */
    static boolean sees(Caller caller, String worker) {
        return caller.sees(worker);
    }

    private static boolean mayCorrect(Caller caller, Kept kept) {
        boolean enters = caller.role() == Role.RADIATION_PROTECTION_OFFICER || caller.role() == Role.TEAM_MEMBER;
        return enters && (sees(caller, kept.entry().worker()) || caller.account().isPresent() && caller.account().equals(kept.account()));
    }

    private static void requireMayCorrect(Caller caller, Kept old) {
        if (!mayCorrect(caller, old)) {
            throw new Refused(403, "An entry is corrected by its person, by who entered it, or by the radiation protection officer.");
        }
    }

    /** The entry that a request brings, under the id in its address. */
    private static Entry read(Context ctx) {
        Entry entry = Json.read(small(ctx), Entry.class);
        if (!entry.id().equals(ctx.pathParam("entry"))) {
            throw new Invalid("id", "must be the one in the address.");
        }
        return entry;
    }

    static byte[] small(Context ctx) {
        byte[] body = Body.of(ctx);
        if (body.length > LARGEST) {
            throw new Refused(413, "At most " + LARGEST + " bytes are read here.");
        }
        return body;
    }

    static String id(Context ctx) {
        String id = ctx.pathParam("entry");
        if (!ID.matcher(id).matches()) {
            throw new Refused(404, "There is no such entry.");
        }
        return id;
    }

    /** The campaign in the address, which is there. */
    private long existing(Context ctx) {
        long id = Address.id(ctx);
        plans.require(id);
        return id;
    }

    static Sender sender(Caller caller, Instant now) {
        return new Sender(caller.signature(), caller.account(), now);
    }

    static Instant now() {
        return Instant.now().truncatedTo(ChronoUnit.MICROS);
    }

    /** The time of the device at sending, where it says it. */
    private static Optional<Instant> deviceTime(Context ctx) {
        String text = ctx.header("Device-Time");
        try {
            return Optional.ofNullable(text).map(Instant::parse);
        } catch (DateTimeException e) {
            throw new Invalid("Device-Time", "must be a moment like 2027-03-15T08:30:00Z.");
        }
    }

    private static Optional<LocalDate> day(Context ctx, String name) {
        String text = ctx.queryParam(name);
        try {
            return Optional.ofNullable(text).map(LocalDate::parse);
        } catch (DateTimeException e) {
            throw new Invalid(name, "must be a date like 2027-03-15.");
        }
    }
}
