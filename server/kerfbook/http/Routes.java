package kerfbook.http;

import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.ArrayList;
import java.util.List;

/** Where addresses meet handlers. What answers GET answers HEAD too, with the same headers. */
final class Routes {
    private final RoutesConfig javalin;
    private final List<String> known = new ArrayList<>();

    Routes(RoutesConfig javalin) {
        this.javalin = javalin;
    }

    void get(String path, Handler handler) {
        javalin.get(path, handler).head(path, handler);
        known.add("GET " + path);
    }

    void post(String path, Handler handler) {
        javalin.post(path, handler);
        known.add("POST " + path);
    }

    void put(String path, Handler handler) {
        javalin.put(path, handler);
        known.add("PUT " + path);
    }

    void delete(String path, Handler handler) {
        javalin.delete(path, handler);
        known.add("DELETE " + path);
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

    static void json(Context ctx, byte[] json) {
        ctx.contentType("application/json").result(json);
    }
}
