package kerfbook.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.ArrayList;
import java.util.List;

/** Where addresses meet handlers. What answers GET answers HEAD too, with the same headers. */
final class Routes {
    private final RoutesConfig javalin;
    private final Gate gate;
    private final List<String> known = new ArrayList<>();

    Routes(RoutesConfig javalin, Gate gate) {
        this.javalin = javalin;
        this.gate = gate;
    }

    void get(String path, Handler handler) {
        Handler guarded = guarded("GET " + path, handler);
        javalin.get(path, guarded).head(path, guarded);
    }

    void post(String path, Handler handler) {
        javalin.post(path, guarded("POST " + path, handler));
    }

    void put(String path, Handler handler) {
        javalin.put(path, guarded("PUT " + path, handler));
    }

    void delete(String path, Handler handler) {
        javalin.delete(path, guarded("DELETE " + path, handler));
    }

    /** Nothing is reached but through the gate. */
    private Handler guarded(String route, Handler handler) {
        known.add(route);
        return ctx -> {
            gate.check(route, ctx);
            handler.handle(ctx);
        };
    }

    /** Method and address of each, HEAD left out. */
    List<String> known() {
        return List.copyOf(known);
    }

    /** The methods that are taken at this address; the wildcard of the pages does not count. */
    List<String> methods(String address) {
        List<String> methods = new ArrayList<>();
        for (String route : known) {
            String path = route.substring(route.indexOf(' ') + 1);
            if (!path.contains("<") && address.matches(path.replaceAll("\\{[a-z]+}", "[^/]+"))) {
                methods.add(route.substring(0, route.indexOf(' ')));
            }
        }
        return methods;
    }

    /** Answers with what this caller may see of it. */
    static void json(Context ctx, byte[] json) {
        ctx.contentType("application/json").result(Privacy.masked(Caller.of(ctx), json));
    }

    /** Answers where nobody in particular is asking. */
    static void open(Context ctx, byte[] json) {
        ctx.contentType("application/json").result(json);
    }
}
