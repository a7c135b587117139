package kerfbook.http;

import io.javalin.http.Context;
import io.javalin.router.Endpoint;
import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.FunctionTimer;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.Timer;
import io.micrometer.core.instrument.binder.jvm.JvmGcMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.TimeUnit;
import java.util.function.Function;
import java.util.function.ToLongFunction;
import java.util.stream.Stream;
import kerfbook.account.Role;
import kerfbook.store.Counts;
import kerfbook.store.Database;

/** What the server says of its own work: to the request log, and as text in the Prometheus format at {@code /api/metrics}. */
final class Watched implements AutoCloseable {
    private static final Set<String> METHODS = Set.of("GET", "HEAD", "POST", "PUT", "DELETE", "OPTIONS", "PATCH");
    private static final Duration[] STEPS = {Duration.ofMillis(5), Duration.ofMillis(10), Duration.ofMillis(25), Duration.ofMillis(50),
        Duration.ofMillis(100), Duration.ofMillis(250), Duration.ofMillis(500), Duration.ofSeconds(1), Duration.ofMillis(2_500), Duration.ofSeconds(5),
        Duration.ofSeconds(10)};
    private static final List<String> RUNS = List.of("started", "finished", "cancelled", "failed", "stopped");
    private static final String TEXT = "text/plain; version=0.0.4; charset=utf-8";

    private final PrometheusMeterRegistry registry = new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    private final JvmGcMetrics collections = new JvmGcMetrics();
    private final Optional<RequestLog> log;

    /** @param log the file of the request log, if there is to be one */
    Watched(Database database, Optional<Path> log) {
        this.log = log.map(RequestLog::to);
        waits("read", database, Database::reads);
        waits("write", database, Database::writes);
        RUNS.forEach(this::runs);
        Counts counts = new Counts(database);
        for (String table : Counts.TABLES) {
            Gauge.builder("kerfbook.stored", () -> counts.of(table)).tag("what", table).description("Rows kept").register(registry);
        }
        new JvmMemoryMetrics().bindTo(registry);
        new JvmThreadMetrics().bindTo(registry);
        new ProcessorMetrics().bindTo(registry);
        new UptimeMetrics().bindTo(registry);
        collections.bindTo(registry);
    }

    private void waits(String what, Database database, Function<Database, Database.Waits> waits) {
        ToLongFunction<Database> count = asked -> waits.apply(asked).count();
        FunctionTimer.builder("kerfbook.database.wait", database, count, asked -> waits.apply(asked).nanoseconds(), TimeUnit.NANOSECONDS)
            .tag("kind", what).description("What callers waited for the database").register(registry);
    }

    private Counter runs(String what) {
        return Counter.builder("kerfbook.runs").tag("what", what).description("Runs that started and how they ended").register(registry);
    }

    /** A run has started or ended. */
    void ran(String what) {
        runs(what).increment();
    }

    void on(Routes routes, Gate gate) {
        routes.get("/api/metrics", ctx -> say(ctx, gate));
    }

    /** After each request. */
    void note(Context ctx, float ms) {
        String route = route(ctx);
        Timer.builder("kerfbook.http.requests").tag("method", method(ctx)).tag("route", route).tag("status", Integer.toString(ctx.statusCode()))
            .serviceLevelObjectives(STEPS).description("Requests and how long they took").register(registry)
            .record((long) (ms * 1e6), TimeUnit.NANOSECONDS);
        log.ifPresent(lines -> lines.add(ctx, route, ms));
    }

    /** The pattern that was registered, never the address as it was asked: that may name a person. */
    private static String route(Context ctx) {
        Endpoint matched = ctx.endpoints().matchedHttpEndpoint();
        return matched == null ? "none" : matched.path.startsWith("/api") ? matched.path : "pages";
    }

    static String method(Context ctx) {
        String method = ctx.req().getMethod();
        return METHODS.contains(method) ? method : "other";
    }

    private void say(Context ctx, Gate gate) {
        Address.plain(ctx);
        if (!fromHere(ctx) && gate.holder(ctx).filter(holder -> holder.role() == Role.ADMINISTRATOR).isEmpty()) {
            throw new Refused(403, "Figures of the server are for this computer itself and for administrators.");
        }
        ctx.contentType(TEXT).result(registry.scrape(TEXT));
    }

    /** From a program on this computer, and not handed on for somebody else. */
    private static boolean fromHere(Context ctx) {
        return Access.loopback(ctx.req().getRemoteAddr().replace("0:0:0:0:0:0:0:1", "::1"))
            && Stream.of("X-Forwarded-For", "Forwarded").allMatch(header -> ctx.header(header) == null);
    }

    @Override
    public void close() {
        collections.close();
        registry.close();
        log.ifPresent(RequestLog::close);
    }
}
