package kerfbook.http;

import io.javalin.http.Context;
import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.UUID;
import kerfbook.document.Json;
import kerfbook.logbook.Beside;
import kerfbook.logbook.Entry;
import kerfbook.logbook.EntryCheck;
import kerfbook.logbook.LogPlan;
import kerfbook.logbook.Need;
import kerfbook.logbook.Reading;
import kerfbook.logbook.ReadingCheck;
import kerfbook.logbook.ReadingCheck.Checked;
import kerfbook.logbook.Readings;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Invalid.Fault;
import kerfbook.quantity.Require;
import kerfbook.store.Accounts;
import kerfbook.store.Entries;

/** Readings of electronic dosimeters from a table: first shown as what they are read, then taken, all that were confirmed or none. */
final class ReadingRoutes {
    /** Most readings that are taken at once, as many as a table may hold. */
    private static final int MOST = 5_000;

    private record Question(List<String> lines) {
        Question {
            lines = Require.list(lines, "lines");
        }
    }

    /**
     * @param state new, asks, kept, repeated or refused
     * @param text  the line as it came, shortened, where it could not be read
     * @param same  line before it that says the same
     */
    private record Row(int line, String state, Optional<Reading> reading, Optional<String> text, Optional<Integer> same, List<Fault> errors, List<Need> needs) { }

    private record Preview(List<Row> rows, List<String> ignored, Map<String, Integer> counts) { }

    /** @param confirmed checks that asked and were answered with yes */
    private record Taking(String worker, String task, LocalDate on, String area, double hours, double usv, String remark, List<String> confirmed) { }

    private record Import(List<Taking> rows) {
        Import {
            rows = Require.atLeastOne(rows, "rows");
            if (rows.size() > MOST) {
                throw new Invalid("rows", "are " + rows.size() + "; at most " + MOST + " are taken at once. Bring them in in parts.");
            }
        }
    }

    private record Taken(int kept, int before) { }

    private final LogPlans plans;
    private final Entries entries;
    private final Today today;
    private final Accounts accounts;

    private ReadingRoutes(LogPlans plans, Entries entries, Today today, Accounts accounts) {
        this.accounts = accounts;
        this.plans = plans;
        this.entries = entries;
        this.today = today;
    }

    static void on(Routes routes, LogPlans plans, Entries entries, Today today, Accounts accounts) {
        ReadingRoutes here = new ReadingRoutes(plans, entries, today, accounts);
        routes.post("/api/campaigns/{id}/entries/preview", here::preview);
        routes.post("/api/campaigns/{id}/entries/import", here::take);
    }

    private void preview(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        String text = String.join("\n", Json.read(Body.of(ctx), Question.class).lines());
        LogPlan plan = plans.of(campaign);
        Readings readings = Readings.of(text, plan);
        List<Entry> once = readings.rows().stream().filter(row -> row.same().isEmpty()).flatMap(row -> row.reading().stream())
            .map(reading -> reading.entry(id(reading), List.of())).toList();
        once.forEach(entry -> Privacy.requireMayEnter(Caller.of(ctx), entry.worker(), accounts));        // whether a reading is kept tells of it
        Map<String, Checked> checked = new HashMap<>();
        ReadingCheck.of(plan, once, entries.besides(campaign, once), today.moment(campaign, EntryRoutes.now())).forEach(each -> checked.put(each.id(), each));
        List<Row> rows = readings.rows().stream().map(row -> row(row, checked)).toList();
        Map<String, Integer> counts = new HashMap<>(Map.of("new", 0, "asks", 0, "kept", 0, "repeated", 0, "refused", 0));
        rows.forEach(row -> counts.merge(row.state(), 1, Integer::sum));
        Routes.json(ctx, Json.bytes(new Preview(rows, readings.ignored(), new TreeMap<>(counts))));
    }

    private static Row row(Readings.Row row, Map<String, Checked> checked) {
        if (row.reading().isEmpty()) {
            return new Row(row.line(), "refused", Optional.empty(), Optional.of(row.text()), Optional.empty(), row.faults(), List.of());
        }
        if (row.same().isPresent()) {
            return new Row(row.line(), "repeated", row.reading(), Optional.empty(), row.same(), List.of(), List.of());
        }
        Checked found = checked.get(id(row.reading().get()));
        String state = found.kept() ? "kept" : !found.faults().isEmpty() ? "refused" : found.needs().isEmpty() ? "new" : "asks";
        return new Row(row.line(), state, row.reading(), Optional.empty(), Optional.empty(), found.faults(), found.needs());
    }

    private void take(Context ctx) {
        Address.plain(ctx);
        long campaign = Address.id(ctx);
        List<Taking> rows = Json.read(Body.of(ctx), Import.class).rows();
        LogPlan plan = plans.of(campaign);
        Instant now = EntryRoutes.now();
        Instant moment = today.moment(campaign, now);
        Map<Entry, Integer> places = new HashMap<>();
        List<Entry> all = new ArrayList<>();
        for (int i = 0; i < rows.size(); i++) {
            Entry entry = entry(rows.get(i), i);
            Privacy.requireMayEnter(Caller.of(ctx), entry.worker(), accounts);
            if (places.putIfAbsent(entry, i) == null) {
                all.add(entry);
            }
        }
        int fresh = entries.putAll(campaign, all, EntryRoutes.sender(Caller.of(ctx), now),
            (entry, beside) -> at(places.get(entry), () -> check(plan, entry, beside, moment)));
        ctx.status(fresh > 0 ? 201 : 200);
        Routes.json(ctx, Json.bytes(new Taken(fresh, rows.size() - fresh)));
    }

    private static Entry entry(Taking row, int i) {
        Entry[] read = new Entry[1];
        at(i, () -> {
            Require.list(row.confirmed(), "confirmed");
            Reading reading = new Reading(row.worker(), row.task(), Require.day(row.on(), "on"), row.area(), row.hours() + 0.0, row.usv() + 0.0, row.remark());
            read[0] = reading.entry(id(reading), row.confirmed());
        });
        return read[0];
    }

    private static void check(LogPlan plan, Entry entry, Beside beside, Instant moment) {
        EntryCheck.refuse(plan, entry, beside, moment, false);
        List<Need> needs = ReadingCheck.ask(plan, entry, beside, moment);
        if (!needs.isEmpty()) {
            throw new Invalid(needs.stream().map(need -> new Fault("confirmed", "lacks \"" + need.check() + "\". " + need.words())).toList());
        }
    }

    /** Says of a refusal in which row it was. */
    private static void at(int row, Runnable work) {
        try {
            work.run();
        } catch (Invalid invalid) {
            throw new Invalid(invalid.faults().stream().map(fault -> new Fault("rows[" + row + "]." + fault.field(), fault.detail())).toList());
        }
    }

    /** A UUID of version 8 (RFC 9562) from SHA-256 of what the reading says, each part with its length: the same reading, the same id. */
    private static String id(Reading reading) {
        StringBuilder text = new StringBuilder();
        for (String part : List.of(reading.worker(), reading.task(), reading.on().toString(), reading.area(), Double.toString(reading.hours()),
                Double.toString(reading.usv()), reading.remark())) {
            text.append(part.length()).append(':').append(part);
        }
        try {
            byte[] hash = MessageDigest.getInstance("SHA-256").digest(text.toString().getBytes(StandardCharsets.UTF_8));
            ByteBuffer bytes = ByteBuffer.wrap(hash);
            return new UUID(bytes.getLong() & ~0xF000L | 0x8000L, bytes.getLong() & 0x3FFF_FFFF_FFFF_FFFFL | 0x8000_0000_0000_0000L).toString();
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException(e);     // every Java has it
        }
    }
}
