package kerfbook.http;

import io.javalin.http.Context;
import java.util.concurrent.ThreadLocalRandom;

/** Each request has a number of its own, told in its answer and in the request log. */
final class RequestNumber {
    static final String HEADER = "Request-Id";

    private RequestNumber() { }

    static void give(Context ctx) {
        ctx.header(HEADER, String.format("%016x", ThreadLocalRandom.current().nextLong()));
    }
}
