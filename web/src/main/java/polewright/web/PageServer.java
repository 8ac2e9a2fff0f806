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
import polewright.web.page.ChosenNight;
import polewright.web.session.FrameAddress;
import polewright.web.session.NightSession;
import polewright.web.session.WatchedFrames;

/** Serves the pages of one or more desks, until it is closed. */
public final class PageServer implements AutoCloseable {
    /** What the page for pairing looks like: it is shown to whoever comes to the door. */
    public static final Set<String> OPEN = Set.of("/static/page.css", "/static/pair.js", "/static/icon.svg");

    /** Where a file may be sent that is larger than a form. */
    public static final Set<String> UPLOADS = Set.of(FrameAddress.UPLOAD, ChosenNight.UPLOAD);

    /** Where it listens when no port is named. */
    public static final int USUAL_PORT = 8440;

    private final List<NightSession> desks;
    private final EventStreams news;
    private final PageMaking making = new PageMaking();
    private final Javalin javalin;

    private PageServer(List<NightSession> desks, AccessControl door) {
        this.desks = List.copyOf(desks);
        news = new EventStreams(desks, door);
        javalin = Javalin.create(config -> {
            config.startup.showJavalinBanner = false;
            door.install(config);
            routes(config);
        });
    }

    /**
     * Starts to listen.
     *
     * @param door who may come in
     * @param host the address to listen on: {@code 127.0.0.1} for this machine alone
     * @param port 0 for any that is free
     * @throws OperationFailed if it cannot listen
     */
    public static PageServer start(List<NightSession> desks, AccessControl door, String host, int port) {
        beside(() -> rehearseFirstPage(desks.get(0)));
        PageServer server = new PageServer(desks, door);
        try {
            server.javalin.start(host, port);
            server.desks.forEach(desk -> desk.frames().ifPresent(WatchedFrames::open));
        } catch (RuntimeException e) {
            server.close();
            throw ServerStartFailure.told(port, e);
        }
        beside(() -> askForFirstPage(server.port()));
        return server;
    }

    private static void beside(Runnable work) {
        Thread thread = new Thread(work, "first page");
        thread.setDaemon(true);
        thread.start();
    }

    /** The way through the server is gone once, so that whoever comes first does not wait for it to be made. */
    private static void askForFirstPage(int port) {
        try {
            URLConnection connection =
                    URI.create("http://127.0.0.1:" + port + "/").toURL().openConnection();
            connection.setRequestProperty("Connection", "close");
            try (InputStream page = connection.getInputStream()) {
                page.readAllBytes();
            }
        } catch (IOException closedMeanwhile) {
            // Nobody waits for this page.
        }
    }

    /** Loads what the first page needs on one processor while the other starts to listen: the person waits for both. */
    private static void rehearseFirstPage(NightSession desk) {
        try {
            Responses.firstPage(desk);
        } catch (RuntimeException whatThePageItselfWillSay) {
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

    /** The port that it listens on. */
    public int port() {
        return javalin.port();
    }

    @Override
    public void close() {
        // What a frame that is under way has to tell is told, and logged, before there is nobody left to tell.
        desks.forEach(desk -> desk.frames().ifPresent(WatchedFrames::close));
        news.close();
        javalin.stop();
        making.close();
    }

    private void routes(JavalinConfig config) {
        config.routes.before(this::requireDecodable);
        StaticFiles.add(config);
        PaletteChoice.add(config);
        for (NightSession desk : desks) {
            PageRoutes.add(config, desk, making);
            FormRoutes.add(config, desk, desks);
            news.add(config, desk);
            desk.frames().ifPresent(frames -> FrameRoutes.add(config, desk, frames));
            if (desk.prefix().isEmpty()) {
                PageRoutes.addOfTheHouse(config);
                FormRoutes.addOfTheHouse(config, desk, desks);
                UploadRoutes.add(config, desk);
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
                        deskOf(ctx),
                        HttpStatus.NOT_FOUND,
                        "Nothing here",
                        what == null ? "That page does not exist. Choose one from the menu." : what);
            }
        });
    }

    /** Checked once, before a route reads any of it. */
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

    /** A log that is busy, damaged or out of reach: what is pressed meanwhile is kept by the page and sent again. */
    private void notNow(Exception e, Context ctx) {
        refuse(ctx, HttpStatus.SERVICE_UNAVAILABLE, String.valueOf(e.getMessage()));
    }

    private void refuse(Context ctx, HttpStatus status, String sentence) {
        Responses.refuse(ctx, deskOf(ctx), status, "This did not work", sentence);
    }

    /** Whose pages the address is among: the longest prefix that it begins with. */
    private NightSession deskOf(Context ctx) {
        return desks.stream()
                .filter(desk -> ctx.path().startsWith(desk.prefix() + "/"))
                .max(Comparator.comparing(desk -> desk.prefix().length()))
                .orElse(desks.get(0));
    }
}
