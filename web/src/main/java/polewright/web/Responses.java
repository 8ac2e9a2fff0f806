package polewright.web;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import polewright.drawing.Palette;
import polewright.web.form.FilledForm;
import polewright.web.page.Page;
import polewright.web.page.PageRequest;
import polewright.web.page.Pages;
import polewright.web.session.NightSession;
import polewright.web.view.PageView;
import polewright.web.view.Section;

/** Turns a request into a {@link PageRequest}, and a page into a response. */
final class Responses {
    /** The attribute in which a route names what was not found, if it is something other than a page. */
    static final String NOT_THERE = "not there";

    private Responses() {}

    /**
     * The request as pages see it.
     *
     * @throws polewright.sky.InputRefused if the log cannot be read
     */
    static PageRequest request(Context ctx, NightSession session) {
        // A frame that arrives while the page is rendered counts as not yet shown.
        long frame = session.frames().map(frames -> frames.status().number()).orElse(0L);
        NightSession.Standing standing = session.standing();
        return new PageRequest(session, PaletteChoice.of(ctx), words(ctx), standing.events(), frame, standing.night());
    }

    /** The query parameters; of a repeated one, the first. */
    static Map<String, String> words(Context ctx) {
        return FilledForm.of(ctx.queryString() == null ? "" : ctx.queryString()).fields();
    }

    /** The submitted form fields. */
    static Map<String, String> filled(Context ctx) {
        return FilledForm.of(ctx.body()).fields();
    }

    /** A page as HTML. */
    static String html(PageRequest request, Page page, String said, List<String> complaints) {
        return Templates.html(page(request, page, said, complaints, page.sections(request)));
    }

    /** The page right after something was logged, with the notes on that event first. */
    static String html(PageRequest request, Page page, String said, List<String> complaints, List<String> notes) {
        if (notes.isEmpty()) {
            return html(request, page, said, complaints);
        }
        List<Section> sections = new ArrayList<>(List.of(new Section.Caution(notes)));
        sections.addAll(page.sections(request));
        return Templates.html(page(request, page, said, complaints, sections));
    }

    /** Responds with a page and with complaints about what was submitted. */
    static void show(Context ctx, PageRequest request, Page page, List<String> complaints) {
        show(ctx, page(request, page, "", complaints, page.sections(request)));
    }

    /** Responds with a page that has other sections than its own. */
    static void show(Context ctx, PageRequest request, Page page, List<String> complaints, List<Section> sections) {
        show(ctx, page(request, page, "", complaints, sections));
    }

    /**
     * Responds with a page that explains why the requested one is not shown. It is rendered without the log, which
     * may be what cannot be read.
     */
    static void refuse(Context ctx, NightSession session, HttpStatus status, String title, String sentence) {
        ctx.status(status);
        PageRequest request = new PageRequest(session, PaletteChoice.of(ctx), Map.of(), 0, 0, 0);
        show(ctx, page(request, new Nowhere(title), "", List.of(sentence), List.of()));
    }

    /** The first page as a browser without a palette choice sees it. */
    static String firstPage(NightSession session) {
        NightSession.Standing standing = session.standing();
        PageRequest request = new PageRequest(session, Palette.DARK, Map.of(), standing.events(), 0, standing.night());
        Page now = Pages.now();
        return html(request, now, "", List.of());
    }

    /** A page that is in no list. */
    private record Nowhere(String name) implements Page {
        @Override
        public String path() {
            return "/nowhere";
        }

        @Override
        public List<Section> sections(PageRequest unused) {
            return List.of();
        }
    }

    private static PageView page(
            PageRequest request, Page page, String said, List<String> complaints, List<Section> sections) {
        List<PageView.Place> menu = Pages.menu().stream()
                .map(entry -> place(request, entry.first(), entry.name(), page, entry.holds(page)))
                .toList();
        List<PageView.Place> siblings = Pages.siblings(page).stream()
                .map(each -> place(request, each, each.name(), page, each.path().equals(page.menuPath())))
                .toList();
        return new PageView(
                page.name(),
                request.session().prefix(),
                request.eventCount(),
                request.frame(),
                request.to(page.path()),
                request.palette().equals(Palette.DARK),
                page.isLive(),
                menu,
                siblings,
                said,
                complaints,
                sections);
    }

    private static PageView.Place place(PageRequest request, Page target, String name, Page page, boolean isAround) {
        PageView.Where where = target.path().equals(page.path())
                ? PageView.Where.HERE
                : isAround ? PageView.Where.AROUND : PageView.Where.ELSEWHERE;
        return new PageView.Place(target.address(request), name, where);
    }

    private static void show(Context ctx, PageView page) {
        show(ctx, Templates.html(page));
    }

    /** Responds with rendered HTML. */
    static void show(Context ctx, String html) {
        ctx.header("Cache-Control", "no-store");
        ctx.html(html);
    }
}
