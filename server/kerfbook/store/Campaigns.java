package kerfbook.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Function;
import java.util.regex.Matcher;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.ChangeNote.What;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** The stored campaigns. Every call ends within about ten seconds; a write that returns is on the disk. */
public final class Campaigns {
    /** Who does it where nobody has signed in: the command line, the start of the server. */
    public static final String HERE = "this computer";
    private static final int LONGEST_PAGE = 1_000;
    private static final int AT_HAND = 4;

    private final Database database;
    private final Clock clock;
    private final Remembered<Long, Optional<Stored>> found;

    public Campaigns(Database database) {
        this(database, Clock.systemUTC());
    }

    Campaigns(Database database, Clock clock) {
        this.database = database;
        this.clock = clock;
        this.found = new Remembered<>(database, AT_HAND);
    }

    /** Stores a new campaign at version 1, its items in the order given. */
    public Stored add(String name, String headerJson, List<NewItem> items, String who) {
        return add(name, false, headerJson, items, who);
    }

    public Stored add(String name, String headerJson, List<NewItem> items) {
        return add(name, headerJson, items, HERE);
    }

    /** Like {@link #add}, marked as an example. */
    public Stored addDemo(String name, String headerJson, List<NewItem> items, String who) {
        return add(name, true, headerJson, items, who);
    }

    public Stored addDemo(String name, String headerJson, List<NewItem> items) {
        return addDemo(name, headerJson, items, HERE);
    }

    private Stored add(String name, boolean demo, String headerJson, List<NewItem> items, String who) {
        Require.name(name, "name");
        NewItem.body(headerJson, "header");
        List<NewItem> all = distinct(Require.list(items, "items"));
        return database.write(handle -> {
            Instant now = now();
            long id = handle.createUpdate("""
                    INSERT INTO campaign (name, demo, version, created_at, changed_at) VALUES (:name, :demo, 1, :now, :now)""")
                .bind("name", name).bind("demo", demo).bind("now", now)
                .executeAndReturnGeneratedKeys("id").mapTo(Long.class).one();
            Parts.addAll(handle, id, headerJson, all);
            Parts.note(handle, new ChangeNote(id, 1, now, Parts.HEADER, "", What.ADDED, Optional.empty(), Optional.of(headerJson)));
            CampaignTrail.added(handle, now, who, id, headerJson, all);
            return read(handle, id).orElseThrow();
        });
    }

    public Optional<Stored> find(long id) {
        return found.get(id, () -> database.read(handle -> read(handle, id)));
    }

    /** @throws NoSuchCampaign if there is none with this number */
    public Stored get(long id) {
        return find(id).orElseThrow(() -> new NoSuchCampaign(id));
    }

    /** The campaigns, last changed first. */
    public Page<Summary> list(int offset, int limit) {
        checkPage(offset, limit);
        return database.read(handle -> {
            long total = handle.createQuery("SELECT COUNT(*) FROM campaign").mapTo(Long.class).one();
            List<Summary> rows = handle.createQuery("""
                    SELECT id, name, demo, version, created_at, changed_at FROM campaign
                    ORDER BY changed_at DESC, id DESC OFFSET :offset ROWS FETCH FIRST :limit ROWS ONLY""")
                .bind("offset", offset).bind("limit", limit).map(Campaigns::summary).list();
            return new Page<>(rows, offset, total);
        });
    }

    /**
     * Removes a campaign. Its parts stay readable in {@link #changes}.
     *
     * @throws NoSuchCampaign if there is none with this number
     * @throws Stale          if it is at another version than expected
     */
    public void remove(long id, long expectedVersion, String who) {
        database.write(handle -> {
            Stored current = lock(handle, id);
            expect("campaign", expectedVersion, current.version(), current.headerJson());
            Instant now = now();
            Parts.removeAll(handle, id, current.version() + 1, now);
            CampaignTrail.removed(handle, now, who, current);
            return handle.createUpdate("DELETE FROM campaign WHERE id = :id").bind("id", id).execute();
        });
    }

    public void remove(long id, long expectedVersion) {
        remove(id, expectedVersion, HERE);
    }

    /**
     * Changes one thing in a campaign that nobody else can change meanwhile.
     *
     * @param who    who asks for it, for the trail
     * @param decide sees what is stored and says what to change, or throws and so changes nothing. It may be called more
     *               than once and must not call the store.
     * @return the campaign after the edit
     * @throws NoSuchCampaign if there is none with this number
     * @throws NoSuchItem     if the item to replace or remove is not there
     * @throws CodeTaken      if the item to add is already there
     * @throws Stale          if the edit was made from another version
     */
    public Stored edit(long id, String who, Function<Stored, Edit> decide) {
        return database.write(handle -> {
            Stored current = lock(handle, id);
            Edit edit = Objects.requireNonNull(decide.apply(current), "edit");
            Instant now = now();
            long version = current.version() + 1;
            note(handle, apply(handle, current, edit, version, now), who);
            String name = edit instanceof Edit.PutHeader put ? put.name() : current.name();
            raise(handle, id, name, version, now);
            return read(handle, id).orElseThrow();
        });
    }

    public Stored edit(long id, Function<Stored, Edit> decide) {
        return edit(id, HERE, decide);
    }

    /**
     * Changes several things in a campaign at once: all of them, at one new version and with a change note each, or none.
     *
     * @param expectedVersion version of the campaign that the edits were made from
     * @param decide          as in {@link #edit}; its edits must be of different things, and at least one
     * @return the campaign after the edits
     * @throws Stale if the campaign is at another version, or an edit was made from another version of its thing
     */
    public Stored editAll(long id, long expectedVersion, String who, Function<Stored, List<Edit>> decide) {
        return editAll(id, expectedVersion, who, decide, (handle, version) -> { });
    }

    /** @param with what is written in the same transaction, knowing the campaign's new version */
    Stored editAll(long id, long expectedVersion, String who, Function<Stored, List<Edit>> decide, BiConsumer<Handle, Long> with) {
        return database.write(handle -> {
            Stored current = lock(handle, id);
            expect("campaign", expectedVersion, current.version(), current.headerJson());
            List<Edit> edits = different(Require.atLeastOne(decide.apply(current), "edits"));
            Instant now = now();
            long version = current.version() + 1;
            String name = current.name();
            for (Edit edit : edits) {
                note(handle, apply(handle, current, edit, version, now), who);
                name = edit instanceof Edit.PutHeader put ? put.name() : name;
            }
            raise(handle, id, name, version, now);
            with.accept(handle, version);
            return read(handle, id).orElseThrow();
        });
    }

    public Stored editAll(long id, long expectedVersion, Function<Stored, List<Edit>> decide) {
        return editAll(id, expectedVersion, HERE, decide);
    }

    private static void note(Handle handle, ChangeNote note, String who) {
        Parts.note(handle, note);
        CampaignTrail.edited(handle, who, note);
    }

    private static void raise(Handle handle, long id, String name, long version, Instant now) {
        handle.createUpdate("UPDATE campaign SET name = :name, version = :version, changed_at = :now WHERE id = :id")
            .bind("name", name).bind("version", version).bind("now", now).bind("id", id).execute();
    }

    private static List<Edit> different(List<Edit> edits) {
        Set<List<String>> seen = new HashSet<>();
        for (int i = 0; i < edits.size(); i++) {
            if (!seen.add(edits.get(i).thing())) {
                throw new Invalid("edits[" + i + "]", "is of " + String.join(" ", edits.get(i).thing()) + ", which another edit changes too.");
            }
        }
        return edits;
    }

    /** What was changed, last first; also for a campaign that was removed. */
    public Page<ChangeNote> changes(long id, int offset, int limit) {
        checkPage(offset, limit);
        return database.read(handle -> Parts.notes(handle, id, offset, limit));
    }

    /** The change that a row of the trail tells of; empty for a whole campaign that came or went. */
    public Optional<ChangeNote> change(TrailRow row) {
        Matcher told = CampaignTrail.EDIT.matcher(row.json());
        return !told.lookingAt() || row.campaign().isEmpty() ? Optional.empty()
            : database.read(handle -> Parts.note(handle, row.campaign().getAsLong(), Long.parseLong(told.group(1)), told.group(2), told.group(3)));
    }

    private static ChangeNote apply(Handle handle, Stored current, Edit edit, long version, Instant now) {
        long id = current.id();
        if (edit instanceof Edit.PutHeader put) {
            expect("header", put.expectedVersion(), current.headerVersion(), current.headerJson());
            Parts.put(handle, id, Parts.HEADER, "", put.json(), version);
            return new ChangeNote(id, version, now, Parts.HEADER, "", What.CHANGED,
                Optional.of(current.headerJson()), Optional.of(put.json()));
        }
        if (edit instanceof Edit.AddItem add) {
            NewItem item = add.item();
            if (current.find(item.kind(), item.code()).isPresent()) {
                throw new CodeTaken(item.kind(), item.code());
            }
            Parts.addLast(handle, id, item, version);
            return new ChangeNote(id, version, now, item.kind(), item.code(), What.ADDED, Optional.empty(), Optional.of(item.json()));
        }
        if (edit instanceof Edit.PutItem put) {
            NewItem item = put.item();
            Item old = item(current, item.kind(), item.code(), put.expectedVersion());
            Parts.put(handle, id, item.kind(), item.code(), item.json(), version);
            return new ChangeNote(id, version, now, item.kind(), item.code(), What.CHANGED, Optional.of(old.json()), Optional.of(item.json()));
        }
        Edit.RemoveItem gone = (Edit.RemoveItem) edit;
        Item old = item(current, gone.kind(), gone.code(), gone.expectedVersion());
        Parts.remove(handle, id, gone.kind(), gone.code());
        return new ChangeNote(id, version, now, gone.kind(), gone.code(), What.REMOVED, Optional.of(old.json()), Optional.empty());
    }

    private static Item item(Stored current, String kind, String code, long expectedVersion) {
        Item item = current.find(kind, code).orElseThrow(() -> new NoSuchItem(kind, code));
        expect(kind + " \"" + code + "\"", expectedVersion, item.version(), item.json());
        return item;
    }

    private static void expect(String what, long expected, long current, String json) {
        if (expected != current) {
            throw new Stale(what, expected, current, json);
        }
    }

    private static Stored lock(Handle handle, long id) {
        handle.createQuery("SELECT version FROM campaign WHERE id = :id FOR UPDATE")
            .bind("id", id).mapTo(Long.class).findOne().orElseThrow(() -> new NoSuchCampaign(id));
        return read(handle, id).orElseThrow();
    }

    /** In one statement, so that campaign and parts are of the same moment. */
    private static Optional<Stored> read(Handle handle, long id) {
        List<Part> parts = handle.createQuery("""
                SELECT c.id, c.name, c.demo, c.version, c.created_at, c.changed_at,
                       p.kind, p.code, p.version AS part_version, p.body
                FROM campaign c JOIN campaign_part p ON p.campaign_id = c.id
                WHERE c.id = :id ORDER BY p.ordinal""")
            .bind("id", id).map(Part::of).list();
        if (parts.isEmpty()) {
            return Optional.empty();
        }
        Summary campaign = parts.get(0).campaign();
        Item header = parts.get(0).item();
        List<Item> items = new ArrayList<>(parts.size());
        for (Part part : parts.subList(1, parts.size())) {
            items.add(part.item());
        }
        return Optional.of(new Stored(id, campaign.name(), campaign.demo(), campaign.version(), campaign.createdAt(),
            campaign.changedAt(), header.json(), header.version(), items));
    }

    /** One row of a campaign joined with its parts. */
    private record Part(Summary campaign, Item item) {
        static Part of(ResultSet row, StatementContext context) throws SQLException {
            return new Part(summary(row, context),
                new Item(row.getString("kind"), row.getString("code"), row.getLong("part_version"), row.getString("body")));
        }
    }

    private static Summary summary(ResultSet row, StatementContext context) throws SQLException {
        return new Summary(row.getLong("id"), row.getString("name"), row.getBoolean("demo"), row.getLong("version"),
            Pool.instant(row, "created_at"), Pool.instant(row, "changed_at"));
    }

    private static List<NewItem> distinct(List<NewItem> items) {
        Set<List<String>> seen = new HashSet<>();
        for (int i = 0; i < items.size(); i++) {
            NewItem item = items.get(i);
            if (!seen.add(List.of(item.kind(), item.code()))) {
                throw new Invalid("items[" + i + "].code", "\"" + item.code() + "\" stands twice among the items of kind "
                    + item.kind() + ". Choose another code.");
            }
        }
        return items;
    }

    private static void checkPage(int offset, int limit) {
        Require.within(offset, 0, Integer.MAX_VALUE, "offset");
        Require.within(limit, 1, LONGEST_PAGE, "limit");
    }

    /** As fine as the database keeps it, so that what is returned is what will be read. */
    private Instant now() {
        return clock.instant().truncatedTo(ChronoUnit.MICROS);
    }
}
