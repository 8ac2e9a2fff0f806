package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.drawing.frame.CloseUp;
import polewright.operations.picture.Tint;
import polewright.operations.watch.LiveView;
import polewright.session.NightId;
import polewright.web.page.Page;
import polewright.web.page.Pages;
import polewright.web.session.FrameAddress;
import polewright.web.session.NightSession;
import polewright.web.session.TurnConfirmation;
import polewright.web.session.WatchedFrames;

/**
 * Routes for a session's frames: the image of the newest one, and the confirmation that the screws are where they
 * should be.
 */
final class FrameRoutes {
    private static final Set<String> WORDS = Set.of("times", "x", "y", "n");

    private final NightSession session;
    private final WatchedFrames frames;

    private FrameRoutes(NightSession session, WatchedFrames frames) {
        this.session = session;
        this.frames = frames;
    }

    static void add(JavalinConfig config, NightSession session, WatchedFrames frames) {
        FrameRoutes routes = new FrameRoutes(session, frames);
        config.routes.get(session.prefix() + FrameAddress.LIGHT, routes::light);
        config.routes.post(session.prefix() + FrameAddress.SETTLED, routes::confirmTurn);
    }

    private void light(Context ctx) {
        Optional<CloseUp> part = part(ctx);
        Optional<LiveView.Shot> newest = frames.status().newest();
        if (part.isEmpty()) {
            refuse(ctx, HttpStatus.BAD_REQUEST, "A part of a frame needs times, x and y, each a whole number.");
        } else if (newest.isEmpty()) {
            refuse(ctx, HttpStatus.NOT_FOUND, "No frame yet.");
        } else {
            ctx.header("Cache-Control", "no-store");
            ctx.contentType("image/png");
            ctx.result(newest.get().picture().png(tint(ctx), part.get()));
        }
    }

    private void confirmTurn(Context ctx) {
        Map<String, String> filled = Responses.filled(ctx);
        Optional<NightId> night = number(filled, "night").map(NightId::new);
        TurnConfirmation settled = night.flatMap(
                        which -> number(filled, "if-last-is").map(seq -> frames.confirmTurn(which, seq)))
                .orElse(TurnConfirmation.OTHERWISE);
        if (settled.seq().isPresent()) {
            ctx.redirect(session.prefix() + "/?said=" + settled.seq().getAsLong(), HttpStatus.SEE_OTHER);
            return;
        }
        ctx.status(HttpStatus.CONFLICT);
        Page now = Pages.now();
        Responses.show(ctx, Responses.request(ctx, session), now, List.of(settled.why()));
    }

    private static Optional<Long> number(Map<String, String> filled, String name) {
        return Optional.ofNullable(filled.get(name))
                .filter(text -> text.matches("[1-9]\\d{0,8}"))
                .map(Long::parseLong);
    }

    private static Tint tint(Context ctx) {
        return Tint.of(PaletteChoice.of(ctx));
    }

    /** Empty when the request makes no sense. */
    private static Optional<CloseUp> part(Context ctx) {
        Map<String, String> words = new HashMap<>();
        for (Map.Entry<String, List<String>> word : ctx.queryParamMap().entrySet()) {
            if (!WORDS.contains(word.getKey()) || word.getValue().size() != 1) {
                return Optional.empty();
            }
            words.put(word.getKey(), word.getValue().get(0));
        }
        return FrameAddress.part(words);
    }

    private static void refuse(Context ctx, HttpStatus status, String sentence) {
        ctx.status(status).contentType("text/plain; charset=utf-8").result(sentence);
    }
}
