package polewright.app.web;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.sse.SseClient;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URLConnection;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicLong;
import java.util.function.LongConsumer;
import java.util.stream.Stream;
import polewright.app.JobFailed;
import polewright.app.text.EventWords;
import polewright.app.web.door.Door;
import polewright.app.web.form.CommandForm;
import polewright.app.web.form.CommandForms;
import polewright.app.web.room.Asked;
import polewright.app.web.room.ChosenNight;
import polewright.app.web.room.Forms;
import polewright.app.web.room.Room;
import polewright.app.web.room.Rooms;
import polewright.app.web.room.Sketches;
import polewright.app.web.view.PageView;
import polewright.app.web.view.Section;
import polewright.axis.drawing.Palette;
import polewright.night.log.NightSummary;
import polewright.sky.InputRefused;

/** Serves the pages of one or more desks, until it is closed. */
public final class PageServer implements AutoCloseable {
    private static final String DARK = "dark";
    private static final String PALETTE_COOKIE = "palette";
    private static final int A_YEAR_SECONDS = 31_536_000;
    private static final Map<String, String> TYPES =
            Map.of("css", "text/css", "js", "text/javascript", "svg", "image/svg+xml");
    // Read from the jar by name: what is not listed is not there, whatever the address looks like.
    private static final Map<String, String> FILES = Map.of(
            "page.css", "/polewright/app/web/static/page.css",
            "page.js", "/polewright/app/web/static/page.js",
            "horizon.js", "/polewright/app/web/static/horizon.js",
            "pair.js", "/polewright/app/web/static/pair.js",
            "frames.js", "/polewright/app/web/static/frames.js",
            "icon.svg", "/polewright/app/web/static/icon.svg",
            "htmx.js", "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js",
            "sse.js", "/META-INF/resources/webjars/htmx-ext-sse/2.2.2/sse.js");

    /** What the page for pairing looks like: it is shown to whoever comes to the door. */
    public static final Set<String> OPEN = Set.of("/static/page.css", "/static/pair.js", "/static/icon.svg");

    /** Where a file may be sent that is larger than a form. */
    public static final Set<String> UPLOADS = Set.of(FrameAddress.UPLOAD, ChosenNight.UPLOAD);

    private final List<NightDesk> desks;
    private final Map<String, LogWatch> watches = new HashMap<>();
    private final Door door;
    private final Javalin javalin;

    private PageServer(List<NightDesk> desks, Door door) {
        this.door = door;
        this.desks = List.copyOf(desks);
        desks.forEach(desk -> watches.put(desk.prefix(), LogWatch.of(desk)));
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
     * @throws JobFailed if it cannot listen
     */
    public static PageServer start(List<NightDesk> desks, Door door, String host, int port) {
        beside(() -> rehearseFirstPage(desks.get(0)));
        PageServer server = new PageServer(desks, door);
        try {
            server.javalin.start(host, port);
            server.desks.forEach(desk -> desk.frames().ifPresent(WatchedFrames::open));
        } catch (RuntimeException e) {
            server.close();
            throw NotListening.told(port, e);
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
    private static void rehearseFirstPage(NightDesk desk) {
        try {
            Asked asked = new Asked(desk, Palette.DARK, Map.of(), desk.stand(), 0);
            Room now = Rooms.places().get(0);
            Templates.html(page(asked, now, "", List.of(), now.sections(asked)));
        } catch (InputRefused | JobFailed whatThePageItselfWillSay) {
            // A log that cannot be read is told of where someone asks for it.
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
        watches.values().forEach(LogWatch::close);
        javalin.stop();
        desks.forEach(desk -> desk.frames().ifPresent(WatchedFrames::close));
    }

    private void routes(JavalinConfig config) {
        config.routes.get("/static/{name}", PageServer::file);
        config.routes.get(
                "/clock",
                ctx -> ctx.result(
                        Long.toString(Instant.now(java.time.Clock.systemUTC()).toEpochMilli())));
        config.routes.post("/palette", PageServer::choosePalette);
        for (NightDesk desk : desks) {
            String prefix = desk.prefix();
            for (Room room : Rooms.everyone()) {
                config.routes.get(prefix + room.path(), ctx -> show(ctx, desk, room));
            }
            for (CommandForm form : CommandForms.all()) {
                config.routes.post(prefix + "/do/" + form.id(), ctx -> post(ctx, desk, form));
                config.routes.get(prefix + Forms.asCommand(form), ctx -> asCommand(ctx, form));
            }
            for (CommandForm form : Sketches.drawn()) {
                config.routes.get(prefix + Sketches.path(form), ctx -> sketch(ctx, desk, form));
            }
            if (prefix.isEmpty()) {
                Stream.concat(CommandForms.practice().stream(), CommandForms.house().stream())
                        .forEach(form -> {
                            config.routes.post("/do/" + form.id(), ctx -> post(ctx, desk, form));
                            config.routes.get(Forms.asCommand(form), ctx -> asCommand(ctx, form));
                        });
            }
            config.routes.get(prefix + ChosenNight.DOWNLOAD, ctx -> download(ctx, desk));
            desk.frames().ifPresent(frames -> {
                FrameRoutes.add(config, desk, frames);
                config.routes.post(prefix + FrameAddress.SETTLED, ctx -> settle(ctx, desk, frames));
            });
            if (prefix.isEmpty()) {
                UploadRoutes.add(config, desk, (ctx, status, sentence) -> {
                    ctx.status(status);
                    shown(ctx, desk, "Not taken", List.of(sentence));
                });
            }
            config.routes.sse(prefix + "/changes", client -> follow(client, desk));
        }
        config.routes.exception(InputRefused.class, (e, ctx) -> trouble(ctx, String.valueOf(e.getMessage())));
        config.routes.exception(JobFailed.class, (e, ctx) -> trouble(ctx, String.valueOf(e.getMessage())));
        config.routes.exception(
                Exception.class,
                (e, ctx) -> trouble(
                        ctx,
                        "Something inside Polewright is wrong (" + e.getClass().getSimpleName()
                                + "); what was logged before is safe. Go back, and on."));
        config.routes.error(HttpStatus.NOT_FOUND, ctx -> {
            if (!ctx.res().isCommitted()) {
                shown(ctx, desks.get(0), "Nothing here", List.of("There is no such page. Take one from the list."));
            }
        });
    }

    private void show(Context ctx, NightDesk desk, Room room) {
        // Whoever has seen the page of a night can rely on its next frame being taken.
        desk.frames().ifPresent(WatchedFrames::tend);
        Asked asked = asked(ctx, desk);
        html(ctx, page(asked, room, said(asked), List.of(), room.sections(asked)));
    }

    private void post(Context ctx, NightDesk desk, CommandForm form) {
        Map<String, String> filled = new HashMap<>();
        ctx.formParamMap().forEach((name, values) -> filled.put(name, values.get(0)));
        Posted posted = Posting.of(desk, form, filled);
        Asked asked = asked(ctx, desk);
        // A frame may come right after what was done, and is to be seen as one that came after it.
        desks.forEach(each -> each.frames().ifPresent(WatchedFrames::tend));
        if (posted instanceof Posted.Logged logged) {
            String next = switch (form.kind()) {
                case NIGHT -> asked.to("/?said=" + logged.seq());
                case PRACTICE -> PracticeAddress.GAME;
                case DEVICES -> Rooms.DEVICES;
            };
            ctx.redirect(next, HttpStatus.SEE_OTHER);
        } else if (posted instanceof Posted.Refused refused) {
            ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
            List<Section> again = List.of(new Section.Entry(Forms.fresh(asked, form, filled)));
            html(ctx, page(asked, Rooms.of(form), "", refused.complaints(), again));
        } else {
            ctx.status(HttpStatus.CONFLICT);
            Room now = Rooms.places().get(0);
            html(
                    ctx,
                    page(
                            asked,
                            now,
                            "",
                            List.of("Not logged: something else was logged since this page was shown, by another device"
                                    + " or a frame. This is how it stands now; if you did turn or clamp, enter it under"
                                    + " Sightings."),
                            now.sections(asked)));
        }
    }

    /** What is filled in so far, as the command that would be typed for it. */
    private static void asCommand(Context ctx, CommandForm form) {
        Map<String, String> filled = new HashMap<>();
        ctx.queryParamMap().forEach((name, values) -> filled.put(name, values.get(0)));
        ctx.header("Cache-Control", "no-store");
        ctx.html(Templates.escaped(form.line(filled)));
    }

    /** A form's picture for what is typed so far; nothing, so that the last one stays, while it cannot be drawn. */
    private static void sketch(Context ctx, NightDesk desk, CommandForm form) {
        Asked asked = asked(ctx, desk);
        ctx.header("Cache-Control", "no-store");
        Sketches.svg(asked, form, asked.words()).ifPresentOrElse(ctx::html, () -> ctx.status(HttpStatus.NO_CONTENT));
    }

    /** The screws are where they are to be; the other device may have said so before, and then nothing more is done. */
    private void settle(Context ctx, NightDesk desk, WatchedFrames frames) {
        String known = ctx.formParam("if-last-is");
        boolean isNumber = known != null && known.matches("[1-9]\\d{0,8}");
        Optional<Long> logged = isNumber ? frames.settle(Long.parseLong(known)) : Optional.empty();
        Asked asked = asked(ctx, desk);
        ctx.redirect(asked.to("/") + logged.map(seq -> "?said=" + seq).orElse(""), HttpStatus.SEE_OTHER);
    }

    /** A night as JSON Lines, as {@code polewright log export} writes it. */
    private void download(Context ctx, NightDesk desk) {
        Asked asked = asked(ctx, desk);
        NightSummary night = ChosenNight.of(asked).orElseThrow(() -> new JobFailed("There is no such night."));
        String number = Long.toString(night.id().number());
        NightDesk.Written written =
                desk.writing(file -> List.of("log", "export", file.toString(), "--night=" + number));
        ctx.contentType("application/jsonl; charset=utf-8");
        ctx.header("Content-Disposition", "attachment; filename=\"night-" + number + ".jsonl\"");
        ctx.result(written.content()
                .orElseThrow(() -> new JobFailed(String.join(" ", written.ran().complaints()))));
    }

    /** Tells a page that it is old; one that slept, or was cut off, as soon as it is back. */
    private void follow(SseClient client, NightDesk desk) {
        LogWatch watch = Objects.requireNonNull(watches.get(desk.prefix()));
        String shown = client.ctx().queryParam("stand");
        AtomicLong known = new AtomicLong(shown != null && shown.matches("\\d{1,12}") ? Long.parseLong(shown) : -1);
        LongConsumer changed = stand -> {
            if (known.getAndSet(stand) != stand) {
                client.sendEvent("changed", Long.toString(stand));
            }
        };
        client.keepAlive();
        String device = door.deviceOf(client.ctx());
        Runnable end = client::close;
        Runnable beat = () -> {
            if (door.isStillIn(client.ctx())) {
                client.sendComment("still here");
            } else {
                client.close();
            }
        };
        LongConsumer framed = frameNews(client);
        client.onClose(() -> {
            watch.forget(changed, beat);
            desk.frames().ifPresent(frames -> frames.forget(framed));
            door.streams().closed(device, end);
        });
        door.streams().opened(device, end);
        watch.tell(changed, beat);
        changed.accept(desk.stand());
        desk.frames().ifPresent(frames -> {
            frames.tell(framed);
            framed.accept(frames.stand().number());
        });
    }

    private static LongConsumer frameNews(SseClient client) {
        String shown = client.ctx().queryParam("frame");
        AtomicLong known = new AtomicLong(shown != null && shown.matches("\\d{1,12}") ? Long.parseLong(shown) : -1);
        return number -> {
            if (!client.terminated() && known.getAndSet(number) != number) {
                client.sendEvent("frame", Long.toString(number));
            }
        };
    }

    private static String said(Asked asked) {
        return asked.word("said")
                .filter(seq -> seq.matches("\\d{1,9}"))
                .map(Long::parseLong)
                .flatMap(seq -> asked.desk().tonight().stream()
                        .flatMap(tonight -> tonight.events().stream())
                        .filter(event -> event.seq() == seq)
                        .findFirst())
                .map(event -> "Logged #" + event.seq() + ": " + EventWords.of(event.event()) + ".")
                .orElse("");
    }

    private static PageView page(Asked asked, Room room, String said, List<String> complaints, List<Section> sections) {
        List<PageView.Place> places = Rooms.places().stream()
                .map(place -> new PageView.Place(
                        place.address(asked), place.name(), place.path().equals(room.path())))
                .toList();
        return new PageView(
                room.name(),
                asked.desk().prefix(),
                asked.stand(),
                asked.frame(),
                asked.to(room.path()),
                asked.palette().equals(Palette.DARK),
                room.isLive(),
                places,
                said,
                complaints,
                sections);
    }

    private void trouble(Context ctx, String sentence) {
        ctx.status(HttpStatus.INTERNAL_SERVER_ERROR);
        shown(ctx, desks.get(0), "This did not work", List.of(sentence));
    }

    private void shown(Context ctx, NightDesk desk, String title, List<String> lines) {
        Asked asked = asked(ctx, desk);
        Room room = new Room() {
            @Override
            public String path() {
                return "/nowhere";
            }

            @Override
            public String name() {
                return title;
            }

            @Override
            public List<Section> sections(Asked unused) {
                return List.of();
            }
        };
        html(ctx, page(asked, room, "", lines, List.of()));
    }

    private void html(Context ctx, PageView page) {
        ctx.header("Cache-Control", "no-store");
        ctx.html(Templates.html(page));
    }

    private static Asked asked(Context ctx, NightDesk desk) {
        Map<String, String> words = new HashMap<>();
        ctx.queryParamMap().forEach((name, values) -> words.put(name, values.get(0)));
        long frame = desk.frames().map(frames -> frames.stand().number()).orElse(0L);
        return new Asked(desk, isDay(ctx) ? Palette.LIGHT : Palette.DARK, words, desk.stand(), frame);
    }

    /** Whoever has not chosen stands in the dark. */
    static boolean isDay(Context ctx) {
        return "day".equals(ctx.cookie(PALETTE_COOKIE));
    }

    private static void choosePalette(Context ctx) {
        boolean isDay = "day".equals(ctx.formParam(PALETTE_COOKIE));
        ctx.res()
                .addHeader(
                        "Set-Cookie",
                        PALETTE_COOKIE + "=" + (isDay ? "day" : DARK) + "; Path=/; Max-Age=" + A_YEAR_SECONDS
                                + "; HttpOnly; SameSite=Strict");
        String back = ctx.formParam("back");
        boolean isOurs = back != null && back.matches("/[A-Za-z0-9/-]*") && !back.startsWith("//");
        ctx.redirect(isOurs ? back : "/", HttpStatus.SEE_OTHER);
    }

    private static void file(Context ctx) {
        String name = ctx.pathParam("name");
        String resource = FILES.get(name);
        if (resource == null) {
            ctx.status(HttpStatus.NOT_FOUND);
            return;
        }
        try (InputStream in = PageServer.class.getResourceAsStream(resource)) {
            ctx.contentType(
                    TYPES.getOrDefault(name.substring(name.lastIndexOf('.') + 1), "text/plain") + "; charset=utf-8");
            ctx.header("Cache-Control", "max-age=3600");
            ctx.result(Objects.requireNonNull(in, resource).readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
