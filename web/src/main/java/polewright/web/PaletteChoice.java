package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import polewright.drawing.Palette;

/** Day or night colours, as each browser has chosen and remembers. */
final class PaletteChoice {
    private static final String COOKIE = "palette";
    private static final String DAY = "day";
    private static final String DARK = "dark";
    private static final int A_YEAR_SECONDS = 31_536_000;

    private PaletteChoice() {}

    static void add(JavalinConfig config) {
        config.routes.post("/palette", PaletteChoice::choose);
    }

    /** Dark until the browser has chosen. */
    static Palette of(Context ctx) {
        return DAY.equals(ctx.cookie(COOKIE)) ? Palette.LIGHT : Palette.DARK;
    }

    private static void choose(Context ctx) {
        String chosen = DAY.equals(ctx.formParam(COOKIE)) ? DAY : DARK;
        ctx.res()
                .addHeader(
                        "Set-Cookie",
                        COOKIE + "=" + chosen + "; Path=/; Max-Age=" + A_YEAR_SECONDS + "; HttpOnly; SameSite=Strict");
        String back = ctx.formParam("back");
        boolean isOurs = back != null && back.matches("/[A-Za-z0-9/-]*") && !back.startsWith("//");
        ctx.redirect(isOurs ? back : "/", HttpStatus.SEE_OTHER);
    }
}
