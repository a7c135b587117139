package kerfbook.http;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.util.JavalinBindException;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.lang.System.Logger;
import java.lang.System.Logger.Level;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.LongConsumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import kerfbook.access.Entrance;
import kerfbook.access.TooMany;
import kerfbook.cutting.Handbook;
import kerfbook.choice.RoutineLibrary;
import kerfbook.document.RoutineFiles;
import kerfbook.quantity.Invalid;
import kerfbook.quantity.Require;
import kerfbook.store.Database;
import kerfbook.store.Decisions;
import kerfbook.store.Entries;
import kerfbook.store.HandIns;
import kerfbook.store.PeriodResults;
import kerfbook.store.Retention;
import kerfbook.store.Reviews;
import kerfbook.store.Runs;
import kerfbook.tables.CuttingTables;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.SecureRequestCustomizer;
import org.eclipse.jetty.server.ServerConnector;
import org.eclipse.jetty.server.SslConnectionFactory;
import org.eclipse.jetty.util.ssl.SslContextFactory;
import org.eclipse.jetty.util.thread.QueuedThreadPool;

/** The running server. */
public final class Server implements AutoCloseable {
    private static final Logger LOG = System.getLogger("kerfbook.http");
    private static final int THREADS = 64;
    private static final int IDLE_MS = 30_000;
    private static final int STOP_MS = 5_000;
    private static final int AT_HAND = 4;
    /** How long a connection must have been quiet, ms, to be closed when the service stops. */
    private static final long QUIET_MS = 100;

    private final Javalin javalin;
    private final List<String> routes;
    private final RunQueue queue;
    private final Watched watched;

    private final Room room;

    private Server(Javalin javalin, List<String> routes, RunQueue queue, Watched watched, Room room) {
        this.room = room;
        this.javalin = javalin;
        this.watched = watched;
        this.routes = routes;
        this.queue = queue;
    }

    /**
     * Where to listen: an address, which others can reach only with a certificate, and a port (0: any free one).
     *
     * @param proxiedAs the name under which a proxy on this computer hands on what it was asked over https
     */
    public record Listening(String address, int port, Optional<Tls> tls, Optional<String> proxiedAs) {
        private static final Pattern NAME = Pattern.compile("[a-z0-9]([a-z0-9.-]{0,251}[a-z0-9])?");

        public Listening {
            Require.present(address, "address");
            if (!Access.loopback(address) && tls.isEmpty()) {
                throw new Invalid("address", "must be 127.0.0.1, ::1 or localhost, not " + address
                    + ". Others are answered only over an encrypted line: give --certificate and --key, or let a proxy on this computer do it (--behind-proxy).");
            }
            if (address.isBlank() || address.chars().anyMatch(sign -> sign <= ' ')) {
                throw new Invalid("address", "is no address.");
            }
            if (tls.isPresent() && proxiedAs.isPresent()) {
                throw new Invalid("behind-proxy", "does not go with a certificate: the proxy has it.");
            }
            proxiedAs.filter(name -> !NAME.matcher(name).matches()).ifPresent(name -> {
                throw new Invalid("behind-proxy", "must be the name that people ask for, in small letters, like dose.example.org.");
            });
            Require.within(port, 0, 65_535, "port");
        }

        public boolean onThisComputerOnly() {
            return Access.loopback(address);
        }

        /** On this computer only. */
        public Listening(String address, int port) {
            this(address, port, Optional.empty(), Optional.empty());
        }
    }

    /** @throws PortTaken if something else listens there */
    public static Server start(Listening where, Plans plans, Database database, String version) {
        return start(where, plans, database, new Entrance(database), version);
    }

    /** @throws PortTaken if something else listens there */
    public static Server start(Listening where, Plans plans, Database database, Entrance entrance, String version) {
        return start(where, plans, database, entrance, version, Optional.empty());
    }

    /**
     * @param log where a line is added for each request, if anywhere
     * @throws PortTaken if something else listens there
     */
    public static Server start(Listening where, Plans plans, Database database, Entrance entrance, String version, Optional<Path> log) {
        Watched watched = new Watched(database, log);
        AtomicReference<List<String>> routes = new AtomicReference<>();
        Runs runs = new Runs(database);
        RunQueue queue = new RunQueue(runs, plans.basis(), watched::ran);
        Room room = new Room();
        Javalin javalin = Javalin.create(config -> {
            connection(config, where);
            routes.set(routes(config, new Access(where), plans, database, entrance, version, runs, queue, watched, room));
            config.requestLogger.http(watched::note);
        });
        try {
            javalin.start();
        } catch (JavalinBindException e) {
            javalin.stop();
            queue.close();
            watched.close();
            throw new PortTaken(where, e);
        }
        return new Server(javalin, routes.get(), queue, watched, room);
    }

    public int port() {
        return javalin.port();
    }

    /** Where answers are drawn while somebody waits. */
    Room room() {
        return room;
    }

    /** Method and address of every route. */
    public List<String> routes() {
        return routes;
    }

    @Override
    public void close() {
        queue.close();
        for (Connector connector : javalin.jettyServer().server().getConnectors()) {
            ((AbstractConnector) connector).setShutdownIdleTimeout(QUIET_MS);
        }
        javalin.stop();
        watched.close();
    }

    private static void connection(JavalinConfig config, Listening where) {
        config.startup.showJavalinBanner = false;
        config.startup.showOldJavalinVersionWarning = false;
        config.startup.startupWatcherEnabled = false;
        config.http.prefer405over404 = true;
        config.jetty.host = where.address();
        config.jetty.port = where.port();
        where.tls().ifPresent(tls -> config.jetty.addConnector((server, http) -> encrypted(server, http, where, tls)));
        config.jetty.threadPool = new QueuedThreadPool(THREADS, 4);
        config.jetty.modifyHttpConfiguration(Server::patience);
        config.jetty.modifyServer(server -> {
            server.setStopTimeout(STOP_MS);
            server.setErrorHandler(new BareErrors());
        });
    }

    private static ServerConnector encrypted(org.eclipse.jetty.server.Server server, HttpConfiguration http, Listening where, Tls tls) {
        SslContextFactory.Server factory = new SslContextFactory.Server();
        factory.setKeyStore(tls.keys());
        factory.setKeyStorePassword(tls.password());
        factory.setIncludeProtocols("TLSv1.3", "TLSv1.2");
        HttpConfiguration secured = new HttpConfiguration(http);
        secured.addCustomizer(new SecureRequestCustomizer(false));         // names are held against the certificate in Access
        ServerConnector connector = new ServerConnector(server, new SslConnectionFactory(factory, "http/1.1"), new HttpConnectionFactory(secured));
        connector.setHost(where.address());
        connector.setPort(where.port());
        return connector;
    }

    private static void patience(HttpConfiguration http) {
        http.setIdleTimeout(IDLE_MS);
        http.setSendServerVersion(false);
        http.setSendDateHeader(true);
    }

    private static List<String> routes(JavalinConfig config, Access access, Plans plans, Database database, Entrance entrance, String version, Runs runs,
                                       RunQueue queue, Watched watched, Room room) {
        config.routes.before(RequestNumber::give);
        config.routes.before(access::check);
        Gate gate = new Gate(entrance);
        Routes routes = new Routes(config.routes, gate);
        config.routes.exception(Exception.class, Server::refuse);
        config.routes.exception(HttpResponseException.class, (failure, ctx) -> refuse(failure.getStatus() == 405 ? elsewhere(ctx, routes) : failure, ctx));
        config.router.javaLangErrorHandler(Server::failed);
        HealthRoutes.on(routes, database, version);
        watched.on(routes, gate);
        SessionRoutes.on(routes, entrance, gate);
        OwnAccountRoutes.on(routes, entrance);
        AccountsRoutes.on(routes, entrance);
        Handbook handbook = CuttingTables.read();
        TableRoutes.on(routes, plans.basis(), handbook);
        ShippedRoutes.on(routes);
        CuttingTimeRoutes.on(routes, handbook);
        FeedOptimumRoutes.on(routes, handbook);
        TrialFitRoutes.on(routes);
        DecisionAidRoutes.on(routes);
        CampaignRoutes.on(routes, plans);
        SettingsRoutes.on(routes, plans);
        ForecastRoutes.on(routes, plans);
        TraceRoutes.on(routes, plans);
        ExposureRoutes.on(routes, plans);
        DoseRateRoutes.on(routes, plans.basis());
        ChangeRoutes.on(routes, plans);
        TrailRoutes.on(routes, database);
        BackupRoutes.on(routes, database);
        DivisionRoutes.on(routes, plans);
        TrialRoutes.on(routes, plans);
        RoutineLibrary library = RoutineFiles.read();
        RoutineLibraryRoutes.on(routes, plans, library);
        ComparisonRoutes.on(routes, plans, handbook, library);
        ObjectRoutes.on(routes, plans);
        WaterRoutes.on(routes, plans);
        OrderRoutes.on(routes, plans, room);
        Entries entries = new Entries(database);
        RosterRoutes.on(routes, plans, entries);
        HandIns handIns = new HandIns(database);
        LogPlans logPlans = new LogPlans(plans);
        Today today = new Today(database);
        EntryRoutes.on(routes, logPlans, entries, handIns, today, entrance.accounts());
        PersonRecordRoutes.on(routes, plans, entries, new PeriodResults(database), new Retention(database));
        RetentionRoutes.on(routes, database);
        ReadingRoutes.on(routes, logPlans, entries, today, entrance.accounts());
        ProgressRoutes.on(routes, logPlans, entries, today);
        HandInRoutes.on(routes, logPlans, handIns, today, entrance.accounts());
        Lessons lessons = new Lessons(plans, entries, database, today);
        LearningRoutes.on(routes, lessons);
        RunRoutes.on(routes, plans, runs, queue, lessons::state);
        WhatIfRoutes.on(routes, plans, lessons::state, room);
        WaitingRoutes.on(routes, plans, room, lessons::state);
        Reviews reviews = new Reviews(database);
        Reviewed reviewed = new Reviewed(plans, reviews, entries, today);
        StandingRoutes.on(routes, plans, runs, entries, handIns, id -> Stream.concat(lessons.of(id).learnt().findings().stream(),
            reviewed.findings(id).stream()).toList(), room);
        atHand(plans, id -> {
            lessons.of(id);
            reviewed.findings(id);
        });
        DecisionRoutes.on(routes, plans, new Decisions(database, plans.campaigns()), runs);
        ReviewRoutes.on(routes, plans, reviews, reviewed);
        SheetRoutes.on(routes, plans, runs, reviewed);
        PageRoutes.on(routes);
        return routes.known();
    }

    /** Works out beside the start what the first who ask would wait for: the log of a campaign is read from the disk once. */
    private static void atHand(Plans plans, LongConsumer work) {
        Thread thread = new Thread(() -> {
            try {
                plans.campaigns().list(0, AT_HAND).rows().forEach(row -> {
                    try {
                        work.accept(row.id());
                    } catch (Refused unfinished) {
                        LOG.log(Level.DEBUG, "Campaign " + row.id() + " cannot be forecast yet.");
                    }
                });
            } catch (RuntimeException failure) {    // asked again, and told, by whoever needs it
                LOG.log(Level.DEBUG, "Not worked out beforehand", failure);
            }
        }, "kerfbook-at-hand");
        thread.setDaemon(true);
        thread.setPriority(Thread.MIN_PRIORITY);
        thread.start();
    }

    /** The pages' wildcard takes any address, so what is not taken here is told by hand: another method, or nothing at all. */
    static Refused elsewhere(Context ctx, Routes routes) {
        List<String> methods = routes.methods(ctx.path());
        if (methods.isEmpty()) {
            return new Refused(404, "There is nothing at this address.");
        }
        ctx.header("Allow", String.join(", ", methods) + (methods.contains("GET") ? ", HEAD" : ""));
        return new Refused(405, "Use one of the methods in the Allow header.");
    }

    private static void refuse(Exception failure, Context ctx) {
        Problem problem = Problem.from(failure);
        ctx.removeHeader("ETag");
        if (failure instanceof TooMany wait) {
            ctx.header("Retry-After", Long.toString(wait.seconds()));
        }
        Caller caller = ctx.attribute(Caller.class.getName());
        ctx.status(problem.status()).contentType("application/problem+json").result(caller == null ? problem.json() : Privacy.masked(caller, problem.json()));
    }

    private static void failed(HttpServletResponse response, Error error) {
        LOG.log(Level.ERROR, "A request failed", error);
        try {
            response.setStatus(500);
            response.setContentType("application/problem+json");
            response.getOutputStream().write(Problem.of(500, "The server made a mistake. What happened is in its log.").json());
        } catch (IOException | IllegalStateException e) {
            LOG.log(Level.WARNING, "and could not be answered", e);
        }
    }
}
