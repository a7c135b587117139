package kerfbook.http;

import io.javalin.http.Context;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.util.Locale;
import kerfbook.document.Json;

/** What a request brings: read in full, or refused as too large before it is. */
final class Body {
    private static final String TOO_LARGE = "At most " + Json.LARGEST + " bytes are read.";

    private static final long MOST_LET_IN = 4L * Json.LARGEST;
    /** What has not come in after this, and this many bytes in each second more, comes too slowly. A busy server does not count against the sender. */
    private static final long PATIENCE_NS = 10_000_000_000L;
    private static final long SLOWEST_BYTES_PER_S = 256;

    private Body() { }

    static byte[] of(Context ctx) {
        if (!isJson(ctx.header("Content-Type"))) {
            throw new Refused(415, "Send JSON with the header Content-Type: application/json.");
        }
        if (ctx.header("Content-Encoding") != null) {
            throw new Refused(415, "Send the JSON as it is, without Content-Encoding.");
        }
        try {
            byte[] body = ctx.req().getContentLengthLong() > Json.LARGEST ? null : arriving(ctx.req().getInputStream());
            if (body == null || body.length > Json.LARGEST) {
                leaveOnTheFloor(ctx);
                throw new Refused(413, TOO_LARGE);
            }
            return body;
        } catch (IOException e) {                   // also where nothing came for as long as the connection waits
            throw new Refused(408, "The request did not arrive in full.");
        }
    }

    /** At most a byte more than is taken. */
    private static byte[] arriving(InputStream in) throws IOException {
        ByteArrayOutputStream body = new ByteArrayOutputStream();
        read(in, Json.LARGEST + 1, body);
        return body.toByteArray();
    }

    private static void read(InputStream in, long most, OutputStream to) throws IOException {
        byte[] piece = new byte[8_192];
        long start = System.nanoTime();
        long read = 0;
        while (read < most) {
            int got = in.read(piece, 0, (int) Math.min(piece.length, most - read));      // what is there already, else it waits
            if (got < 0) {
                return;
            }
            to.write(piece, 0, got);
            read += got;
            if (System.nanoTime() - start > PATIENCE_NS + read * 1_000_000_000L / SLOWEST_BYTES_PER_S) {
                throw new IOException("too slow");
            }
        }
    }

    /** Most senders look at the answer only when they have sent everything: what is not far too large is let in, and kept nowhere. */
    private static void leaveOnTheFloor(Context ctx) throws IOException {
        if (ctx.req().getContentLengthLong() <= MOST_LET_IN) {
            read(ctx.req().getInputStream(), MOST_LET_IN, OutputStream.nullOutputStream());
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
