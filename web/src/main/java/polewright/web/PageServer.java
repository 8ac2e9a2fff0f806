package polewright.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.net.URI;
import java.net.URLConnection;
import java.util.Comparator;
import java.util.List;
import java.util.Set;
import polewright.operations.OperationFailed;
import polewright.sky.InputRefused;
import polewright.web.access.AccessControl;
import polewright.web.form.FilledForm;
import polewright.web.form.PageWording;
import polewright.web.page.ChosenNight;
import polewright.web.session.FrameAddress;
import polewright.web.session.NightSession;
import polewright.web.session.WatchedFrames;

/** Serves the pages of one or more sessions until it is closed. */
public final class PageServer implements AutoCloseable {
    /** The assets of the pairing page, served to unpaired devices too. */
    public static final Set<String> OPEN = Set.of("/static/page.css", "/static/pair.js", "/static/icon.svg");

    /** Paths that accept a file larger than a form. */
    public static final Set<String> UPLOADS = Set.of(FrameAddress.UPLOAD, ChosenNight.UPLOAD);

    /** Default port. */
    public static final int USUAL_PORT = 8440;

    private final List<NightSession> sessions;
    private final EventStreams news;
    private final PageMaking making = new PageMaking();
    private final Javalin javalin;

    private PageServer(List<NightSession> sessions, AccessControl access) {
        this.sessions = List.copyOf(sessions);
        news = new EventStreams(sessions, access);
        javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            access.install(config);
            routes(config);
        });
    }

    /**
     * Starts listening.
     *
     * @param access decides which devices are admitted
     * @param host the address to listen on: {@code 127.0.0.1} for this machine alone
     * @param port 0 for any free port
     * @throws OperationFailed if it cannot listen
     */
    public static PageServer start(List<NightSession> sessions, AccessControl access, String host, int port) {
        inBackground(() -> preloadFirstPage(sessions.get(0)));
        PageServer server = new PageServer(sessions, access);
        try {
            server.javalin.start(host, port);
            server.sessions.forEach(session -> session.frames().ifPresent(WatchedFrames::open));
        } catch (RuntimeException e) {
            server.close();
            throw ServerStartFailure.toException(port, e);
        }
        inBackground(() -> requestFirstPage(server.port()));
        return server;
    }

    private static void inBackground(Runnable work) {
        Thread thread = new Thread(work, "first page");
        thread.setDaemon(true);
        thread.start();
    }

    /** Sends one request through the whole server, so that the first visitor does not wait for classes to load. */
    private static void requestFirstPage(int port) {
        try {
            URLConnection connection =
                    URI.create("http://127.0.0.1:" + port + "/").toURL().openConnection();
            connection.setRequestProperty("Connection", "close");
            try (InputStream page = connection.getInputStream()) {
                page.readAllBytes();
            }
        } catch (IOException closedMeanwhile) {
            // This response is not needed.
        }
    }

    /**
     * Loads what the first page needs on one processor while the other starts listening: the person waits for both.
     */
    private static void preloadFirstPage(NightSession session) {
        try {
            Responses.firstPage(session);
        } catch (RuntimeException reportedByThePage) {
            // The page itself reports a log that is unreadable or already closed.
        }
    }

    /** The page for a device that is not paired. */
    public static String pairingPage(String complaint) {
        return Templates.pairing(complaint);
    }

    /** Every route, such as {@code GET /static/{name}}. */
    List<String> routes() {
        return javalin.unsafe.internalRouter.allHttpHandlers().stream()
                .map(route -> route.endpoint)
                .filter(route -> route.method.isHttpMethod())
                .map(route -> route.method + " " + route.path)
                .toList();
    }

    /** The port it listens on. */
    public int port() {
        return javalin.port();
    }

    @Override
    public void close() {
        // News of a frame in progress is logged and sent before the listeners are gone.
        sessions.forEach(session -> session.frames().ifPresent(WatchedFrames::close));
        news.close();
        javalin.stop();
        making.close();
    }

    private void routes(JavalinConfig config) {
        config.routes.before(this::requireDecodable);
        StaticFiles.add(config);
        PaletteChoice.add(config);
        for (NightSession session : sessions) {
            PageRoutes.add(config, session, making);
            FormRoutes.add(config, session, sessions);
            news.add(config, session);
            session.frames().ifPresent(frames -> FrameRoutes.add(config, session, frames));
            if (session.prefix().isEmpty()) {
                PageRoutes.addGlobal(config);
                FormRoutes.addGlobal(config, session, sessions);
                UploadRoutes.add(config, session);
            }
        }
        config.routes.exception(InputRefused.class, this::notNow);
        config.routes.exception(OperationFailed.class, this::notNow);
        config.routes.exception(
                Exception.class,
                (e, ctx) -> refuse(
                        ctx,
                        HttpStatus.INTERNAL_SERVER_ERROR,
                        "Internal error (" + e.getClass().getSimpleName()
                                + "). The log is safe. Go back and continue."));
        config.routes.error(HttpStatus.NOT_FOUND, ctx -> {
            if (!ctx.res().isCommitted()) {
                String what = ctx.attribute(Responses.NOT_THERE);
                Responses.refuse(
                        ctx,
                        sessionOf(ctx),
                        HttpStatus.NOT_FOUND,
                        "Nothing here",
                        what == null ? "That page does not exist. Choose one from the menu." : what);
            }
        });
    }

    /** Checked once, before a route reads any of the parameters. */
    private void requireDecodable(Context ctx) {
        try {
            FilledForm.of(String.valueOf(ctx.queryString()));
            if (ctx.isFormUrlencoded()) {
                FilledForm.of(ctx.body());
            }
        } catch (InputRefused broken) {
            refuse(ctx, HttpStatus.BAD_REQUEST, String.valueOf(broken.getMessage()));
            ctx.skipRemainingHandlers();
        }
    }

    /** The log is busy, damaged or out of reach: the page keeps what was submitted and sends it again. */
    private void notNow(Exception e, Context ctx) {
        refuse(ctx, HttpStatus.SERVICE_UNAVAILABLE, PageWording.GENERAL.of(String.valueOf(e.getMessage())));
    }

    private void refuse(Context ctx, HttpStatus status, String sentence) {
        Responses.refuse(ctx, sessionOf(ctx), status, "This did not work", sentence);
    }

    /** The session that an address belongs to: the longest prefix wins. */
    private NightSession sessionOf(Context ctx) {
        return sessions.stream()
                .filter(session -> ctx.path().startsWith(session.prefix() + "/"))
                .max(Comparator.comparing(session -> session.prefix().length()))
                .orElse(sessions.get(0));
    }
}
