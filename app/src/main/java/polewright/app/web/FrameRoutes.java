package polewright.app.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Optional;
import java.util.Set;
import polewright.app.picture.CloseUp;
import polewright.app.picture.Tint;
import polewright.app.watch.LiveView;
import polewright.axis.drawing.Palette;

/** A desk's frames as they are asked for: the newest one's light. */
final class FrameRoutes {
    private static final Set<String> WORDS = Set.of("times", "x", "y", "n");
    private static final int THOUSANDTHS = 1000;

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
        if (!WORDS.containsAll(ctx.queryParamMap().keySet())
                || ctx.queryParamMap().values().stream()
                        .anyMatch(values -> values.size() != 1 || !values.get(0).matches("\\d{1,15}"))) {
            return Optional.empty();
        }
        String times = ctx.queryParam("times");
        String x = ctx.queryParam("x");
        String y = ctx.queryParam("y");
        if (times == null && x == null && y == null) {
            return Optional.of(CloseUp.WHOLE);
        }
        if (times == null || x == null || y == null || times.length() > 3 || x.length() > 4 || y.length() > 4) {
            return Optional.empty();
        }
        return Optional.of(new CloseUp(
                Integer.parseInt(times), Double.parseDouble(x) / THOUSANDTHS, Double.parseDouble(y) / THOUSANDTHS));
    }

    private static void refuse(Context ctx, HttpStatus status, String sentence) {
        ctx.status(status).contentType("text/plain; charset=utf-8").result(sentence);
    }
}
