package kerfbook.http;

import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.eclipse.jetty.util.Callback;

/** Requests that fail before they reach a route, such as an address that cannot be read, get the same shape and no details. */
final class BareErrors implements Request.Handler {
    @Override
    public boolean handle(Request request, Response response, Callback callback) {
        int status = response.getStatus() < 400 ? 400 : response.getStatus();
        response.setStatus(status);
        response.getHeaders().put(HttpHeader.CONTENT_TYPE, "application/problem+json");
        response.getHeaders().put("X-Content-Type-Options", "nosniff");
        response.getHeaders().put(HttpHeader.CACHE_CONTROL, "no-store");
        response.write(true, ByteBuffer.wrap(Problem.of(status, "The request cannot be read.").json()), callback);
        return true;
    }
}
