package kerfbook.http;

import io.javalin.http.Context;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.logbook.KeepingTime;
import kerfbook.quantity.Require;
import kerfbook.store.Database;
import kerfbook.store.Retention;
import kerfbook.store.Retention.Holding;
import kerfbook.store.Retention.Removal;
import kerfbook.store.Retention.Rule;

/** How long records of individuals are kept, what is held of each campaign, and removing it after that time. Tells no dose. */
final class RetentionRoutes {
    private static final String SOURCE = "IAEA GSR Part 3, para. 3.104: until the person is or would be 75, and at least 30 years after the work. Council Directive 2013/59/Euratom, "
        + "Art. 43, asks for the same (from memory). Birthdays are not kept here: 57 years after the last day are enough for everybody who was 18 by then. "
        + "The law of your country may ask for more.";

    /** @param entries the number of entries that was on the screen: nobody removes more than they saw */
    private record Asked(String reason, long entries) {
        Asked {
            Require.reason(reason, "reason");
        }
    }

    private record Setting(int years, String reason) {
        Setting {
            Require.reason(reason, "reason");
        }
    }

    /**
     * @param there     the campaign is still there: it must be removed before its records can be
     * @param keptUntil last day on which they are kept for sure
     * @param over      that day is past
     */
    private record Row(long campaign, Optional<String> name, boolean there, long entries, long periodResults, Optional<LocalDate> lastDay, Optional<LocalDate> keptUntil,
                       boolean over, Optional<Removal> removed) { }

    private record Answer(int years, int leastYears, int mostYears, Optional<Retention.Set> set, String source, boolean maySet, List<Row> items) { }

    private final Retention retention;

    private RetentionRoutes(Retention retention) {
        this.retention = retention;
    }

    static void on(Routes routes, Database database) {
        RetentionRoutes here = new RetentionRoutes(new Retention(database));
        routes.get("/api/retention", here::list);
        routes.put("/api/retention", here::set);
        routes.post("/api/retention/{campaign}/removal", here::remove);
    }

    private void list(Context ctx) {
        Address.plain(ctx);
        answer(ctx);
    }

    private void set(Context ctx) {
        Address.plain(ctx);
        Setting setting = Json.read(EntryRoutes.small(ctx), Setting.class);
        retention.set(new KeepingTime(setting.years()), setting.reason(), EntryRoutes.sender(Caller.of(ctx), EntryRoutes.now()));
        answer(ctx);
    }

    private void remove(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.numbered(ctx, "campaign", "There is no such campaign.");
        Asked asked = Json.read(EntryRoutes.small(ctx), Asked.class);
        Instant now = EntryRoutes.now();
        retention.remove(campaign, asked.reason(), EntryRoutes.sender(Caller.of(ctx), now), (holding, time) -> check(holding, time, asked, today(now)));
        answer(ctx);
    }

    private static void check(Holding holding, KeepingTime time, Asked asked, LocalDate today) {
        if (holding.removal().isPresent()) {
            throw new Refused(409, "The records of this campaign were removed already.");
        }
        if (holding.there()) {
            throw new Refused(409, "The campaign is still there, and its forecast rests on its log. Remove the campaign first.");
        }
        if (holding.entries() != asked.entries()) {
            throw new Refused(409, "There are " + holding.entries() + " entries, not " + asked.entries() + ". Look at the campaign again.");
        }
        LocalDate until = holding.lastDay().map(time::until).orElseThrow(() -> new Refused(409, "The last day of work is not known: nothing is removed."));
        if (!today.isAfter(until)) {
            throw new Refused(409, "These records are kept until " + until + ": " + time.years() + " years after " + holding.lastDay().orElseThrow() + ".");
        }
    }

    private void answer(Context ctx) {
        Rule rule = retention.rule();
        LocalDate today = today(EntryRoutes.now());
        List<Row> rows = retention.holdings().stream().map(each -> row(each, rule.time(), today)).toList();
        Routes.json(ctx, Json.bytes(new Answer(rule.time().years(), KeepingTime.LEAST_YEARS, KeepingTime.MOST_YEARS, rule.set(), SOURCE,
            Caller.of(ctx).role() == Role.RADIATION_PROTECTION_OFFICER, rows)));
    }

    private static Row row(Holding holding, KeepingTime time, LocalDate today) {
        Optional<LocalDate> last = holding.removal().isPresent() ? Optional.empty() : holding.lastDay();
        Optional<LocalDate> until = last.map(time::until);
        return new Row(holding.campaign(), holding.header().flatMap(json -> Optional.ofNullable(Leaves.of(json).get("name"))), holding.there(), holding.entries(),
            holding.results(), last, until, until.filter(today::isAfter).isPresent(), holding.removal());
    }

    /** The day that has ended everywhere last: nothing goes a day too early. */
    private static LocalDate today(Instant now) {
        return now.atOffset(ZoneOffset.ofHours(-12)).toLocalDate();
    }
}
