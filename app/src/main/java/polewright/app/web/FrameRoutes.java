package polewright.app.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import polewright.app.picture.CloseUp;
import polewright.app.picture.Tint;
import polewright.app.watch.LiveView;
import polewright.axis.drawing.Palette;

/** A desk's frames as they are asked for: the newest one's light. */
final class FrameRoutes {
    private static final Set<String> WORDS = Set.of("times", "x", "y", "n");

    private final WatchedFrames frames;

    private FrameRoutes(WatchedFrames frames) {
        this.frames = frames;
    }

    static void add(JavalinConfig config, NightDesk desk, WatchedFrames frames) {
        FrameRoutes routes = new FrameRoutes(frames);
        config.routes.get(desk.prefix() + FrameAddress.LIGHT, routes::light);
    }

    private void light(Context ctx) {
        Optional<CloseUp> part = part(ctx);
        Optional<LiveView.Shot> newest = frames.stand().newest();
        if (part.isEmpty()) {
            refuse(ctx, HttpStatus.BAD_REQUEST, "A part of a frame is named by times, x and y, each a whole number.");
        } else if (newest.isEmpty()) {
            refuse(ctx, HttpStatus.NOT_FOUND, "No frame has come yet.");
        } else {
            ctx.header("Cache-Control", "no-store");
            ctx.contentType("image/png");
            ctx.result(newest.get().picture().png(tint(ctx), part.get()));
        }
    }

    private static Tint tint(Context ctx) {
        return Tint.of(PageServer.isDay(ctx) ? Palette.LIGHT : Palette.DARK);
    }

    /** Empty when what is asked for makes no sense. */
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
