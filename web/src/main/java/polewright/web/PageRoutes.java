package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.operations.night.NightsFile;
import polewright.report.text.EventWords;
import polewright.session.NightSummary;
import polewright.session.event.LoggedEvent;
import polewright.web.form.CommandForm;
import polewright.web.form.CommandForms;
import polewright.web.page.ChosenNight;
import polewright.web.page.Forms;
import polewright.web.page.Page;
import polewright.web.page.PageRequest;
import polewright.web.page.Pages;
import polewright.web.page.Sketches;
import polewright.web.session.NightSession;
import polewright.web.session.WatchedFrames;

/** Read-only routes of a session: its pages, the pictures in a form while it is filled in, and a night as a file. */
final class PageRoutes {
    private final NightSession session;
    private final PageMaking making;

    private PageRoutes(NightSession session, PageMaking making) {
        this.session = session;
        this.making = making;
    }

    static void add(JavalinConfig config, NightSession session, PageMaking making) {
        PageRoutes routes = new PageRoutes(session, making);
        String prefix = session.prefix();
        for (Page page : Pages.all()) {
            config.routes.get(prefix + page.path(), ctx -> routes.show(ctx, page));
        }
        for (CommandForm form : CommandForms.all()) {
            config.routes.get(prefix + Forms.asCommand(form), ctx -> asCommand(ctx, form));
        }
        for (CommandForm form : Sketches.drawn()) {
            config.routes.get(prefix + Sketches.path(form), ctx -> routes.sketch(ctx, form));
        }
        config.routes.get(prefix + ChosenNight.DOWNLOAD, routes::download);
    }

    /** Routes that exist once, regardless of the number of sessions. */
    static void addGlobal(JavalinConfig config) {
        Stream.concat(CommandForms.practice().stream(), CommandForms.laptop().stream())
                .forEach(form -> config.routes.get(Forms.asCommand(form), ctx -> asCommand(ctx, form)));
        config.routes.get(
                "/clock",
                ctx -> ctx.result(Long.toString(Instant.now(Clock.systemUTC()).toEpochMilli())));
    }

    private void show(Context ctx, Page page) {
        // Once the page of a night has been shown, its next frame must be taken.
        session.frames().ifPresent(WatchedFrames::refresh);
        PageRequest request = Responses.request(ctx, session);
        making.render(ctx, () -> Responses.html(request, page, said(request), session.problems(), notes(request)))
                .ifPresent(html -> Responses.show(ctx, html));
    }

    private static String said(PageRequest request) {
        return logged(request)
                .map(event -> "Logged #" + event.seq() + ": " + EventWords.of(event.event()) + ".")
                .orElse("");
    }

    private List<String> notes(PageRequest request) {
        return logged(request).map(event -> session.notes(event.seq())).orElse(List.of());
    }

    /** The event that was just logged, if the page shows the result of a form. */
    private static Optional<LoggedEvent> logged(PageRequest request) {
        return request.word("said")
                .filter(seq -> seq.matches("\\d{1,9}"))
                .map(Long::parseLong)
                .flatMap(seq -> request.session().tonight().stream()
                        .flatMap(tonight -> tonight.events().stream())
                        .filter(event -> event.seq() == seq)
                        .findFirst());
    }

    /** The equivalent command line for what is filled in so far. */
    private static void asCommand(Context ctx, CommandForm form) {
        ctx.header("Cache-Control", "no-store");
        ctx.html(Templates.escaped(form.line(Responses.words(ctx))));
    }

    /**
     * A form's picture for what is filled in so far. No content while it cannot be drawn, so that the last picture
     * stays.
     */
    private void sketch(Context ctx, CommandForm form) {
        PageRequest request = Responses.request(ctx, session);
        ctx.header("Cache-Control", "no-store");
        Sketches.svg(request, form, request.words())
                .ifPresentOrElse(ctx::html, () -> ctx.status(HttpStatus.NO_CONTENT));
    }

    /** A night as JSON Lines, as {@code polewright log export} writes it. */
    private void download(Context ctx) {
        NightSummary night = ChosenNight.of(Responses.request(ctx, session)).orElse(null);
        if (night == null) {
            ctx.status(HttpStatus.NOT_FOUND);
            ctx.attribute(Responses.NOT_THERE, "That night does not exist. Choose one on Nights.");
            return;
        }
        String number = Long.toString(night.id().number());
        ctx.contentType("application/jsonl; charset=utf-8");
        ctx.header("Content-Disposition", "attachment; filename=\"night-" + number + ".jsonl\"");
        ctx.result(NightsFile.text(List.of(session.events(night.id()))));
    }
}
