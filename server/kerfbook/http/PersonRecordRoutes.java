package kerfbook.http;

import io.javalin.http.Context;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;
import kerfbook.account.Role;
import kerfbook.document.Json;
import kerfbook.logbook.Entry;
import kerfbook.logbook.KeepingTime;
import kerfbook.logbook.PeriodResult;
import kerfbook.quantity.Sum;
import kerfbook.store.Entries;
import kerfbook.store.Kept;
import kerfbook.store.PeriodResults;
import kerfbook.store.Retention;

/**
 * The dose record of one person in one campaign, for the person and the radiation protection officer: entries with their corrections, and the
 * results of the dosimeter of record beside the sum of the electronic readings. It outlives the campaign: records of occupational exposure are
 * kept until the person is or would be 75, and at least 30 years after the work (IAEA GSR Part 3, para. 3.104).
 */
final class PersonRecordRoutes {
    private static final int PAGE = 1_000;
    private static final Pattern CODE = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,59}");

    private record Making(LocalDate from, LocalDate to, double usv, String source) { }

    /**
     * @param holds   no later one is about the same days
     * @param entries that hold, of these days in this campaign
     * @param readUsv their sum
     * @param ratio   dosimeter of record to that sum, where it is above 0
     */
    private record Result(long number, LocalDate from, LocalDate to, double usv, String source, Instant notedAt, String notedBy, boolean holds, long entries,
                          double readUsv, Optional<Double> ratio) { }

    /**
     * @param enters    the caller may add one
     * @param keptUntil last day on which the records of this campaign are kept for sure, as far as they go now
     */
    private record Results(boolean enters, int keptYears, Optional<LocalDate> keptUntil, List<Result> items) { }

    private record Line(Entry entry, Instant receivedAt, String enteredBy, Optional<String> replacedBy) { }

    private record PersonRecord(long campaign, String worker, Instant madeAt, long entriesThatHold, double hours, double usv, List<Line> entries, List<Result> periodResults) { }

    private final Plans plans;
    private final Entries entries;
    private final PeriodResults results;
    private final Retention retention;

    private PersonRecordRoutes(Plans plans, Entries entries, PeriodResults results, Retention retention) {
        this.retention = retention;
        this.plans = plans;
        this.entries = entries;
        this.results = results;
    }

    static void on(Routes routes, Plans plans, Entries entries, PeriodResults results, Retention retention) {
        PersonRecordRoutes here = new PersonRecordRoutes(plans, entries, results, retention);
        routes.get("/api/campaigns/{id}/people/{worker}/results", here::list);
        routes.post("/api/campaigns/{id}/people/{worker}/results", here::add);
        routes.get("/api/campaigns/{id}/people/{worker}/record", here::json);
        routes.get("/api/campaigns/{id}/people/{worker}/record.csv", here::csv);
    }

    private void list(Context ctx) {
        Address.plain(ctx);
        String worker = worker(ctx);
        long campaign = Address.id(ctx);
        plans.campaigns().get(campaign);
        Routes.json(ctx, Json.bytes(answer(campaign, worker, enters(Caller.of(ctx)))));
    }

    private void add(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        Caller caller = Caller.of(ctx);
        if (!enters(caller)) {
            throw new Refused(403, "Results of the dosimeter of record are entered by the radiation protection officer.");
        }
        String worker = worker(ctx);
        Making making = Json.read(EntryRoutes.small(ctx), Making.class);
        if (plans.campaigns().get(campaign).find("workers", worker).isEmpty()) {
            throw new Refused(404, "The campaign has no such person.");
        }
        boolean fresh = results.add(campaign, new PeriodResult(worker, making.from(), making.to(), making.usv(), making.source()),
            EntryRoutes.sender(caller, EntryRoutes.now()));
        ctx.status(fresh ? 201 : 200);
        Routes.json(ctx, Json.bytes(answer(campaign, worker, true)));
    }

    private Results answer(long campaign, String worker, boolean enters) {
        KeepingTime time = retention.rule().time();
        return new Results(enters, time.years(), retention.lastDay(campaign).map(time::until), results(campaign, worker));
    }

    private static boolean enters(Caller caller) {
        return caller.role() == Role.RADIATION_PROTECTION_OFFICER;
    }

    private void json(Context ctx) {
        Address.plain(ctx);
        String worker = worker(ctx);
        Routes.json(ctx, Json.bytes(record(Address.id(ctx), worker)));
        ctx.header("Content-Disposition", "attachment; filename=\"record-" + worker + ".json\"");
    }

    private void csv(Context ctx) {
        Address.plain(ctx);
        String worker = worker(ctx);
        ctx.contentType("text/csv; charset=utf-8").result(csv(record(Address.id(ctx), worker)).getBytes(StandardCharsets.UTF_8));
        ctx.header("Content-Disposition", "attachment; filename=\"record-" + worker + ".csv\"");
    }

    /** The person in the address, whom the caller may see. */
    private static String worker(Context ctx) {
        String worker = ctx.pathParam("worker");
        if (!CODE.matcher(worker).matches()) {
            throw new Refused(404, "The campaign has no such person.");
        }
        if (!EntryRoutes.sees(Caller.of(ctx), worker)) {
            throw new Refused(403, "The dose record of a person is shown to the person and to the radiation protection officer.");
        }
        return worker;
    }

    private List<Result> results(long campaign, String worker) {
        List<PeriodResults.Row> rows = results.list(campaign, worker);
        List<Entry> current = entries.current(campaign).stream().filter(entry -> entry.worker().equals(worker)).toList();
        List<Result> all = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            PeriodResults.Row row = rows.get(i);
            PeriodResult result = row.result();
            List<Entry> within = current.stream().filter(entry -> !entry.on().isBefore(result.from()) && !entry.on().isAfter(result.to())).toList();
            double read = sum(within.stream().map(Entry::usv).toList());
            boolean holds = rows.subList(i + 1, rows.size()).stream().noneMatch(later -> later.result().samePeriod(result));
            all.add(new Result(row.number(), result.from(), result.to(), result.usv(), result.source(), row.notedAt(), row.notedBy(), holds, within.size(), read,
                read > 0 ? Optional.of(result.usv() / read) : Optional.empty()));
        }
        return List.copyOf(all);
    }

    /** Also of a campaign that was removed. */
    private PersonRecord record(long campaign, String worker) {
        List<Line> lines = new ArrayList<>();
        for (int offset = 0, got = PAGE; got == PAGE; offset += PAGE) {
            List<Kept> page = entries.page(campaign, kept -> kept.entry().worker().equals(worker), offset, PAGE).rows();
            got = page.size();
            Function<String, Optional<String>> replacedBy = entries.replacedBy(campaign);
            page.forEach(kept -> lines.add(new Line(kept.entry(), kept.receivedAt(), kept.enteredBy(), replacedBy.apply(kept.entry().id()))));
        }
        Collections.reverse(lines);
        List<Result> found = results(campaign, worker);
        if (lines.isEmpty() && found.isEmpty() && plans.campaigns().get(campaign).find("workers", worker).isEmpty()) {
            throw new Refused(404, "The campaign has no such person.");
        }
        List<Entry> holding = lines.stream().filter(line -> line.replacedBy().isEmpty() && !line.entry().takesBack()).map(Line::entry).toList();
        return new PersonRecord(campaign, worker, EntryRoutes.now(), holding.size(), sum(holding.stream().map(Entry::hours).toList()),
            sum(holding.stream().map(Entry::usv).toList()), List.copyOf(lines), found);
    }

    private static double sum(List<Double> values) {
        Sum sum = new Sum();
        values.forEach(sum::add);
        return sum.value();
    }

    private static String csv(PersonRecord record) {
        StringBuilder text = new StringBuilder();
        line(text, "what", "id", "worker", "task", "from", "to", "area", "hours", "usv", "step", "usv_per_h_found", "remark_or_source", "made_at", "received_at", "entered_by",
            "replaces", "replaced_by", "holds", "sum_of_readings_usv", "ratio");
        for (Line each : record.entries()) {
            Entry entry = each.entry();
            line(text, "entry", entry.id(), entry.worker(), entry.task(), entry.on(), entry.on(), entry.area(), entry.hours(), entry.usv(), entry.step().orElse(""),
                entry.foundUsvPerH().map(String::valueOf).orElse(""), entry.remark(), entry.madeAt(), each.receivedAt(), each.enteredBy(), entry.replaces().orElse(""),
                each.replacedBy().orElse(""), each.replacedBy().isEmpty() && !entry.takesBack(), "", "");
        }
        for (Result each : record.periodResults()) {
            line(text, "period-result", each.number(), record.worker(), "", each.from(), each.to(), "", "", each.usv(), "", "", each.source(), "", each.notedAt(), each.notedBy(),
                "", "", each.holds(), each.readUsv(), each.ratio().map(String::valueOf).orElse(""));
        }
        return text.toString();
    }

    /** RFC 4180; a cell that a spreadsheet would take for a formula begins with an apostrophe. */
    private static void line(StringBuilder text, Object... cells) {
        String between = "";
        for (Object cell : cells) {
            String plain = cell.toString();
            String harmless = !plain.isEmpty() && "=+-@\t\r".indexOf(plain.charAt(0)) >= 0 ? "'" + plain : plain;
            text.append(between).append(harmless.matches("(?s).*[\",\r\n].*") ? "\"" + harmless.replace("\"", "\"\"") + "\"" : harmless);
            between = ",";
        }
        text.append("\r\n");
    }
}
