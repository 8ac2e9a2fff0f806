package polewright.app.web.door;

import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import java.net.InetAddress;
import java.net.UnknownHostException;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.eclipse.jetty.server.AbstractConnector;
import org.eclipse.jetty.server.Connector;
import org.eclipse.jetty.server.NetworkConnectionLimit;
import org.eclipse.jetty.server.handler.MinimumDataRateHandler;
import polewright.app.JobFailed;
import polewright.app.device.PairedDevice;
import polewright.app.device.PairedDevices;

/** Stands before every page. */
public final class Door {
    /** The cookie that bears a device's token. */
    public static final String COOKIE = "polewright";

    private static final int A_YEAR_SECONDS = 31_536_000;
    private static final int MOST_CONNECTIONS = 200;
    private static final int HEAD_BYTES = 8 * 1024;
    private static final int SLOWEST_BYTES_A_SECOND = 200;
    private static final String PAIR = "/pair";

    private final DoorSettings settings;
    private final PairingPage page;
    private final Set<String> open;
    private final AtomicReference<PairingCode> code;
    private final OpenStreams streams = new OpenStreams();

    /** Shows a page to a device that is not paired: the one thing that this room does not draw itself. */
    @FunctionalInterface
    public interface PairingPage {
        /**
         * The page's HTML.
         *
         * @param complaint what went wrong, or empty
         */
        String html(String complaint);
    }

    public Door(DoorSettings settings, PairingPage page) {
        this.settings = settings;
        this.page = page;
        open = new HashSet<>(settings.open());
        open.add(PAIR);
        code = new AtomicReference<>(PairingCode.fresh(settings.clock()));
    }

    /** The code to show in the terminal now: a new one where the last is spent. */
    public PairingCode code() {
        return code.updateAndGet(last -> last.isVoid() ? PairingCode.fresh(settings.clock()) : last);
    }

    /** The streams that are open on this server. */
    public OpenStreams streams() {
        return streams;
    }

    /** Whose request this is: the id of a paired device, or the address of this machine. */
    public String deviceOf(Context ctx) {
        return holder(token(ctx))
                .map(PairedDevice::id)
                .orElseGet(() -> ctx.req().getRemoteAddr());
    }

    /** Whether who was let in with this request would be let in now. */
    public boolean isStillIn(Context ctx) {
        try {
            return token(ctx).isEmpty() || holder(token(ctx)).isPresent();
        } catch (JobFailed damaged) {
            return false;
        }
    }

    private static String token(Context ctx) {
        return Optional.ofNullable(ctx.cookie(COOKIE)).orElse("");
    }

    private Optional<PairedDevice> holder(String token) {
        return token.isEmpty()
                ? Optional.empty()
                : settings.devices().holderOf(token, settings.clock().instant());
    }

    /** Stands before the routes of this server: to be called before any other is added. */
    public void install(JavalinConfig config) {
        config.http.maxRequestSize = Admission.FORM_BYTES;
        config.jetty.modifyHttpConfiguration(http -> {
            http.setRequestHeaderSize(HEAD_BYTES);
            http.setSendServerVersion(false);
        });
        config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(new PlainErrors()));
        config.jetty.modifyServer(server -> {
            server.setErrorHandler(new PlainErrors());
            // What is sent: an event stream that says little is meant to.
            server.insertHandler(new MinimumDataRateHandler(SLOWEST_BYTES_A_SECOND, 0));
            server.addBean(new NetworkConnectionLimit(MOST_CONNECTIONS, server));
            server.addEventListener(new org.eclipse.jetty.util.component.LifeCycle.Listener() {
                @Override
                public void lifeCycleStarting(org.eclipse.jetty.util.component.LifeCycle event) {
                    for (Connector connector : server.getConnectors()) {
                        if (connector instanceof AbstractConnector listening) {
                            ConnectionWatch.over(listening, settings.patience());
                        }
                    }
                }
            });
        });
        config.routes.before(this::admit);
        config.routes.get(PAIR, ctx -> ctx.html(page.html("")));
        config.routes.post(PAIR, this::pair);
    }

    private void admit(Context ctx) {
        GuardHeaders.ALL.forEach(ctx::header);
        Admission admission;
        try {
            admission = Admission.of(asking(ctx), settings.names(), ctx.req().getLocalPort(), open, settings.uploads());
        } catch (JobFailed damaged) {
            admission = new Admission.Refused(503, String.valueOf(damaged.getMessage()));
        }
        if (admission instanceof Admission.Refused refused) {
            ctx.status(refused.status())
                    .contentType("text/plain; charset=utf-8")
                    .result(refused.sentence());
            ctx.skipRemainingHandlers();
        } else if (admission instanceof Admission.NeedsPairing) {
            ctx.status(401);
            String accept = Optional.ofNullable(ctx.header("Accept")).orElse("");
            if (ctx.req().getMethod().equals("GET") && accept.contains("text/html")) {
                ctx.html(page.html(""));
            } else {
                ctx.contentType("text/plain; charset=utf-8")
                        .result("This device is not paired. Open " + PAIR
                                + " and type the code that the terminal shows.");
            }
            ctx.skipRemainingHandlers();
        }
    }

    private Admission.Asking asking(Context ctx) {
        var request = ctx.req();
        boolean isLoopback = isLoopback(request.getRemoteAddr());
        String token = token(ctx);
        boolean isPaired = holder(token).isPresent();
        return new Admission.Asking(
                request.getMethod(),
                target(ctx),
                ctx.path(),
                List.copyOf(Collections.list(request.getHeaders("Host"))),
                List.copyOf(Collections.list(request.getHeaders("Origin"))),
                Optional.ofNullable(ctx.header("Sec-Fetch-Site")),
                isLoopback,
                isPaired,
                request.getContentLengthLong(),
                Optional.ofNullable(ctx.header("Transfer-Encoding")));
    }

    /** As it was sent, but for an absolute address, which the servlet interface cuts to its path. */
    private static String target(Context ctx) {
        return ctx.req().getRequestURI();
    }

    private static boolean isLoopback(String address) {
        try {
            return InetAddress.getByName(address.replaceAll("[\\[\\]]", "")).isLoopbackAddress();
        } catch (UnknownHostException e) {
            return false;
        }
    }

    private void pair(Context ctx) {
        String typed = Optional.ofNullable(ctx.formParam("code")).orElse("");
        PairingCode.Answer answer =
                Objects.requireNonNull(code.get()).tried(typed, ctx.req().getRemoteAddr());
        if (answer == PairingCode.Answer.RIGHT) {
            String name = Optional.ofNullable(ctx.formParam("name")).orElse("");
            PairedDevices.Welcome welcome = settings.devices()
                    .pair(
                            name.isBlank() ? family(ctx.userAgent()) : name,
                            settings.clock().instant());
            ctx.res()
                    .addHeader(
                            "Set-Cookie",
                            COOKIE + "=" + welcome.token() + "; Path=/; Max-Age=" + A_YEAR_SECONDS
                                    + "; HttpOnly; SameSite=Strict" + (ctx.req().isSecure() ? "; Secure" : ""));
            ctx.status(303).header("Location", "/");
            return;
        }
        ctx.status(answer == PairingCode.Answer.TOO_SOON ? 429 : 403);
        ctx.html(page.html(complaint(answer)));
    }

    private static String complaint(PairingCode.Answer answer) {
        return switch (answer) {
            case RIGHT -> "";
            case WRONG -> "That is not the code. Look at the terminal again and type all eight characters.";
            case TOO_SOON -> "Too soon after a wrong code. Wait a few seconds, then try again.";
            case VOID -> "That code is spent. The terminal shows a new one: type that.";
        };
    }

    private static String family(@org.jspecify.annotations.Nullable String agent) {
        String said = agent == null ? "" : agent;
        return said.contains("Mobile") ? "a phone" : said.contains("Tablet") ? "a tablet" : "a computer";
    }
}
