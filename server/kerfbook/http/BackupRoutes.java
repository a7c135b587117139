package kerfbook.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import kerfbook.store.Backups;
import kerfbook.store.Database;

/** A copy of everything, made while the service runs. It goes to whoever asks and stays nowhere on the server. */
final class BackupRoutes {
    private final Database database;

    private BackupRoutes(Database database) {
        this.database = database;
    }

    static void on(Routes routes, Database database) {
        routes.post("/api/backup", new BackupRoutes(database)::make);
    }

    private void make(Context ctx) throws IOException {
        Address.plain(ctx);
        Path folder = database.folder().orElseThrow(() -> new Refused(409, "This database is in memory only: there is nothing to back up."));
        Path file = Backups.makeFor(Caller.of(ctx).signature(), database, folder);
        ctx.header("Content-Disposition", "attachment; filename=\"kerfbook-backup.zip\"").header("Content-Length", Long.toString(Files.size(file)));
        ctx.contentType("application/zip").result(Files.newInputStream(file, StandardOpenOption.DELETE_ON_CLOSE));
    }
}
