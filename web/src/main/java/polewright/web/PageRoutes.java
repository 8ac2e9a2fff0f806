package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import polewright.operations.OperationFailed;
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

/** All that a desk only tells: its pages, what stands under a form that is being filled in, a night as a file. */
final class PageRoutes {
    private final NightSession desk;
    private final PageMaking making;

    private PageRoutes(NightSession desk, PageMaking making) {
        this.desk = desk;
        this.making = making;
    }

    static void add(JavalinConfig config, NightSession desk, PageMaking making) {
        PageRoutes routes = new PageRoutes(desk, making);
        String prefix = desk.prefix();
        for (Page room : Pages.everyone()) {
            config.routes.get(prefix + room.path(), ctx -> routes.show(ctx, room));
        }
        for (CommandForm form : CommandForms.all()) {
            config.routes.get(prefix + Forms.asCommand(form), ctx -> asCommand(ctx, form));
        }
        for (CommandForm form : Sketches.drawn()) {
            config.routes.get(prefix + Sketches.path(form), ctx -> routes.sketch(ctx, form));
        }
        config.routes.get(prefix + ChosenNight.DOWNLOAD, routes::download);
    }

    /** What is there once, whatever the number of desks. */
    static void addOfTheHouse(JavalinConfig config) {
        Stream.concat(CommandForms.practice().stream(), CommandForms.house().stream())
                .forEach(form -> config.routes.get(Forms.asCommand(form), ctx -> asCommand(ctx, form)));
        config.routes.get(
                "/clock",
                ctx -> ctx.result(Long.toString(Instant.now(Clock.systemUTC()).toEpochMilli())));
    }

    private void show(Context ctx, Page room) {
        // Whoever has seen the page of a night can rely on its next frame being taken.
        desk.frames().ifPresent(WatchedFrames::tend);
        PageRequest asked = Responses.asked(ctx, desk);
        making.made(ctx, () -> Responses.html(asked, room, said(asked), desk.trouble(), notes(asked)))
                .ifPresent(html -> Responses.show(ctx, html));
    }

    private static String said(PageRequest asked) {
        return logged(asked)
                .map(event -> "Logged #" + event.seq() + ": " + EventWords.of(event.event()) + ".")
                .orElse("");
    }

    private List<String> notes(PageRequest asked) {
        return logged(asked).map(event -> desk.notes(event.seq())).orElse(List.of());
    }

    /** The event that was just logged, where a page shows what came of a form. */
    private static Optional<LoggedEvent> logged(PageRequest asked) {
        return asked.word("said")
                .filter(seq -> seq.matches("\\d{1,9}"))
                .map(Long::parseLong)
                .flatMap(seq -> asked.desk().tonight().stream()
                        .flatMap(tonight -> tonight.events().stream())
                        .filter(event -> event.seq() == seq)
                        .findFirst());
    }

    /** What is filled in so far, as the command that would be typed for it. */
    private static void asCommand(Context ctx, CommandForm form) {
        ctx.header("Cache-Control", "no-store");
        ctx.html(Templates.escaped(form.line(Responses.words(ctx))));
    }

    /** A form's picture for what is typed so far; nothing, so that the last one stays, while it cannot be drawn. */
    private void sketch(Context ctx, CommandForm form) {
        PageRequest asked = Responses.asked(ctx, desk);
        ctx.header("Cache-Control", "no-store");
        Sketches.svg(asked, form, asked.words()).ifPresentOrElse(ctx::html, () -> ctx.status(HttpStatus.NO_CONTENT));
    }

    /** A night as JSON Lines, as {@code polewright log export} writes it. */
    private void download(Context ctx) {
        NightSummary night = ChosenNight.of(Responses.asked(ctx, desk)).orElse(null);
        if (night == null) {
            ctx.status(HttpStatus.NOT_FOUND);
            ctx.attribute(Responses.NOT_THERE, "That night does not exist. Choose one on Nights.");
            return;
        }
        String number = Long.toString(night.id().number());
        NightSession.Written written =
                desk.writing(file -> List.of("log", "export", file.toString(), "--night=" + number));
        ctx.contentType("application/jsonl; charset=utf-8");
        ctx.header("Content-Disposition", "attachment; filename=\"night-" + number + ".jsonl\"");
        ctx.result(written.content()
                .orElseThrow(
                        () -> new OperationFailed(String.join(" ", written.ran().complaints()))));
    }
}
