package kerfbook.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.Locale;
import kerfbook.document.Json;
import org.eclipse.jetty.http.BadMessageException;

/** What a request brings: read in full, or refused as too large before it is. */
final class Body {
    private static final String TOO_LARGE = "At most " + Json.LARGEST + " bytes are read.";

    private static final long MOST_LET_IN = 4L * Json.LARGEST;

    private Body() { }

    static byte[] of(Context ctx) {
        if (!isJson(ctx.header("Content-Type"))) {
            throw new Refused(415, "Send JSON with the header Content-Type: application/json.");
        }
        if (ctx.header("Content-Encoding") != null) {
            throw new Refused(415, "Send the JSON as it is, without Content-Encoding.");
        }
        try {
            byte[] body = ctx.req().getContentLengthLong() > Json.LARGEST ? null : ctx.req().getInputStream().readNBytes(Json.LARGEST + 1);
            if (body == null || body.length > Json.LARGEST) {
                leaveOnTheFloor(ctx);
                throw new Refused(413, TOO_LARGE);
            }
            return body;
        } catch (IOException | BadMessageException e) {       // the second where it trickles in
            throw new Refused(408, "The request did not arrive in full.");
        }
    }

    /** Most senders look at the answer only when they have sent everything: what is not far too large is let in, and kept nowhere. */
    private static void leaveOnTheFloor(Context ctx) throws IOException {
        if (ctx.req().getContentLengthLong() <= MOST_LET_IN) {
            ctx.req().getInputStream().skip(MOST_LET_IN);
        }
    }

    /** Only {@code application/json}, which no page of another origin can send without asking first. */
    private static boolean isJson(String contentType) {
        if (contentType == null) {
            return false;
        }
        String[] parts = contentType.toLowerCase(Locale.ROOT).split(";");
        return parts[0].strip().equals("application/json")
            && (parts.length == 1 || parts.length == 2 && parts[1].strip().replace("\"", "").equals("charset=utf-8"));
    }
}
