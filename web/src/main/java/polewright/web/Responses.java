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

/** How a request becomes a question to a room, and what the room says a page. */
final class Responses {
    /** The attribute in which a route leaves what is not there, when that is something else than a page. */
    static final String NOT_THERE = "not there";

    private Responses() {}

    /**
     * What is asked for.
     *
     * @throws polewright.sky.InputRefused if the log cannot be read
     */
    static PageRequest asked(Context ctx, NightSession desk) {
        // What a frame brings while the page is made counts as not yet shown.
        long frame = desk.frames().map(frames -> frames.stand().number()).orElse(0L);
        NightSession.Standing standing = desk.standing();
        return new PageRequest(desk, PaletteChoice.of(ctx), words(ctx), standing.events(), frame, standing.night());
    }

    /** What stands in the address behind the question mark; of a word that stands there twice, the first. */
    static Map<String, String> words(Context ctx) {
        return FilledForm.of(ctx.queryString() == null ? "" : ctx.queryString()).fields();
    }

    /** What was filled in. */
    static Map<String, String> filled(Context ctx) {
        return FilledForm.of(ctx.body()).fields();
    }

    /** A room's page. */
    static String html(PageRequest asked, Page room, String said, List<String> complaints) {
        return Templates.html(page(asked, room, said, complaints, room.sections(asked)));
    }

    /** A room's page right after something was logged: what was noted of it goes ahead of the rest. */
    static String html(PageRequest asked, Page room, String said, List<String> complaints, List<String> notes) {
        if (notes.isEmpty()) {
            return html(asked, room, said, complaints);
        }
        List<Section> sections = new ArrayList<>(List.of(new Section.Caution(notes)));
        sections.addAll(room.sections(asked));
        return Templates.html(page(asked, room, said, complaints, sections));
    }

    /** A room's page, and what was complained of. */
    static void show(Context ctx, PageRequest asked, Page room, List<String> complaints) {
        show(ctx, page(asked, room, "", complaints, room.sections(asked)));
    }

    /** A room's page with something else on it. */
    static void show(Context ctx, PageRequest asked, Page room, List<String> complaints, List<Section> sections) {
        show(ctx, page(asked, room, "", complaints, sections));
    }

    /** A page that says why there is no other; it is made without the log, which may be what cannot be read. */
    static void refuse(Context ctx, NightSession desk, HttpStatus status, String title, String sentence) {
        ctx.status(status);
        PageRequest asked = new PageRequest(desk, PaletteChoice.of(ctx), Map.of(), 0, 0, 0);
        show(ctx, page(asked, new Nowhere(title), "", List.of(sentence), List.of()));
    }

    /** The first page as it is for whoever has chosen nothing. */
    static String firstPage(NightSession desk) {
        NightSession.Standing standing = desk.standing();
        PageRequest asked = new PageRequest(desk, Palette.DARK, Map.of(), standing.events(), 0, standing.night());
        Page now = Pages.places().get(0);
        return html(asked, now, "", List.of());
    }

    /** A page that is on no list. */
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
            PageRequest asked, Page room, String said, List<String> complaints, List<Section> sections) {
        List<PageView.Place> places = Pages.places().stream()
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

    private static void show(Context ctx, PageView page) {
        show(ctx, Templates.html(page));
    }

    /** A page that was made. */
    static void show(Context ctx, String html) {
        ctx.header("Cache-Control", "no-store");
        ctx.html(html);
    }
}
