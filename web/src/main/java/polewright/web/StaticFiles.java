package polewright.web;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Map;
import java.util.Objects;

/** Style sheets, scripts and pictures that are the same for everyone. */
final class StaticFiles {
    private static final Map<String, String> TYPES =
            Map.of("css", "text/css", "js", "text/javascript", "svg", "image/svg+xml");
    // Read from the jar by listed name only, never by the requested path.
    private static final Map<String, String> FILES = Map.of(
            "page.css", "/polewright/web/static/page.css",
            "page.js", "/polewright/web/static/page.js",
            "outbox.js", "/polewright/web/static/outbox.js",
            "horizon.js", "/polewright/web/static/horizon.js",
            "pair.js", "/polewright/web/static/pair.js",
            "frames.js", "/polewright/web/static/frames.js",
            "icon.svg", "/polewright/web/static/icon.svg",
            "htmx.js", "/META-INF/resources/webjars/htmx.org/2.0.10/dist/htmx.min.js",
            "sse.js", "/META-INF/resources/webjars/htmx-ext-sse/2.2.2/sse.js");

    private StaticFiles() {}

    static void add(JavalinConfig config) {
        config.routes.get("/static/{name}", StaticFiles::answer);
    }

    private static void answer(Context ctx) {
        String name = ctx.pathParam("name");
        String resource = FILES.get(name);
        if (resource == null) {
            ctx.status(HttpStatus.NOT_FOUND);
            return;
        }
        try (InputStream in = StaticFiles.class.getResourceAsStream(resource)) {
            ctx.contentType(
                    TYPES.getOrDefault(name.substring(name.lastIndexOf('.') + 1), "text/plain") + "; charset=utf-8");
            ctx.header("Cache-Control", "max-age=3600");
            ctx.result(Objects.requireNonNull(in, resource).readAllBytes());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
