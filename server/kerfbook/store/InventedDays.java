package kerfbook.store;

import java.time.LocalDate;
import java.util.Optional;

/** The days as which invented campaigns are shown, where their logs were written in advance. */
public final class InventedDays {
    private static final int AT_HAND = 100;

    private final Database database;
    private final Remembered<Long, Optional<LocalDate>> found;

    public InventedDays(Database database) {
        this.database = database;
        this.found = new Remembered<>(database, AT_HAND);
    }

    /** Empty for every real campaign: the clock tells it the day. */
    public Optional<LocalDate> of(long campaign) {
        return found.get(campaign, () -> database.read(handle -> handle.createQuery("SELECT as_of FROM invented_day WHERE campaign_id = :campaign")
            .bind("campaign", campaign).map((row, context) -> row.getObject("as_of", LocalDate.class)).findOne()));
    }

    /** Once for each campaign, and only for one that is marked as an example. */
    public void set(long campaign, LocalDate asOf) {
        database.write(handle -> {
            int rows = handle.createUpdate("""
                    INSERT INTO invented_day (campaign_id, as_of) SELECT id, :asOf FROM campaign WHERE id = :campaign AND demo = TRUE""")
                .bind("asOf", asOf).bind("campaign", campaign).execute();
            if (rows != 1) {
                throw new IllegalStateException("only a campaign that is marked as an example has a day of its own");
            }
            return rows;
        });
    }
}
