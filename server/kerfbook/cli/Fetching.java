package kerfbook.cli;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Duration;
import java.util.Optional;
import kerfbook.quantity.Invalid;

/** Asks the running service on this computer for a backup. */
final class Fetching {
    private static final Duration LONGEST = Duration.ofMinutes(15);
    private static final int OK = 200;

    private Fetching() { }

    /** @param into an empty file that is there already, for its owner only */
    static void backup(int port, Optional<String> token, Path into) {
        HttpRequest.Builder request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + port + "/api/backup")).timeout(LONGEST)
            .POST(HttpRequest.BodyPublishers.noBody());
        token.ifPresent(given -> request.header("Authorization", "Bearer " + given));
        try {
            HttpResponse<Path> answer = HttpClient.newHttpClient().send(request.build(), said -> said.statusCode() == OK
                ? BodyHandlers.ofFile(into, StandardOpenOption.WRITE, StandardOpenOption.TRUNCATE_EXISTING).apply(said)
                : HttpResponse.BodySubscribers.replacing(into));
            if (answer.statusCode() != OK) {
                throw new Unable("The service at port " + port + " refused (" + answer.statusCode() + "). "
                    + (answer.statusCode() == 401 || answer.statusCode() == 403 ? "Put an administrator's access token into KERFBOOK_TOKEN." : "See its log."));
            }
        } catch (IOException e) {
            throw new Unable("No service answers at port " + port + " of this computer. Name its port, or with --data the folder of a stopped one.");
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new Invalid("", "The backup was broken off.");
        }
    }
}
