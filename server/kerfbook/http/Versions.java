package kerfbook.http;

import io.javalin.http.Context;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import kerfbook.quantity.Invalid.Fault;

/** Versions in headers: {@code ETag: "7"}, {@code If-Match: "7"}. */
final class Versions {
    private static final Pattern ONE = Pattern.compile("\"([0-9]{1,18})\"");

    private Versions() { }

    static String etag(long version) {
        return "\"" + version + "\"";
    }

    /** The version that the caller has seen. */
    static long seen(Context ctx) {
        String header = ctx.header("If-Match");
        if (header == null) {
            throw new Refused(428, "Send the ETag that you have seen in an If-Match header, so that nobody's change is overwritten.");
        }
        Matcher one = ONE.matcher(header.strip());
        if (!one.matches()) {
            throw new Refused(Problem.of(400, "If-Match must be one ETag as it was sent, like \"7\".",
                List.of(new Fault("If-Match", "must be one ETag as it was sent, like \"7\"."))));
        }
        return Long.parseLong(one.group(1));
    }

    /** Answers 304 and says so if the caller already has what this ETag stands for. */
    static boolean unchanged(Context ctx, String etag) {
        ctx.header("ETag", etag);
        String header = ctx.header("If-None-Match");
        if (header == null) {
            return false;
        }
        for (String tag : header.split(",")) {
            String given = tag.strip();
            if (given.equals("*") || given.equals(etag) || given.equals("W/" + etag)) {
                ctx.status(304);
                return true;
            }
        }
        return false;
    }
}
